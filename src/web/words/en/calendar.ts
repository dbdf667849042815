import { counted } from "../counted.ts";

export const calendar = {
  take: "Take it to a calendar",
  took: (file: string) =>
    `Saved as ${file}. Open it with your calendar; opened there again after the plan has changed, it moves the same evenings.`,
  without: (steps: number) =>
    `${steps === 1 ? "One step has" : `${capital(counted(steps))} steps have`} no evening and ${steps === 1 ? "is" : "are"} not in it.`,
  unfetched:
    "The part that writes calendars is out of reach just now. Press again once the house is in reach.",
  heading: (piece: string, works: readonly string[]) => `${piece}: ${works.join(", ")}`,
  coat: (n: number) => `coat ${n}`,
  work: (what: string) => (what === "spirit-off" ? "clear the oil" : what),
  line: (clock: string, work: string, told: readonly string[]) => `${clock} ${[work, ...told].join(", ")}`,
  amount: (amount: string, cut: string) => `${amount} of ${cut} lb`,
  hands: (length: string) => `${length} at the bench`,
  wait: (least: string) => `then wait ${least}`,
  noLonger: (most: string) => `but no longer than ${most}`,
  from: "From this day on.",
};

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
