import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { type PieceView, pieceIds, pieceView } from "./piece.ts";

/** The coat that a piece waits for, with the day and the clock time that its plan gives it, in the shop's own zone. */
export interface PieceCoat {
  readonly piece: string;
  readonly name: string;
  readonly coat: number;
  readonly day: string | null;
  readonly at: string | null;
}

function nextCoatOf(piece: PieceView): PieceCoat | null {
  if (piece.schedule === null || piece.handedOver !== null) return null;
  const on = new Set(
    piece.layers.flatMap((entry) => (entry.body as Body<"layer-applied">).planned?.coat ?? []),
  );
  const coats = piece.schedule.steps.filter((step) => step.what === "coat");
  const next = coats.findIndex((_, i) => !on.has(i + 1));
  const step = coats[next];
  if (step === undefined) return null;
  return { piece: piece.id, name: piece.name, coat: next + 1, day: step.day ?? null, at: step.at ?? null };
}

/** The next coat of every piece that is planned and not handed over, those with the earliest day first. */
export const pieceCoats = (read: NotebookReader): readonly PieceCoat[] =>
  read.derive("bench-pieces", (r) =>
    pieceIds(r)
      .flatMap((id) => {
        const piece = pieceView(r, id);
        return (piece === null ? null : nextCoatOf(piece)) ?? [];
      })
      .sort((a, b) => ((a.day ?? "") + (a.at ?? "") < (b.day ?? "") + (b.at ?? "") ? -1 : 1)),
  );
