import type { WrittenStep } from "./finishing-schedules.ts";

/** The recipe that a schedule is known by: that of the coats which take most of the liquid. */
export function mainCoat(steps: readonly WrittenStep[]): WrittenStep | undefined {
  const coats = steps.filter((step) => step.what === "coat");
  const liquid = (step: WrittenStep): number => (step.times ?? 1) * (step.millilitresPerM2 ?? 0);
  return coats.reduce<WrittenStep | undefined>(
    (most, step) => (most === undefined || liquid(step) > liquid(most) ? step : most),
    undefined,
  );
}

/** How many coats the steps are in all. */
export const coatsIn = (steps: readonly WrittenStep[]): number =>
  steps.reduce((sum, step) => sum + (step.what === "coat" ? (step.times ?? 1) : 0), 0);
