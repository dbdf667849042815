import { expect, test } from "vitest";
import { calculate } from "../registry/calculation.ts";
import type { PiecePlanInput, PiecePlanOutput } from "../registry/piece-schedule.ts";
import { piecePlan } from "../registry/pieces.ts";
import { calendarDay, daysLater } from "./calendar-day.ts";
import { finishingSchedules, scheduleSteps } from "./finishing-schedules.ts";

const windows = Array.from({ length: 60 }, (_, i): [string, string] => {
  const day = daysLater(calendarDay("2026-10-05"), i);
  return [`${day}T18:00`, `${day}T21:00`];
});
const coatsIn = (name: (typeof finishingSchedules)[number]): number =>
  scheduleSteps[name].reduce((sum, s) => sum + (s.what === "coat" ? (s.times ?? 1) : 0), 0);
const base = {
  areaM2: 1,
  method: "brush",
  cutLbPerGal: 2,
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  windows,
} as const;
const plan = (change: Partial<PiecePlanInput> & Pick<PiecePlanInput, "coats">): PiecePlanOutput => {
  const found = calculate(piecePlan, { ...base, ...change });
  if (!found.ok) throw new Error(`${found.error.field}: ${found.error.message}`);
  return found.value as PiecePlanOutput;
};

// trade reference B2 and B4: 3–5 coats plain brushed; 10–14 sessions of polish; padding of 1–2 lb, sprayed 1–1½, brushed
// 1½–2, a sealer of 1–2; no more than three colour coats; two or three days at the least before rubbing.
test("the schedules keep to what the trade reference says of them", () => {
  expect(coatsIn("brushed")).toBeGreaterThanOrEqual(3);
  expect(coatsIn("brushed")).toBeLessThanOrEqual(5);
  expect(coatsIn("padded")).toBeGreaterThanOrEqual(10);
  expect(coatsIn("padded")).toBeLessThanOrEqual(14);
  const most = { pad: 2, brush: 2, spray: 1.5 } as const;
  for (const name of finishingSchedules)
    for (const step of scheduleSteps[name]) {
      if (step.what === "cure") expect(step.leastWaitMinutes).toBeGreaterThanOrEqual(2 * 1440);
      if (step.what !== "coat") continue;
      expect(step.cutLbPerGal).toBeGreaterThanOrEqual(1);
      expect(step.cutLbPerGal).toBeLessThanOrEqual(most[step.method ?? "brush"]);
      if (step.as === "tint") expect(step.times).toBeLessThanOrEqual(3);
    }
});

test.each(finishingSchedules)("%s goes onto the evenings, and its jars add up to what is mixed", (name) => {
  const found = plan({ coats: coatsIn(name), steps: [...scheduleSteps[name]] });
  expect(found.unplacedSteps).toBe(0);
  expect(found.steps.filter(({ what }) => what === "coat")).toHaveLength(coatsIn(name));
  const sum = (of: (mix: PiecePlanOutput["mixes"][number]) => number) =>
    found.mixes.reduce((all, mix) => all + of(mix), 0);
  expect(sum((mix) => mix.solutionMl)).toBeCloseTo(found.solutionToMixMl, 6);
  expect(sum((mix) => mix.coats)).toBe(coatsIn(name));
  for (const mix of found.mixes) {
    // the same mixing as every other jar: 119.83 g of flakes to a litre of alcohol a pound (trade reference B1)
    expect(mix.resinG / mix.solventMl / mix.cutLbPerGal).toBeCloseTo(0.11983, 4);
  }
});

// trade reference B3: 4 mil wet of 1 lb dries to 0.36 mil and of 2 lb to 0.66, all of it staying
test("the film of a schedule is the sum of its coats, each of its own cut", () => {
  const wet = (cutLbPerGal: number) =>
    ({ what: "coat", cutLbPerGal, millilitresPerM2: 101.6, minutesPerM2: 5, leastWaitMinutes: 0 }) as const;
  const found = plan({ coats: 3, steps: [wet(1), { ...wet(2), times: 2 }] });
  expect(found.dryUm / 25.4).toBeCloseTo(0.36 + 2 * 0.66, 1);
});

test.each<[string, Partial<PiecePlanInput>]>([
  ["coats", { coats: 2 }],
  ["minutesPerM2", { minutesPerM2: 3 }],
  ["cureDays", { cureDays: 3 }],
  ["steps[0].times", { steps: [{ what: "sand", times: 2, minutesPerM2: 1, leastWaitMinutes: 0 }] }],
  ["steps[0].wait", { steps: [{ what: "coat", wait: 2, minutesPerM2: 1, leastWaitMinutes: 0 } as never] }],
])("%s is refused by name", (field, change) => {
  const one = [{ what: "coat", minutesPerM2: 5, leastWaitMinutes: 0 } as const];
  const coats = field === "steps[0].times" ? 0 : 1;
  const found = calculate(piecePlan, { ...base, coats, steps: one, ...change });
  expect(found.ok ? null : found.error.field).toBe(field);
});
