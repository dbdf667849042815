import type { Finish } from "../../core/colour/finish-colour.ts";
import type { ScheduleStep } from "../../core/notebook/kinds/pieces.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import { coatNumbers } from "../../core/pieces/planned-evenings.ts";
import type { ScheduleBeside } from "../../core/registry/piece-schedule.ts";
import type { PlannedCoat } from "../../core/views/coats-on.ts";
import { materialView } from "../../core/views/material.ts";
import type { PieceView } from "../../core/views/piece.ts";
import { finishOfRecipe } from "../look/finish-of-recipe.ts";
import * as words from "../words/words.ts";
import { shortCut } from "./cut-text.ts";
import { type Plan, type PlanInput, planFrom } from "./draft.ts";
import { type Cost, costOf } from "./shelf-choice.ts";

type Schedule = NonNullable<PieceView["schedule"]>;

/** What of the shelf a kept plan is mixed with, by id, where it says. */
export const mixedWith = (schedule: Schedule | null): Pick<Partial<ScheduleBeside>, "resin" | "solvent"> =>
  (schedule ?? {}) as Partial<ScheduleBeside>;

/** The plan worked out again from what it was worked out from; null where that was not kept or no longer fits. */
export function planOfSchedule(
  schedule: Schedule | null,
): { readonly input: PlanInput; readonly plan: Plan } | null {
  const input = (schedule as Partial<ScheduleBeside> | null)?.workedOutFrom;
  if (input === undefined) return null;
  const plan = planFrom(input);
  return plan.ok ? { input, plan: plan.value } : null;
}

/** What a millilitre of a plan's liquid weighs [g]; null where it was not worked out in this book. */
export function gramsPerMl(schedule: Schedule | null): number | null {
  const plan = planOfSchedule(schedule)?.plan;
  return plan === undefined ? null : (plan.resinG + plan.solventG) / plan.solutionToMixMl;
}

/** What the kept plan costs, at what was last paid. */
export function costOfSchedule(read: NotebookReader, schedule: Schedule | null, plan: Plan): Cost | null {
  const { resin, solvent } = mixedWith(schedule);
  const bought = (id: string | undefined) => (id === undefined ? null : materialView(read, id));
  return costOf(bought(resin), bought(solvent), plan.resinG, plan.solventMl);
}

/** The wax in the flakes of a plan, by mass; null where it is not known. */
export function waxOfSchedule(read: NotebookReader, schedule: Schedule | null): number | null {
  const id = mixedWith(schedule).resin;
  return id === undefined ? null : (materialView(read, id)?.resin?.wax ?? null);
}

export function finishOfSchedule(read: NotebookReader, schedule: Schedule | null): Finish | undefined {
  const id = mixedWith(schedule).resin;
  const grade = id === undefined ? undefined : materialView(read, id)?.resin?.grade;
  return finishOfRecipe(grade, schedule?.recipe.cutLbPerGal);
}

/** What a schedule has of its coats, each once, in the order in which they come; the recipe's own where its steps do not say. */
function ofCoats<T>(schedule: Schedule, of: (step: ScheduleStep) => T | undefined, usual: T): readonly T[] {
  const found = schedule.steps.filter((step) => step.what === "coat").map((step) => of(step) ?? usual);
  return found.length === 0 ? [usual] : [...new Set(found)];
}

const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

/** `Four coats of 1½ lb lemon flakes in ethanol 96 %, padded.` */
export function recipeInWords(schedule: Schedule): string {
  const { coats, resin, alcohol } = schedule.recipe;
  const cuts = ofCoats(schedule, (step) => step.cutLbPerGal, schedule.recipe.cutLbPerGal);
  const methods = ofCoats(schedule, (step) => step.method, schedule.recipe.method);
  const said = words.pieces.recipe(
    coats,
    listed(cuts.map(shortCut)),
    resin ?? words.pieces.flakes,
    alcohol ?? words.pieces.alcoholOf,
    listed(methods.map((method) => words.pieces.methodsDone[method] ?? method)),
  );
  return said.charAt(0).toUpperCase() + said.slice(1);
}

/** The steps of a coat: one, or one a side or part; of one of them alone where it is named. */
export function coatSteps(
  schedule: Schedule | null,
  { coat, surface }: PlannedCoat,
): readonly ScheduleStep[] {
  const coats = coatNumbers(schedule?.steps ?? []);
  return [...coats.keys()].filter(
    (step) => coats.get(step) === coat && (surface === undefined || step.surface === surface),
  );
}
