import type { Trial } from "../../core/views/trial.ts";
import type { PatchState } from "../../core/views/trial-patches.ts";

/** One numbered line of a session sheet: the patch whose turn it is. */
export interface SheetLine {
  readonly key: string;
  /** As printed on the sheet. */
  readonly number: number;
  readonly coat: number;
  readonly patch: string;
  readonly code: string;
  readonly board: string;
  readonly place: number;
  readonly boardId: string | null;
  /** The jar that the key says it gets, where the key is open to everyone. */
  readonly batch: string | null;
  readonly coats: number;
  readonly lastAt: string | null;
  readonly state: "waits" | "written" | "out of the trial";
}

function stateOf(patch: PatchState, coat: number): SheetLine["state"] {
  if (patch.coats >= coat) return "written";
  return patch.leftOut === null ? "waits" : "out of the trial";
}

/** The lines of one coat's sheet, in the order that was drawn and printed. */
export function sheetOf(trial: Trial, coat: number): readonly SheetLine[] {
  const laid = trial.laidOut?.body;
  return (laid?.orders[coat - 1] ?? []).flatMap((code, i): SheetLine[] => {
    const patch = trial.patches.find((one) => one.code === code);
    if (patch === undefined) return [];
    const { board, place, batch, coats } = patch;
    return [
      {
        key: `${coat}/${code}`,
        number: i + 1,
        ...{ coat, patch: patch.patch, code, board, place, batch, coats },
        boardId: laid?.boards.find((one) => one.name === board)?.board ?? null,
        lastAt: patch.lastLayerAt,
        state: stateOf(patch, coat),
      },
    ];
  });
}

/** Coats of the plan that some patch still waits for. */
export const coatsWaiting = (trial: Trial): readonly number[] =>
  Array.from({ length: trial.asked.coats }, (_, i) => i + 1).filter((coat) =>
    sheetOf(trial, coat).some(({ state }) => state === "waits"),
  );
