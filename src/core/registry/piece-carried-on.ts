import type { ScheduleStep } from "../notebook/kinds/pieces.ts";
import { coatNumbers, stepsBehind } from "../pieces/planned-evenings.ts";
import { type ShopWindow, windowsFromNow } from "../pieces/shop-windows.ts";
import { ok, type Result } from "../result.ts";
import { calculate } from "./calculation.ts";
import {
  type PiecePlanInput,
  type PiecePlanOutput,
  type ScheduleBody,
  scheduleFromPlan,
} from "./piece-schedule.ts";
import { piecePlan } from "./pieces.ts";
import type { Problem } from "./problem.ts";

/** A coat that is on: its number from 1, and when it was begun and finished, as 2026-10-05T19:40. */
export interface CoatOn {
  readonly coat: number;
  /** Where it is not on the whole piece. */
  readonly surface?: string;
  readonly from: string;
  readonly until: string;
}

const onSurface = (on: readonly CoatOn[], surface: string | undefined): readonly CoatOn[] =>
  on.filter((one) => one.surface === undefined || surface === undefined || one.surface === surface);

/** The coat that is on a surface with the highest number; of the whole piece where none is named. */
const lastOn = (on: readonly CoatOn[], surface?: string): CoatOn | undefined =>
  onSurface(on, surface).reduce<CoatOn | undefined>(
    (a, b) => (a === undefined || b.coat > a.coat ? b : a),
    undefined,
  );

/** Behind the last coat that is on, all counts as done; where a coat was put on, its hour is that of the log. */
function behindUs(steps: readonly ScheduleStep[], on: readonly CoatOn[]): readonly ScheduleStep[] {
  const coats = coatNumbers(steps);
  const behind = stepsBehind(steps, (coat, surface) => coat <= (lastOn(on, surface)?.coat ?? 0));
  return steps
    .filter((step) => behind.has(step))
    .map((step) => {
      const logged = onSurface(on, step.surface).findLast((one) => one.coat === coats.get(step));
      if (logged === undefined) return step;
      return { ...step, day: logged.from.slice(0, 10), at: logged.from.slice(11) };
    });
}

/** What is on, as the plan takes it: of the whole piece, or by surface. */
function begunWith(
  on: readonly CoatOn[],
  surfaces: PiecePlanInput["surfaces"],
): Pick<PiecePlanInput, "begun" | "begunOn"> {
  const last = lastOn(on);
  if (last === undefined) return {};
  if (surfaces === undefined) return { begun: { coats: last.coat, at: last.until } };
  return {
    begunOn: surfaces.flatMap(({ name }) => {
      const its = lastOn(on, name);
      return its === undefined ? [] : [{ surface: name, coats: its.coat, at: its.until }];
    }),
  };
}

/** The last hour of a plan, as 2026-10-05T19:40; what has only a day is not at the bench. */
const lastAt = (steps: readonly { readonly at: string | null }[]): string =>
  steps.reduce((last, { at }) => (at !== null && /T\d/.test(at) && at > last ? at : last), "");

/**
 * A kept plan carried on: what is behind us stays as it happened, and the rest is planned anew into the evenings that are
 * left. Each step goes where it fits earliest, so a delay moves no more than it must; where that would end later than was
 * planned, another order is looked for.
 *
 * @param kept     the plan as the notebook keeps it, with what it was worked out from
 * @param on       coats that are on, any order
 * @param windows  evenings, in order of time
 * @param now      by the clock on the wall, as 2026-10-05T19:40
 * @param limitMs  how long to look for another order
 * @returns        the plan anew, or the problem of the planner
 */
export function carriedOn(
  kept: ScheduleBody,
  on: readonly CoatOn[],
  windows: readonly ShopWindow[],
  now: string,
  limitMs = 0,
): Result<ScheduleBody, Problem> {
  const { begun: _, begunOn: __, ...before } = kept.workedOutFrom;
  const input = {
    ...before,
    windows: windowsFromNow(windows, now).map(([from, until]): [string, string] => [from, until]),
    ...begunWith(on, before.surfaces),
  };
  const planned = (limit: number) =>
    calculate(piecePlan, { ...input, limitMs: limit }) as Result<PiecePlanOutput, Problem>; // what this calculation gives
  const inOrder = planned(0);
  if (!inOrder.ok) return inOrder;
  const isLater =
    lastAt(inOrder.value.steps) > lastAt(kept.steps.map(({ day, at }) => ({ at: `${day}T${at}` })));
  const plan = isLater && limitMs > 0 ? planned(limitMs) : inOrder;
  if (!plan.ok) return plan;
  const anew = scheduleFromPlan(input, plan.value, {});
  if (on.length === 0) return ok({ ...kept, steps: anew.steps, workedOutFrom: input });
  const behind = behindUs(kept.steps, on);
  const ahead = anew.steps.filter((_, i) => plan.value.steps[i]?.done === false);
  const steps = [...behind, ...ahead].map((step, i) => ({ ...step, step: String(i + 1) }));
  return ok({ ...kept, steps, workedOutFrom: input });
}
