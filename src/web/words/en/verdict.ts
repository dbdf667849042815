import type { Figures, Signed } from "../../verdict/figures.ts";
import { counted } from "../counted.ts";

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How a difference is said: its number with its unit, and what more and less of it are called. */
export interface Saying {
  readonly unit: string;
  readonly more: string;
  readonly less: string;
  /** Differences are shares: so many more in a hundred. */
  readonly shares: boolean;
}

const unit = (how: Saying): string => (how.shares ? "in 100" : how.unit);
/** A figure at the head of a sentence, in words where it has any. */
const spelt = (figure: string): string => (/^\d+$/.test(figure) ? counted(Number(figure)) : figure);
/** `so much more`, or so much less. */
const directed = (x: Signed, how: Saying): string => `${x.size} ${x.more ? how.more : how.less}`;

/** Two levels by name. */
export interface SaidPair {
  readonly a: string;
  readonly b: string;
}

export const verdict = {
  title: (name: string) => `Verdict: ${name}`,
  words: { different: "Different", equal: "As good as equal", unclear: "Not enough to tell" },
  none: "No verdict yet",
  keyShut: "The key is shut. Open it when all is judged, and the verdict stands here.",
  nothingRead: "Nothing has been judged yet.",
  working: (done: number, of: number) => `Reckoning, ${done} of ${of}`,
  response: "What was looked at",
  usualMore: "higher",
  usualLess: "lower",

  // the sentence
  headDifferent: (p: SaidPair, how: Saying) => `${capital(p.a)} is ${how.more} than ${p.b}.`,
  headEqual: (how: Saying, matters: string) =>
    `No difference that matters was seen, and one as large as ${matters} ${unit(how)} would have been.`,
  headEqualBetween: (p: SaidPair) => `Between ${p.a} and ${p.b} no difference that matters is left.`,
  headUnclear: "There is not enough to tell yet.",
  headUnclearToo: (p: SaidPair) => `Of ${p.a} and ${p.b} there is not enough to tell.`,
  headDirection: (p: SaidPair, how: Saying) =>
    `${capital(p.a)} is ${how.more} than ${p.b}, but it may be by less than matters.`,

  // a pair
  different: (p: SaidPair, f: Figures, how: Saying) =>
    `${capital(p.a)} against ${p.b}: ${f.difference.size} ${unit(how)} ${how.more}, somewhere from ${f.low.size} to ${f.high.size}. ${capital(spelt(f.matters))} matters to you.`,
  equal: (p: SaidPair, f: Figures) =>
    `${capital(p.a)} against ${p.b}: no difference that matters was seen, and one of ${f.matters} would have been.`,
  unclear: (p: SaidPair, f: Figures, how: Saying) =>
    `${capital(p.a)} against ${p.b}: it may be ${directed(f.low, how)} or ${directed(f.high, how)}.`,
  directionSure: (p: SaidPair, f: Figures, how: Saying) =>
    `${capital(p.a)} is ${how.more} than ${p.b}, but it may be by less than the ${f.matters} that matters: from ${f.low.size} to ${f.high.size}.`,
  boards: (n: number) => `${capital(counted(n))} more ${n === 1 ? "board" : "boards"} would settle it.`,
  jars: (n: number) => `${capital(counted(n))} more ${n === 1 ? "jar" : "jars"} of each would settle it.`,
  settlesNone: "Not even sixty more would be sure to settle it.",
  value: directed,
  tooSmall: ["too small", "to matter"],
  axis: (how: Saying) => unit(how),
  mark: (x: number, how: Saying) => (how.shares ? String(Math.round(x * 100)) : String(x)),
  drawn: (word: string, sentence: string) => `${word}. ${sentence}`,
  compared: (factor: string) => capital(factor),

  // what it is about
  aboutThese: {
    "these jars":
      "This is about these jars: each came out of one mixing, so a lucky jar looks like a lucky recipe.",
    "these planks":
      "This is about these planks: each wood came from one, so a lucky plank looks like a lucky wood.",
    "these boards": "This is about these boards: each stood on boards of its own.",
  },
  cannot: "This comparison cannot be made",
  noVariation: "Everything was read alike, so there is nothing to hold a difference against.",
  noBlocks:
    "Steps in words are compared within one board, and no two boards carry several of these. A judge could only say which board is more.",

  // method
  method: "How this was reckoned",
  counts: (patches: number, boards: number) =>
    `${patches} patches, ${counted(boards)} ${boards === 1 ? "board" : "boards"}`,
  withinHeading: "Within each board.",
  within: (factors: string) =>
    `Every difference in ${factors} was taken between patches on the same board and then averaged, so a shiny plank cannot pass for a shiny recipe.`,
  errorHeading: "Held against its own noise.",
  error: (unit: string, df: string) =>
    `The differences were held against the noise from ${unit} to ${unit} (${df} degrees of freedom).`,
  unequalDays: (least: string, most: string) =>
    `Read from ${least} to ${most} days after the last coat, and a young film still changes: part of a difference may be its age.`,
  luckHeading: "What is luck.",
  luck: (parts: readonly string[]) => `Standard deviations: ${parts.join(", ")}.`,
  luckOf: (of: string, sd: string) => `${of} ${sd}`,
  besideHeading: "Beside it.",
  dealt: (inThousand: string, dealings: number, exact: boolean) =>
    `Had the recipes been dealt anew ${exact ? `in all ${dealings} ways` : `${dealings} times`}, ${inThousand} in 1000 would have stood as far apart.`,
  odds: (a: string, b: string, ratio: string, low: string, high: string) =>
    `The odds of a higher step are ${ratio} times as good for ${a} as for ${b}, somewhere from ${low} to ${high} times.`,
  acrossHeading: "Over everything looked at",
  acrossSays: (n: number) =>
    `${capital(counted(n))} things were looked at, so one is likelier to stand out by luck alone. Allowing for that (Holm):`,
  acrossHolds: (name: string, factor: string) => `${name}: ${factor} still shows a difference.`,
  acrossFalls: (name: string, factor: string) =>
    `${name}: ${factor} shows a difference by itself, but not allowing for the others.`,
  acrossNone: (name: string, factor: string) => `${name}: ${factor} shows none.`,
  daysMissing: "For some readings the days since the coat are not known.",
  jawsHeading: "The jaws",
  jaws: (pairs: number) =>
    pairs === 1
      ? "hold the true difference 95 times in 100."
      : `hold the true difference 95 times in 100, over all ${counted(pairs)} comparisons together. That makes them wider than for one alone.`,
  equalHeading: "Equal is a finding.",
  equalSays: (matters: string, how: Saying) =>
    `It is said only when both jaws lie inside the band: ${matters} ${unit(how)} either way.`,
  bandOwn: "You set it before judging.",
  bandCommon: "It is common practice; nobody set another before judging.",
  wobbleHeading: "Your own wobble",
  wobble: (sd: string) => `is ${sd} (one standard deviation of the same patch judged again).`,
  wobbleJudges: (n: number) => `${capital(counted(n))} judges, each one’s steady habit taken out.`,
  blindHeading: "Blinding.",
  blind: {
    none: "There was none: whoever judged could know the recipe.",
    "codes only": "Judged by codes. Whoever coated could know the jar.",
    "helper held the key": "A helper held the key.",
  },
  knowing: (n: number, of: number) =>
    `${n} of ${of} readings were taken by somebody who could know the recipe.`,
  notFirst: "The layout was written down after the first coat.",
  leftOut: (codes: readonly string[]) => `Left out: ${codes.join(", ")}.`,
  leftOutLate: (codes: readonly string[]) =>
    `Left out after the key was opened, and kept in this analysis: ${codes.join(", ")}.`,
  departed: (n: number) =>
    `${capital(counted(n))} ${n === 1 ? "patch" : "patches"} did not get what was planned.`,
  asTreated: "As treated",
  asTreatedSays: "The same, without the patches that did not get what was planned:",
  sameWords: "The words stay the same.",
  table: {
    comparison: "Comparison",
    seen: "Seen",
    jaws: "Jaws",
    word: "Word",
    level: "Level",
    mean: "Mean",
    patches: "Patches",
  },
  between: (a: string, b: string) => `${a}, ${b}`,
  fromTo: (low: string, high: string) => `${low} to ${high}`,
  signed: (x: Signed) => `${x.more ? "+" : "−"}${x.size}`,
  levelSeen: (patches: number, jars: number) =>
    `${patches} ${patches === 1 ? "patch" : "patches"}${jars === 0 ? "" : `, ${jars} ${jars === 1 ? "jar" : "jars"}`}`,
  csv: "All rows as a table (CSV)",
  json: "The same as input for the command line (JSON)",
  fileName: (name: string, response: string, ending: string) =>
    `${name}-${response}`
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "") + ending,

  // to the piece
  takeHeading: "To the piece",
  takeSays: "Most of each stands first; that is not always what is wanted.",
  take: (recipe: string) => `Take ${recipe} to the piece`,
  recipe: (levels: readonly string[]) => levels.join(", "),
  backToTrial: "Back to the trial",
  course: "Coat by coat",
  courseSays: (p: SaidPair) => `${capital(p.a)} against ${p.b} after each coat, against the same band.`,
  equalFrom: (coat: number) => `As good as equal from coat ${coat} on.`,
  shortWords: { different: "different", equal: "equal", unclear: "can’t tell" },
  coatAxis: "coat",
  coat: (n: number) => `coat ${n}`,
};
