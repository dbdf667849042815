import type { NotebookReader } from "../notebook/reader.ts";
import { coatNumbers } from "../pieces/planned-evenings.ts";
import { coatsOn, type PlannedCoat } from "./coats-on.ts";
import { type PieceView, pieceIds, pieceView } from "./piece.ts";

/** The coat that a piece waits for, with the day and the clock time that its plan gives it, in the shop's own zone. */
export interface PieceCoat extends PlannedCoat {
  readonly piece: string;
  readonly name: string;
  readonly day: string | null;
  readonly at: string | null;
}

function nextCoatOf(piece: PieceView): PieceCoat | null {
  const next = coatsOn(piece).next;
  if (piece.schedule === null || piece.handedOver !== null || next === undefined) return null;
  const coats = coatNumbers(piece.schedule.steps);
  const step = [...coats.keys()].find((one) => coats.get(one) === next.coat && one.surface === next.surface);
  if (step === undefined) return null;
  return { piece: piece.id, name: piece.name, ...next, day: step.day ?? null, at: step.at ?? null };
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
