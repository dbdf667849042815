import type { BoardGeometry } from "../../core/design/board-geometry.ts";
import type { Trial } from "../../core/views/trial.ts";
import * as words from "../words/words.ts";
import type { DrawnBoard } from "./boards.tsx";

/** The size that the boards were drawn to; a trial that came without one is drawn as common ones are. */
export function geometryOf(trial: Trial): BoardGeometry {
  const g = trial.laidOut?.body.geometry;
  const most = Math.max(1, ...(trial.laidOut?.body.boards.map((b) => b.patches) ?? []));
  const [lengthMm, widthMm] = g?.boardMm ?? [160 * most, 105];
  const [patchLengthMm, patchWidthMm] = g?.patchMm ?? [145, 85];
  return {
    lengthMm,
    widthMm,
    gutterMm: g?.gutterMm ?? 15,
    patchLengthMm,
    patchWidthMm,
    judgedInsetMm: g?.judgedInsetMm ?? 9,
  };
}

/** The boards with what each patch has; turns are those of the coat that comes next. */
export function drawnTrial(trial: Trial, here?: string): readonly DrawnBoard[] {
  const session = Math.min(trial.coatsDone, (trial.laidOut?.body.orders.length ?? 1) - 1);
  return (trial.laidOut?.body.boards ?? []).map((b) => ({
    name: words.trials.sentence.capital(b.name),
    plank: b.plank,
    wood: b.wood,
    patches: trial.patches
      .filter((p) => p.board === b.name)
      .map((p) => ({
        patch: p.patch,
        code: p.code,
        place: p.place,
        turn: trial.state === "judging" || trial.state === "closed" ? null : (p.turns[session] ?? null),
        coats: p.coats,
        leftOut: p.leftOut !== null,
        here: p.patch === here,
      })),
  }));
}

/** Patches still in the trial that lack a reading of some response after the last coat. */
export function unjudged(trial: Trial): readonly string[] {
  const read = new Set(
    trial.readings.filter((r) => r.afterCoat >= trial.asked.coats).map((r) => `${r.response}\n${r.patch}`),
  );
  return trial.patches
    .filter((p) => p.leftOut === null)
    .filter((p) => trial.asked.looksAt.some((look) => !read.has(`${look.name}\n${p.patch}`)))
    .map((p) => p.patch);
}

/** Recipes that were tried, once the key is open: what can be chosen at the end. */
export const levelsTried = (
  trial: Trial,
): readonly { readonly factor: string; readonly levels: readonly string[] }[] =>
  trial.asked.varies.filter((v) => v.levels.length > 1).map((v) => ({ factor: v.factor, levels: v.levels }));
