import type { NotebookEntry } from "../notebook/entry.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { pieceView } from "./piece.ts";
import { type Trial, trialView } from "./trial.ts";

/** Where a film grows: a patch of a trial, a board that is in none, a piece or a part of it. */
export type Place =
  | { readonly trial: string; readonly patch: string }
  | { readonly board: string }
  | { readonly piece: string; readonly part?: string };

type Target = Body<"layer-applied">["targets"][number];

export const placeKey = (place: Place): string =>
  "trial" in place
    ? `${place.trial}/${place.patch}`
    : "board" in place
      ? place.board
      : `${place.piece}/${place.part ?? ""}`;

/** Where a target lies; null for one that names nothing. */
export function placeOfTarget(target: Target): Place | null {
  if (target.trial !== undefined && target.patch !== undefined)
    return { trial: target.trial, patch: target.patch };
  if (target.board !== undefined) return { board: target.board };
  if (target.piece === undefined) return null;
  return { piece: target.piece, ...(target.part === undefined ? {} : { part: target.part }) };
}

/** The board of a patch by its own entry, where it has one. */
function boardOf(trial: Trial | null, patch: string): string | null {
  const laid = trial?.laidOut?.body;
  const name = laid?.patches.find((p) => p.patch === patch)?.board;
  return laid?.boards.find((b) => b.name === name)?.board ?? null;
}

/** Whether a target covers a place: a whole board covers its patches, a whole piece its parts. */
function covers(target: Target, place: Place, board: string | null): boolean {
  if ("trial" in place)
    return (
      (target.trial === place.trial && target.patch === place.patch) ||
      (target.patch === undefined && target.board !== undefined && target.board === board)
    );
  if ("board" in place) return target.board === place.board && target.patch === undefined;
  return target.piece === place.piece && (target.part === undefined || target.part === place.part);
}

/** The target of an entry that covers a place, and how much of the entry's amount is meant for it. */
export function shareAt(
  read: NotebookReader,
  targets: readonly Target[],
  place: Place,
): { readonly target: Target; readonly share: number } | undefined {
  const board = "trial" in place ? boardOf(trialView(read, place.trial), place.patch) : null;
  const target = targets.find((t) => covers(t, place, board));
  return target === undefined ? undefined : { target, share: target.share ?? 1 / targets.length };
}

const rootsOf = (read: NotebookReader, place: Place): readonly string[] => {
  if ("board" in place) return [place.board];
  if ("piece" in place) return [place.piece];
  const board = boardOf(trialView(read, place.trial), place.patch);
  return board === null ? [place.trial] : [place.trial, board];
};

/** Every entry with targets that covers a place, in the order in which it happened. */
export function entriesAt(read: NotebookReader, place: Place): readonly NotebookEntry[] {
  const found = new Map<string, NotebookEntry>();
  for (const root of rootsOf(read, place))
    for (const entry of read.touching(root)) {
      const targets = (entry.body as { readonly targets?: readonly Target[] }).targets;
      if (targets !== undefined && shareAt(read, targets, place) !== undefined) found.set(entry.id, entry);
    }
  return [...found.values()].sort((a, b) => (a.happened < b.happened ? -1 : a.happened > b.happened ? 1 : 0));
}

const squareMetres = (mm: readonly [number | undefined, number | undefined]): number | null =>
  mm[0] === undefined || mm[1] === undefined || mm[0] * mm[1] === 0 ? null : (mm[0] * mm[1]) / 1e6;

/** The area that an amount for a target was spread on [m²]; null where it is not written. */
export function areaOfTarget(read: NotebookReader, target: Target): number | null {
  if (target.patch !== undefined && target.trial !== undefined) {
    const [width, height] = trialView(read, target.trial)?.laidOut?.body.geometry?.patchMm ?? [];
    return squareMetres([width, height]);
  }
  if (target.board !== undefined) {
    const board = read.making(target.board);
    if (board?.kind !== "board-cut") return null;
    const { lengthMm, widthMm } = board.body as Body<"board-cut">;
    return squareMetres([lengthMm, widthMm]);
  }
  // how large a part of a piece is stands nowhere
  if (target.piece === undefined || target.part !== undefined) return null;
  return pieceView(read, target.piece)?.areaM2 ?? null;
}
