import type { WhyUnknown } from "../../../core/views/coat-liquid.ts";
import { counted } from "../counted.ts";

const coatsInWords = (n: number): string => `${counted(n)} ${n === 1 ? "coat" : "coats"}`;
const Coats = (n: number): string => coatsInWords(n).replace(/^./, (first) => first.toUpperCase());
/** `1`, `1 and 3`, `1, 2 and 4`. */
const listed = (coats: readonly number[]): string =>
  coats.length < 2 ? coats.join("") : `${coats.slice(0, -1).join(", ")} and ${coats.at(-1)}`;
const isId = (source: string): boolean => /^[0-9a-f]{8}-/.test(source);

/** A film in section. */
export const film = {
  heading: (coats: number, um: string, by: string) =>
    `${Coats(coats)} on, ${um} µm of film, give or take ${by}`,
  headingUnknown: (coats: number) => `${Coats(coats)} on; how thick the film is, is not known`,
  headingPartly: (coats: number, known: number, um: string, by: string) =>
    `${Coats(coats)} on; ${counted(known)} of them ${known === 1 ? "makes" : "make"} ${um} µm of film, give or take ${by}`,
  bare: "No coat is on it yet: bare wood. Its film is drawn here as it grows.",
  toGo: (um: string, needed: string, coats: number | null) =>
    `${um} µm more before it can be rubbed out (${needed} µm, common practice)${coats === null ? "." : `: ${coatsInWords(coats)} more like the last.`}`,
  withoutUnknown: "Without what is not known: ",
  enough: (leaves: string) => `Enough to rub out: that would leave about ${leaves} µm.`,
  risk: {
    "goes through": "Do not rub it out: it would go through to the wood.",
    "may go through": "Rubbing out may go through to the wood.",
    holds: "",
  },
  cutThrough: "It was cut through somewhere.",
  edges: "Edges and corners are thinner than the rest. An estimate; try a hidden place.",
  hair: "a hair, 70 µm",
  wood: "wood",
  woodSunk: (um: string) => `wood, ${um} µm sunk in`,
  neededMark: (um: string) => `${um} µm, to rub out`,
  coat: (n: number) => `coat ${n}`,
  coatUm: (n: number, um: string) => `${n}: ${um} µm`,
  off: (um: string) => `, ${um} off`,
  scale:
    "Up and across to one scale. Coats melt into one another: the dotted lines are where they would meet.",
  says: (heading: string, coats: readonly string[], sunk: string) =>
    `${heading}. ${coats.join("; ")}. Sunk into the wood: ${sunk} µm.`,
  coatSays: (n: number, um: string, off: string | null) =>
    `coat ${n} ${um} µm${off === null ? "" : `, ${off} µm of it sanded off`}`,
  unknown: (coats: readonly number[], why: WhyUnknown) => {
    const one = coats.length === 1;
    const because = {
      "no jar": one ? "it came from no jar of the book" : "they came from no jar of the book",
      cut: one
        ? "the cut of the jar that it came from is not known"
        : "the cut of the jars that they came from is not known",
    }[why];
    return `How thick ${one ? "coat" : "coats"} ${listed(coats)} ${one ? "is" : "are"} cannot be known: ${because}.`;
  },
  notDrawn: (coats: number) => (coats === 1 ? "It is not in the drawing." : "They are not in the drawing."),
  tooMuch: "Some work took off more than is reckoned to have been there. Look at it in a raking light.",
  mostly: (source: string) => `The give or take comes most from ${source}.`,
  source: (source: string): string => {
    if (isId(source)) return "what one coat or one sanding was measured to be";
    if (source === "sinking") return "how much the first coats sink in (from memory)";
    if (source === "which jar") return "which jar it was, while the key is shut";
    if (source.startsWith("usual amount")) return "how much is usual to put on (common practice)";
    if (source.startsWith("usual removal")) return "how much is usual to sand off (from memory)";
    if (source.startsWith("what stays")) return "how much of what is used stays on the work";
    return source.startsWith("cut") ? "the cut of the jar" : source;
  },
  coats: "Coat by coat",
  atBench: "At the bench",
  coatLink: (n: number, when: string) => `Coat ${n}, ${when}`,
  dry: (um: string) => `${um} µm`,
  notKnown: "not known",
  instead: "The same film in another cut",
  insteadCut: "Cut",
  insteadHow: "How it goes on",
  insteadSays: (n: number, other: string, cut: string, how: string) =>
    `These ${coatsInWords(n)} come to ${other} of ${cut}, ${how}.`,
  insteadUsual: "With a usual amount a coat (common practice).",
  insteadNot: "Type a cut, as 1 lb.",
  warn: (codes: string, through: boolean) =>
    through
      ? `This would go through to the wood on ${codes}.`
      : `This may go through to the wood on ${codes}.`,
  board: "A board",
  boardTitle: (name: string, wood: string) =>
    name.toLowerCase().includes(wood.toLowerCase()) ? name : `${name}, ${wood}`,
  patch: "Which patch",
  seeFilm: "Its film in section",
  noBoard: "This board is not in the notebook",
  toTrial: "The trial",
};
