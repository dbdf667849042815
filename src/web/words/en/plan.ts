import { counted } from "../counted.ts";
import { withDigits } from "../number.ts";

const together = (names: readonly string[]): string =>
  names.length === 1 ? (names[0] ?? "") : `how ${names.join(" and ")} work together`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a larger plan has: jars of each recipe, boards of each wood. */
export interface More {
  readonly jars: number;
  readonly boards: number;
}

export const plan = {
  kind: "How the boards are used",
  kinds: {
    "every-board": {
      label: "Everything on every board",
      says: "As far as it fits; what is left over is shared out evenly. The usual way.",
    },
    square: {
      label: "Everything once at every place",
      says: "Where the ends of a board differ from its middle. As many boards as there are things to tell apart.",
    },
    "double-square": {
      label: "Also once at every turn",
      says: "Where the hand or the pad changes as the evening goes on. For one thing that varies, or two with equally many.",
    },
    best: {
      label: "Only the patches that tell most",
      says: "When not everything fits. Each thing is told by itself, not how two of them work together.",
    },
    screen: {
      label: "Many things, two of each",
      says: "A first look in few patches: which of them matter at all.",
    },
    steps: {
      label: "Step boards",
      says: "One thing, such as the number of coats, rises along each board; a board takes one jar.",
    },
  },
  sameHeading: "Seen only together",
  same: (effect: readonly string[], others: readonly (readonly string[])[]) =>
    `${together(effect)} cannot be told from ${others.map(together).join(", or ")}.`,
  curveHeading: "With more jars and boards",
  curveSaid: (factor: string, points: readonly string[], matters: string) =>
    `Smallest difference in ${factor}: ${points.join("; ")}. What matters to you is ${matters}.`,
  curvePoint: (jars: number, boards: number, value: number) =>
    `${jars} ${jars === 1 ? "jar" : "jars"} each on ${boards} ${boards === 1 ? "board" : "boards"}, ${withDigits(value, 2)}`,
  curveBoards: (n: number) => `${n} ${n === 1 ? "board" : "boards"}`,
  curveJars: "jars of each",
  inWhat: "In what is looked at",

  noiseEarlier: (trial: string) => `As your trial “${trial}” had it, until you put your own.`,

  mendHeading: "What mends the worst of it",
  mends: {
    "cannot-tell": (factor: string) => `part ${factor} from what it goes with`,
    "nothing-left-over": (factor: string) => `leave something to judge ${factor} by`,
    "would-miss": (factor: string) => `catch what matters in ${factor}`,
  },
  mend: {
    jars: (n: More, does: string) =>
      `${capital(counted(n.jars))} jars of each recipe would ${does}; the liquid stays the same.`,
    planks: (_: More, does: string) => `A plank for each board would ${does}.`,
    boards: (n: More, does: string) => `${capital(counted(n.boards))} boards a wood would ${does}.`,
    "jars and boards": (n: More, does: string) =>
      `${capital(counted(n.jars))} jars of each recipe on ${counted(n.boards)} boards a wood would ${does}.`,
  },
  take: {
    jars: (n: More) => `Take ${counted(n.jars)} jars each`,
    planks: (_: More) => "Take a plank for each",
    boards: (n: More) => `Take ${counted(n.boards)} boards a wood`,
    "jars and boards": (n: More) => `Take ${counted(n.jars)} jars, ${counted(n.boards)} boards`,
  },
  noMend: "No larger plan that was tried mends it: ask less at once.",

  tooLarge: (needed: number, places: number) =>
    `To hold everything once takes ${needed} patches, and these boards have ${places}. More boards would do, or fewer things at once.`,
  stagesHeading: "In two stages it would fit",
  stage: {
    screen: (things: number, patches: number) =>
      `First ${counted(things)} things at the two levels furthest apart, in ${patches} patches: which of them matter at all.`,
    refine: (upTo: number, patches: number) =>
      `Then ${upTo === 1 ? "the one" : `the ${counted(upTo)}`} that matter most, at all their levels, in ${patches} patches.`,
  },
  takeScreen: "Take the first stage",
  twice: (name: string) => `Twice as often as the rest, as a control: of ${name}`,
  none: "none",
  neighboursDiffer: "Patches side by side always differ in",
  sizesHint: "Boards of several sizes: 6, 4",
};
