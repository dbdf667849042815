import type { pieceKinds } from "../../../../core/notebook/kinds/pieces.ts";
import { also, list, type Sayings } from "./naming.ts";

export const pieceSayings: Sayings<keyof typeof pieceKinds> = {
  "piece-described": (b) =>
    `Piece: ${b.name}, ${b.area.typed}${fromParts(b.parts?.length ?? 0)}${also(", ", b.wood)}${also(", wanted by ", b.wanted)}.`,
  "piece-scheduled": (b, name) =>
    `${name.of(name.entry.about[0])} scheduled: ${b.recipe.coats} coats of a ${b.recipe.cutLbPerGal} lb cut, in ${b.steps.length} steps.`,
  "piece-handed-over": (b, name) =>
    `${name.about} handed over${also(" to ", b.to)}${also(", retained sample ", b.retainedSample)}.`,
  "free-time": (b, name) => {
    const [first] = b.windows;
    const planned =
      b.evenings === undefined ? "" : ` ${name.about} takes ${b.evenings.length} of these evenings.`;
    if (b.windows.length < 3)
      return `Free: ${list(b.windows.map((w) => `${plain(w.from)} to ${plain(w.to)}`))}.${planned}`;
    return `Free ${b.windows.length} times, from ${plain(first?.from ?? "")} to ${plain(b.windows.at(-1)?.to ?? "")}.${planned}`;
  },
};

/** `2026-11-26 18:00` of `2026-11-26T18:00`. */
const plain = (at: string): string => at.replace("T", " ");

const fromParts = (n: number): string => (n === 0 ? "" : ` from ${n} ${n === 1 ? "part" : "parts"}`);
