import type { z } from "zod";
import type { Body } from "../notebook/kinds/all.ts";
import type { ScheduleStep } from "../notebook/kinds/pieces.ts";
import type { piecePlan } from "./pieces.ts";

export type PiecePlanInput = z.input<typeof piecePlan.input>;
export type PiecePlanOutput = z.output<typeof piecePlan.output>;

/** Something off the shelf that a recipe is made with. */
interface Chosen {
  readonly id: string;
  readonly name: string;
}

export interface ScheduleFrom {
  readonly resin?: Chosen | null;
  readonly solvent?: Chosen | null;
  readonly fromTrial?: string;
}

/** What a schedule's body holds beside its steps: enough to work the plan out again. */
export interface ScheduleBeside {
  readonly workedOutFrom: PiecePlanInput;
  /** Materials, by id. */
  readonly resin?: string;
  readonly solvent?: string;
}

export type ScheduleBody = Body<"piece-scheduled"> & ScheduleBeside;

/** A planned step as the notebook keeps it. */
const keptStep = (
  step: PiecePlanOutput["steps"][number],
  i: number,
  input: PiecePlanInput,
): ScheduleStep => ({
  step: String(i + 1),
  what: step.what,
  ...(step.at === null ? {} : { day: step.at.slice(0, 10) }),
  ...(step.at === null || step.at.length === 10 ? {} : { at: step.at.slice(11) }),
  ...(step.what === "coat"
    ? {
        method: step.method ?? input.method,
        cutLbPerGal: step.cutLbPerGal ?? input.cutLbPerGal,
        millilitres: step.solutionMl,
      }
    : {}),
  ...(step.as === null ? {} : { as: step.as }),
  ...(step.surface === null ? {} : { surface: step.surface }),
  minutes: step.minutes,
  leastWaitMinutes: step.leastWaitMinutes,
  ...(step.mostWaitMinutes === null ? {} : { mostWaitMinutes: step.mostWaitMinutes }),
});

/** A plan as the notebook keeps it: the recipe, the dated steps, and the input that gave them. */
export function scheduleFromPlan(
  input: PiecePlanInput,
  plan: PiecePlanOutput,
  from: ScheduleFrom,
): ScheduleBody {
  const { resin, solvent, fromTrial } = from;
  return {
    ...(fromTrial === undefined ? {} : { fromTrial }),
    recipe: {
      cutLbPerGal: input.cutLbPerGal,
      coats: input.coats,
      method: input.method,
      ...(resin ? { resin: resin.name } : {}),
      ...(solvent ? { alcohol: solvent.name } : {}),
    },
    steps: plan.steps.map((step, i) => keptStep(step, i, input)),
    millilitresPerM2PerCoat: plan.millilitresPerM2PerCoat,
    spareShare: input.spareShare ?? 0,
    workedOutFrom: input,
    ...(resin ? { resin: resin.id } : {}),
    ...(solvent ? { solvent: solvent.id } : {}),
  };
}
