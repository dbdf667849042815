import type { ScheduleStep } from "../notebook/kinds/pieces.ts";
import { type ShopWindow, windowsFromNow } from "../pieces/shop-windows.ts";
import { ok, type Result } from "../result.ts";
import { calculate } from "./calculation.ts";
import { type PiecePlanOutput, type ScheduleBody, scheduleFromPlan } from "./piece-schedule.ts";
import { piecePlan } from "./pieces.ts";
import type { Problem } from "./problem.ts";

/** A coat that is on: its number from 1, and when it was begun and finished, as 2026-10-05T19:40. */
export interface CoatOn {
  readonly coat: number;
  readonly from: string;
  readonly until: string;
}

/** Behind the last coat that is on, all counts as done; where a coat was put on, its hour is that of the log. */
function behindUs(
  steps: readonly ScheduleStep[],
  on: readonly CoatOn[],
  last: number,
): readonly ScheduleStep[] {
  let coat = 0;
  const out: ScheduleStep[] = [];
  for (const step of steps) {
    if (step.what === "coat") coat += 1;
    const logged = step.what === "coat" ? on.find((one) => one.coat === coat) : undefined;
    out.push(
      logged === undefined ? step : { ...step, day: logged.from.slice(0, 10), at: logged.from.slice(11) },
    );
    if (step.what === "coat" && coat === last) return out;
  }
  return out;
}

/**
 * A kept plan carried on: what is behind us stays as it happened, and the rest is planned anew into the evenings that are
 * left. Each step goes where it fits earliest, so a delay moves no more than it must.
 *
 * @param kept     the plan as the notebook keeps it, with what it was worked out from
 * @param on       coats that are on, any order
 * @param windows  evenings, in order of time
 * @param now      by the clock on the wall, as 2026-10-05T19:40
 * @returns        the plan anew, or the problem of the planner
 */
export function carriedOn(
  kept: ScheduleBody,
  on: readonly CoatOn[],
  windows: readonly ShopWindow[],
  now: string,
): Result<ScheduleBody, Problem> {
  const { begun: _, ...before } = kept.workedOutFrom;
  const last = on.reduce<CoatOn | undefined>(
    (a, b) => (a === undefined || b.coat > a.coat ? b : a),
    undefined,
  );
  const input = {
    ...before,
    windows: windowsFromNow(windows, now).map(([from, until]): [string, string] => [from, until]),
    ...(last === undefined ? {} : { begun: { coats: last.coat, at: last.until } }),
  };
  const plan = calculate(piecePlan, input) as Result<PiecePlanOutput, Problem>; // what this calculation gives
  if (!plan.ok) return plan;
  const anew = scheduleFromPlan(input, plan.value, {});
  if (last === undefined) return ok({ ...kept, steps: anew.steps, workedOutFrom: input });
  const behind = behindUs(kept.steps, on, last.coat);
  const ahead = anew.steps.filter((_, i) => plan.value.steps[i]?.done === false);
  const steps = [...behind, ...ahead].map((step, i) => ({ ...step, step: String(i + 1) }));
  return ok({ ...kept, steps, workedOutFrom: input });
}
