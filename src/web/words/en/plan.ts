import { withDigits } from "../number.ts";

const together = (names: readonly string[]): string =>
  names.length === 1 ? (names[0] ?? "") : `how ${names.join(" and ")} work together`;

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
    `${jars} ${jars === 1 ? "jar" : "jars"} each on ${boards} boards, ${withDigits(value, 2)}`,
  curveBoards: (n: number) => `${n} boards`,
  curveJars: "jars of each",
};
