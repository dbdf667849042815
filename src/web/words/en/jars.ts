import { counted } from "../counted.ts";
import { acts } from "./jar-acts.ts";
import { importing } from "./jar-import.ts";
import { labelText } from "./jar-labels.ts";
import { mix } from "./mix.ts";

const hours = (h: number): string => `${h < 10 ? Number(h.toFixed(1)) : Math.round(h)} h`;

export const jars = {
  title: "Jars",
  none: "No jars yet",
  noneSays: "Weigh some flakes, measure some alcohol: the book does the rest.",
  start: "Start a jar",
  labels: "Print labels",
  allJars: "All jars",
  showEmptied: (n: number) => (n === 1 ? "Show the emptied jar" : `Show the ${counted(n)} emptied jars`),
  hideEmptied: "Hide emptied jars",
  noCode: "no code",
  shelvesLabel: "Jars on their shelves; lines show what was poured into what",
  fromTheTop: "From the top down: stock, strained, thinned to work with.",
  cardBehind: "The marks are print on a card held behind the jar: clear lets you read it, cloudy does not.",
  lb: (text: string) => `${text} lb`,
  alsoAs: (metric: string, ounces: string) => `${metric} (${ounces})`,
  stage: { stock: "Stock", strained: "Strained", thinned: "Thinned" },
  emptied: "emptied",
  notKnown: "not reckoned",
  wax: "wax",
  clarity: { clear: "clear", hazy: "hazy", cloudy: "cloudy" },
  undissolved: { most: "Most of it", some: "Some", "a trace": "A trace", none: "None" },
  state: { use: "Use it", "test first": "test first", discard: "past using" },
  inSolvent: (resin: string, solvent: string) =>
    solvent === "" ? resin : resin === "" ? solvent : `${resin} in ${solvent}`,
  heading: (code: string, what: string) => (code === "" ? what : `${code}, ${what}`),

  ready: {
    heading: "Ready when? Each mark is a look.",
    group: (what: string, n: number, code: string) => (n === 1 ? `${what} ${code}` : `${what}, ${n} jars`),
    hours,
    between: (from: number, to: number) => (from === to ? "to the hour" : `between ${from} and ${to}`),
    notBy: (h: number) => `Not by ${hours(h)}`,
    somewhere: (from: number, to: number) => `Between ${hours(from)} and ${hours(to)}`,
    thisJar: "this jar",
    theseJars: "these jars",
    lookNow: "Look at it now.",
    lookAgain: (when: string) => `Look again at ${when}.`,
    notYet: "not yet",
    ready: "ready",
    inHere: "in here",
    method: "How that was fitted, and how recipes compare",
    model: "Times spread as",
    models: { weibull: "Weibull", lognormal: "log-normal" },
    all: "all",
    half: "half",
    curvesSay:
      "Hatched: what the looks alone allow, somewhere in each box. The line is fitted through it, with one spread for every recipe. The times above are its medians with their 95 % intervals.",
    curveLabel: (name: string, median: number | null) =>
      median === null
        ? `${name}: share of jars ready by the hour; the looks do not fix a median`
        : `${name}: share of jars ready by the hour, half of them by ${hours(median)}`,
    ratio: (of: string, to: string, times: string, from: string, upTo: string) =>
      `${of} against ${to}: ${times} times as long, between ${from} and ${upTo} times.`,
    ratiosSay: (matters: string, more: number | null) =>
      `Held against ${matters} times as long, a convention; 95 % for all of them at once. ${
        more === null
          ? "No number of jars up to 60 would settle what cannot be told."
          : more === 0
            ? ""
            : `${more} more ${more === 1 ? "jar" : "jars"} of each would settle what cannot be told.`
      }`,
    oneJarOnly: "one jar",
    theseJarsOnly: "One jar of a recipe speaks of these jars, not of these alcohols.",
  },

  trueCut: (text: string) => `True cut now: ${text} lb`,
  trueCutLabel: "True cut",
  nothingLeft: "No more is left than clings to the glass. Mark it empty, and its code is free again.",
  cutUnknown: "What went in is not known well enough to say its cut.",
  label: (text: string) => `label ${text}`,
  shownReckoned: "Reckoned from what really went in and out.",
  shownDriedDown: {
    combined: (when: string) =>
      `From the reckoning and the spoonful dried down on ${when} together, the surer counting for more, and what went in and out since.`,
    measured: (when: string) =>
      `From the spoonful dried down on ${when} alone, and what went in and out since.`,
  },
  three: {
    reckoned: "Reckoned",
    measured: "Dried down",
    combined: "Together",
    row: (name: string, pounds: string, by: string) => `${name}: ${pounds} lb, give or take ${by}`,
  },
  disagrees:
    "Reckoned and dried down lie further apart than both allow: something went in or out that is not written. Dry down a second spoonful; until then the first one counts.",
  mostOfIt: (source: string) => `Most of the give or take is ${source}.`,
  source: {
    scaleG: "the scale",
    jugMl: "the jug",
    temperatureC: "the temperature of the liquid",
    strengthVolumeFraction: "the strength on the label",
    moistureMassFraction: "the moisture in the flakes",
    partialDensityKgM3: "how much the resin swells the liquid",
    solventDensityKgM3: "the density of the solvent",
    jarCut: "how sure the jar’s own cut is",
    guess: "an amount that was guessed",
  } as Readonly<Record<string, string>>,
  lost: (grams: string, when: string) =>
    `It is ${grams} lighter than it should be since ${when}. What leaves is alcohol:`,
  addBack: (amount: string) => `add ${amount} to bring it back.`,
  facts: {
    holds: "Holds",
    holdsOf: (now: string, of: string) => `${now} in a jar for ${of}`,
    weighs: "Weighs",
    cameFrom: "Came from",
    flakes: "flakes",
    cameFromLine: (codes: readonly string[]) =>
      codes.map((code, i) => (i === 0 ? code : `which came from ${code}`)).join(", "),
    asOldAs: "As old as",
    days: (n: number) => (n < 1 ? "today" : n < 2 ? "one day" : `${Math.floor(n)} days`),
    ageOfStock: (days: string) => `its oldest resin: ${days}`,
    ageUnknown: "not known",
    water: "Water in it",
    composition: "Liquid",
    waxState: "Wax",
    wax: {
      dewaxed: "dewaxed",
      waxy: "waxy: as a sole finish only",
      settled: "settled at the bottom: pour it off clear",
      "not told": "not told",
    },
    simple: "Simple ratio",
    simpleSays: (text: string) => `would have given ${text} lb`,
    usedOn: "Used on",
    usedSays: (where: string, n: number) => `${where}, ${n === 1 ? "one layer" : `${counted(n)} layers`}`,
    weighed: "Weighed last",
    weighedSays: (grams: string, lid: boolean, when: string) =>
      `${grams} ${lid ? "with lid" : "open"}, ${when}`,
    looked: "Looked at last",
    dissolving: "Dissolving",
    dissolvingSays: (left: string, seen: number) =>
      `about ${left} was still there, by eye. ${seen === 1 ? "One more look that tells how much" : "More looks, hours apart,"} would say when little is left.`,
    dissolvedBy: (left: string, little: string, at: string, from: string, to: string, off: string) =>
      `about ${left} was still there, by eye. At this pace all but ${little} is dissolved ${at}: ${to === "" ? `no sooner than ${from}, and how late is not known yet` : `between ${from} and ${to}`}, if a look by eye is off by ${off} of the flakes.`,
  },
  fitness: {
    use: "Fit to use",
    "test first": "Test a drop on glass first",
    discard: "Do not use it on work",
  },
  because: {
    contaminated: "something got into it",
    "soft-in-the-drop-test": "its drop stayed soft",
    "slow-in-the-drop-test": "its drop was slow to harden",
    "leftovers-poured-back": "leftovers were poured back",
    old: "its oldest resin has been in solution long",
    "age-not-known": "its age is not known",
    "hard-in-the-drop-test": "its drop was hard",
    fresh: "it is fresh",
  },
  thresholds: {
    heading: "When to test: set it to your own",
    fields: {
      testAfterDays: "Days in solution until a drop is tested first",
      testHoldsDays: "Days that a hard drop is trusted",
      hardWithinMinutes: "Minutes within which a drop is to be hard",
    },
    says: (n: number, unit: string, common: number | undefined) =>
      common === undefined
        ? `${n} ${unit}, common practice`
        : `${n} ${unit}, your own; common practice: ${common}`,
    wrong: "A whole number from 1 to 10000 would do.",
    keep: "Keep these",
    kept: "Kept. Every jar goes by these now.",
  },
  lineage: {
    heading: "Where it came from, and what from it",
    made: {
      mixed: "Mixed:",
      filtered: "Strained:",
      thinned: "Thinned:",
      blended: "Blended:",
      decanted: "Poured:",
    },
  },
  dropTests: { heading: "Drops on glass" },
  struckOff: {
    heading: (names: string) => `${names}: struck off the shelf`,
    says: "What it was is not known to the reckoning any more: cut, volume and water are guesses from here on. The cautions go by what was written of it. Undo the strike in the Book, and mark it used up on the shelf if it is.",
    toBook: "Open the Book",
  },
  unusableHeading: "Written, but not reckoned with",
  unusable: {
    "not-an-amount": () => "It says neither a weight nor a volume.",
    "flakes-by-volume": () =>
      "Flakes by the cup say little: from 60 to 120 g a cup, as they lie. Weigh them and correct the entry.",
    "strength-unreadable": () => "The strength written on the shelf cannot be read.",
    "amount-not-written": () => "How much is not written.",
    "more-than-it-held": (by: string) => `It takes ${by} more than there was.`,
    "parent-unknown": () => "The jar that it came from is not in this book, or what was in it is not known.",
    ring: () => "It comes from itself: two entries name each other as parent.",
    "heavier-than-it-should-be": (by: string) =>
      `It weighs ${by} more than it should: something went in that is not written.`,
    "dry-not-lighter": () => "What dried weighs no less than it did wet.",
    "nothing-known-in-it": () => "Nothing is known to be in it.",
    "look-out-of-order": () => "It was seen ready before, or not mixed yet.",
    "weighed-while-in-a-blind-trial": (by: string) =>
      `It is ${by} lighter, but a trial whose key is shut may have used it: nothing is counted as lost.`,
  },
  byHowMuch: (by: { readonly of: "mass" | "volume"; readonly si: number } | undefined) =>
    by === undefined
      ? ""
      : by.of === "mass"
        ? `${Math.round(by.si * 1e3)} g`
        : `${Math.round(by.si * 1e6)} mL`,
  share: (component: string, percent: string) =>
    `${component === "mek" ? "methyl ethyl ketone" : component === "mibk" ? "methyl isobutyl ketone" : component === "unknown" ? "not named" : component.replaceAll("-", " ")} ${percent} %`,
  lookSays: (undissolved: string, clarity: string, when: string) =>
    `${undissolved.toLowerCase()} undissolved${clarity === "" ? "" : `, ${clarity}`}, ${when}`,
  stepIn: (kind: string, did: string) =>
    kind === "batch-thinned" ? "Taken to be thinned" : kind === "batch-filtered" ? "Strained off" : did,
  history: "What happened to it",
  strike: "Strike out",
  struck: "Struck out. It stays readable in the Book.",
  step: {
    "batch-mixed": "Mixed",
    "batch-filtered": "Strained",
    "batch-thinned": "Thinned",
    "batch-blended": "Blended",
    "batch-topped-up": "Topped up",
    "batch-decanted": "Poured off",
    "leftovers-poured-back": "Leftovers poured back",
    "layer-applied": "Used",
    "batch-weighed": "Weighed",
    "batch-dried-down": "Dried down",
    "batch-emptied": "Emptied",
    "batch-looked-at": "Looked at",
    "batch-drop-tested": "Drop-tested",
    "batch-contaminated": "Something got in",
  } as Readonly<Record<string, string>>,
  stepHolds: (amount: string) => `${amount} left`,
  gone: "There is no such jar",
  goneSays: "It may have been struck out, or belong to another notebook.",

  labelText,
  solvent: "Alcohol off the shelf",
  choose: "Choose",
  noSolvent: "No alcohol stands on the shelf yet.",
  toShelf: "Put it on the shelf",
  solventMissing: "Choose the alcohol, so that its strength is known.",
  next: {
    look: "Look at it",
    weigh: "Weigh it",
    weighAgain: "Weigh it again",
    strain: "Strain it",
    thin: "Thin to a working cut",
    series: "Several working cuts",
    correct: "Correct its cut",
    restore: "Weigh it and bring it back",
    blend: "Blend with another jar",
    pourBack: "Pour leftovers back",
    topUp: "Top up",
    dryDown: "Dry down a spoonful",
    dropTest: "Test a drop",
    pourOff: "Pour some off",
    empty: "It is empty",
    spoilt: "Something got in",
  },
  others: "Other things to do with it",
  groups: { see: "See how it is", change: "Change what is in it", out: "Take out of it" },
  openAct: { opening: "Open it away from flame." },
  mix,
  importing,
  acts,
};
