import { expect, test } from "vitest";
import { planFaults } from "../plan-check/plan-faults.ts";
import { readAgenda } from "../registry/agenda-input.ts";
import { scheduleAgenda } from "../registry/schedule-agenda.ts";
import type { MeasuredPlan } from "./good-agenda.ts";
import { layAgenda } from "./lay-agenda.ts";
import { planAgenda } from "./plan-agenda.ts";
import { compareMeasures } from "./plan-measures.ts";

const day = (d: number): string => new Date(Date.UTC(2026, 9, 5 + d)).toISOString().slice(0, 10);

/** Patches with coats that wait for each other, on so many evenings of three hours. */
function trial(patches: number, coats: number, evenings: number, leastMinutes: number, mostMinutes: number) {
  const name = (p: number, c: number): string => `patch ${p} coat ${c}`;
  const all = Array.from({ length: patches * coats }, (_, i) => [Math.floor(i / coats), i % coats] as const);
  return {
    tasks: all.map(([p, c]) => ({ task: name(p, c), minutes: 3 + (p % 3), hands: true })),
    waits: all.flatMap(([p, c]) =>
      c === 0 ? [] : [{ from: name(p, c - 1), to: name(p, c), leastMinutes, mostMinutes }],
    ),
    windows: Array.from({ length: evenings }, (_, d): [string, string] => [
      `${day(d)}T18:00`,
      `${day(d)}T21:00`,
    ]),
    zone: "Europe/Berlin",
  };
}

test("the demo trial, 32 patches of 6 coats on 6 evenings, is proven best by its bounds alone", () => {
  const laid = layAgenda(readAgenda(trial(32, 6, 6, 720, 2000)).agenda);
  const { plan, lowerBound, provenBest } = planAgenda(laid, { steps: 2e6 });
  expect(provenBest).toBe("all goals");
  // 32 last coats of 3, 4 and 5 minutes on the sixth evening: 127 minutes from 18:00
  expect(lowerBound).toBe(5 * 1440 + 127);
  expect(plan).toMatchObject({ finish: lowerBound, sessions: 6, idleMinutes: 0 });
});

test("with three pads on each evening every evening has two changes, and no more", () => {
  const demo = trial(32, 6, 6, 720, 2000);
  const pads = ["thin", "full", "tint"];
  const tasks = demo.tasks.map((task, k) => ({ ...task, setup: pads[((k * 7919) >> 3) % 3] as string }));
  const { agenda } = readAgenda({ ...demo, tasks, setups: { anyOther: 4 } });
  const { plan, provenBest } = planAgenda(layAgenda(agenda), { steps: 2e6 });
  // 127 minutes of work on the sixth evening, and two changes of four minutes on each
  expect(plan).toMatchObject({ finish: 5 * 1440 + 127 + 8, sessions: 6, idleMinutes: 6 * 8 });
  expect(provenBest).toBe("all goals");
});

test.each([
  ["200 patches of 10 coats", trial(200, 10, 60, 720, 3000), 1.08],
  ["the same by three people", { ...trial(200, 10, 60, 720, 3000), capacity: { person: 3 } }, 1.01],
  ["400 patches of 5 coats, each patch on one evening", trial(400, 5, 60, 30, 90), 1.1],
])("2 000 tasks are planned without a fault, close to a bound that no plan beats: %s", (_, given, ratio) => {
  const { agenda } = readAgenda(given);
  const { plan, lowerBound } = planAgenda(layAgenda(agenda), { steps: 6e5 });
  const { starts, ...claims } = plan as MeasuredPlan;
  const claimed = Object.fromEntries(agenda.tasks.map((t, k) => [t.task, starts[k] as number]));
  expect(planFaults(agenda, { starts: claimed, ...claims, lowerBound })).toEqual([]);
  expect(claims.finish / lowerBound).toBeLessThan(ratio);
});

test("where no coat may wait for the evening after next, 2 000 tasks are proven by their bounds", () => {
  const { agenda } = readAgenda(trial(100, 20, 80, 720, 1500));
  const { plan, lowerBound, provenBest } = planAgenda(layAgenda(agenda), { steps: 6e5 });
  // By hand: each patch takes 20 evenings in a row, so evenings 20, 40 and 60 hold a coat of each: 34·3 + 33·4 + 33·5 = 399
  // minutes, of which 39 are left for evening 60. The clocks go back in between.
  expect(lowerBound).toBe(59 * 1440 + 60 + 399 - 2 * 180);
  expect(plan).toMatchObject({ finish: lowerBound, sessions: 60, idleMinutes: 0 });
  expect(provenBest).toBe("all goals");
});

const crowded = () => trial(20, 4, 6, 120, 2000);

test("who watches is told of better and better plans, the last of which is the answer", () => {
  const told: MeasuredPlan[] = [];
  const bounds: number[] = [];
  const { plan } = planAgenda(layAgenda(readAgenda(crowded()).agenda), {
    steps: 2e5,
    onBest: (better, lowerBound) => {
      told.push(better);
      bounds.push(lowerBound);
    },
  });
  expect(told.length).toBeGreaterThan(1);
  expect(told.at(-1)).toEqual(plan);
  told.slice(1).forEach((later, i) => {
    expect(compareMeasures(later, told[i] as MeasuredPlan)).toBeLessThanOrEqual(0);
  });
  expect(bounds).toEqual(bounds.toSorted((a, b) => a - b));
});

test("a search that is stopped gives the best that it had, and claims no proof that it has not", () => {
  let asked = 0;
  const steps = Number.POSITIVE_INFINITY;
  const stopped = scheduleAgenda(crowded(), { steps, mustStop: () => ++asked >= 2 });
  expect(stopped.plan).not.toBeNull();
  expect(stopped.provenBest).toBeNull();
  expect((stopped.lowerBound as string) <= (stopped.plan?.finish as string)).toBe(true);
});
