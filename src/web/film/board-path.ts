import type { NotebookReader } from "../../core/notebook/reader.ts";
import type { Place } from "../../core/views/place.ts";
import { trialView } from "../../core/views/trial.ts";

/** The page of a board of a trial, at one of its patches. */
export const boardPath = (trial: string, board: string, patch?: string): string =>
  `/trials/${trial}/boards/${encodeURIComponent(board)}${patch === undefined ? "" : `?patch=${encodeURIComponent(patch)}`}`;

/** The bench with one board of a trial in hand: what its label opens. */
export const boardAtBench = (trial: string, board: string): string =>
  `/bench/boards/${trial}/${encodeURIComponent(board)}`;

/** Where the film at a place is drawn: the board of its patch, or its piece; an offcut has no page of its own. */
export function filmPath(read: NotebookReader, place: Place): string | undefined {
  if ("piece" in place) return `/pieces/${place.piece}`;
  if ("board" in place) return undefined;
  const patch = trialView(read, place.trial)?.patches.find((one) => one.patch === place.patch);
  return patch === undefined ? undefined : boardPath(place.trial, patch.board, patch.patch);
}
