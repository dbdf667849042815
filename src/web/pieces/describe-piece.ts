import type { Body } from "../../core/notebook/kinds/all.ts";
import type { TypedQuantity } from "../../core/notebook/kinds/parts.ts";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import type { PieceView } from "../../core/views/piece.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import type { PieceDraft } from "./draft.ts";
import { keptParts } from "./parts/kept-parts.ts";
import { type PartFigures, timesFrom } from "./parts/parts-total.ts";
import { fromPiece } from "./prefill.ts";

/** Bare wood with nothing over it goes without saying, and so does a day that nobody waits for. */
function asideIn({ under, over, wanted }: PieceDraft): Pick<Body<"piece-described">, "lies" | "wanted"> {
  return {
    ...(under === "bare wood" && over === "nothing" ? {} : { lies: { under, over } }),
    ...(wanted === "" ? {} : { wanted }),
  };
}

/** What the area was worked out from, where it was. */
function takenApart(
  draft: PieceDraft,
  figures: readonly PartFigures[],
): Pick<Body<"piece-described">, "parts" | "endGrainTimes"> {
  const parts = keptParts(figures);
  const endGrainTimes = timesFrom(draft.endGrainTimes);
  if (parts.length === 0) return {};
  return { parts, ...(endGrainTimes === undefined ? {} : { endGrainTimes }) };
}

/** Writes a new piece down, and gives its id. */
export function describePiece(
  book: OpenBook,
  draft: PieceDraft,
  area: TypedQuantity,
  parts: readonly PartFigures[],
): string {
  const wood = draft.wood.trim();
  const told = wood === "" ? {} : { wood };
  return book.write({
    kind: "piece-described",
    body: { name: draft.name.trim(), area, ...told, ...asideIn(draft), ...takenApart(draft, parts) },
  });
}

/** Puts right what a plan has changed of a piece of the book: its area and parts, what lies under and over it, when it is wanted. Nothing is written where it is as it was. */
export function correctPiece(
  book: OpenBook,
  piece: PieceView,
  draft: PieceDraft,
  area: TypedQuantity,
  parts: readonly PartFigures[],
): void {
  const was = fromPiece(piece);
  const changed = (...fields: readonly (keyof PieceDraft)[]): boolean =>
    fields.some((f) => f in was && JSON.stringify(draft[f]) !== JSON.stringify(was[f]));
  const apart = changed("parts", "endGrainTimes");
  const current = book.whole().making(piece.id);
  if (current === undefined || !(apart || changed("area", "under", "over", "wanted"))) return;
  const { lies: _lies, wanted: _wanted, ...kept } = current.body as Body<"piece-described">;
  const { parts: _parts, endGrainTimes: _times, ...told } = kept;
  book.write({
    kind: "piece-described",
    about: [piece.id],
    strikes: strikesToCorrect(current),
    // the old body, what was put right in place of what was
    body: {
      ...(apart ? { ...told, ...takenApart(draft, parts) } : kept),
      area,
      ...asideIn(draft),
    } as Body<"piece-described">,
  });
}
