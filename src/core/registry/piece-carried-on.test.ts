import { expect, test } from "vitest";
import { movedWindow, type ShopWindow } from "../pieces/shop-windows.ts";
import { soonerIf } from "../pieces/sooner.ts";
import type { Result } from "../result.ts";
import { calculate } from "./calculation.ts";
import { type CoatOn, carriedOn } from "./piece-carried-on.ts";
import {
  type PiecePlanInput,
  type PiecePlanOutput,
  type ScheduleBody,
  scheduleFromPlan,
} from "./piece-schedule.ts";
import { piecePlan } from "./pieces.ts";

const days = ["05", "06", "07", "08", "09"].map((day) => `2026-10-${day}`);
const evening = (day: string, from = "18:00", until = "21:00"): ShopWindow => [
  `${day}T${from}`,
  `${day}T${until}`,
];
const evenings = days.map((day) => evening(day));

/** By hand: 20 minutes to sand, then coats of 30 minutes, two hours between: two fit into an evening of three hours. */
const given: PiecePlanInput = {
  areaM2: 1,
  method: "brush",
  coats: 5,
  cutLbPerGal: 2,
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  steps: [
    { what: "sand", minutesPerM2: 20, leastWaitMinutes: 0 },
    { what: "coat", times: 5, millilitresPerM2: 100, minutesPerM2: 30, leastWaitMinutes: 120 },
  ],
  windows: [],
};
const planned = (windows: readonly ShopWindow[], change: Partial<PiecePlanInput> = {}) =>
  calculate(piecePlan, {
    ...given,
    ...change,
    windows: windows.map(([from, until]): [string, string] => [from, until]),
  }) as Result<PiecePlanOutput, never>;
function kept(windows: readonly ShopWindow[] = evenings): ScheduleBody {
  const plan = planned(windows);
  if (!plan.ok) throw new Error("it can be planned");
  return scheduleFromPlan({ ...given, windows: windows.map(([a, b]) => [a, b]) }, plan.value, {});
}
const told = ({ steps }: ScheduleBody) =>
  steps.map((s) => `${s.what} ${s.day?.slice(8) ?? "?"} ${s.at ?? ""}`.trim());
function anew(on: readonly CoatOn[], windows: readonly ShopWindow[], now: string): ScheduleBody {
  const found = carriedOn(kept(), on, windows, now);
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}
const coat = (n: number, from: string, until: string): CoatOn => ({ coat: n, from, until });

test("as planned at first: one coat and the sanding, then two an evening", () => {
  expect(told(kept())).toEqual([
    "sand 05 18:00",
    "coat 05 18:20",
    "coat 06 18:00",
    "coat 06 20:30",
    "coat 07 18:00",
    "coat 07 20:30",
  ]);
});

test("a coat that was late moves what it must: the next waits its two hours, the evenings after it stay", () => {
  const late = anew(
    [coat(1, "2026-10-05T18:20", "2026-10-05T18:50"), coat(2, "2026-10-06T18:20", "2026-10-06T18:50")],
    evenings,
    "2026-10-06T18:55",
  );
  expect(told(late)).toEqual([
    "sand 05 18:00",
    "coat 05 18:20",
    "coat 06 18:20",
    "coat 07 18:00", // at 20:50 it would not be done before nine
    "coat 07 20:30",
    "coat 08 18:00",
  ]);
  expect(late.workedOutFrom.begun).toEqual({ coats: 2, at: "2026-10-06T18:50" });
  // and once more from there: what was begun before is not asked again
  const on = [
    coat(3, "2026-10-07T18:00", "2026-10-07T18:30"),
    coat(1, "2026-10-05T18:20", "2026-10-05T18:50"),
  ];
  const later = carriedOn(late, on, evenings, "2026-10-07T18:31");
  expect(later.ok && told(later.value).slice(3)).toEqual(["coat 07 18:00", "coat 07 20:30", "coat 08 18:00"]);
});

test("an evening that goes to another day takes what follows with it", () => {
  const moved = movedWindow(evenings, "2026-10-06", evening("2026-10-10", "10:00", "13:00"));
  expect(told(anew([], moved, "2026-10-01T12:00"))).toEqual([
    "sand 05 18:00",
    "coat 05 18:20",
    "coat 07 18:00",
    "coat 07 20:30",
    "coat 08 18:00",
    "coat 08 20:30",
  ]);
});

test("an evening that goes where another lies becomes part of it; one that ends first is refused", () => {
  expect(movedWindow(evenings.slice(0, 2), "2026-10-05", evening("2026-10-06", "16:00", "19:00"))).toEqual([
    ["2026-10-06T16:00", "2026-10-06T21:00"],
  ]);
  expect(() => movedWindow(evenings, "2026-10-05", evening("2026-10-06", "19:00", "18:00"))).toThrow(
    /after it begins/,
  );
  expect(() => movedWindow(evenings, "2026-10-05", ["tonight", "2026-10-06T20:00"])).toThrow(
    /2026-10-05T18:00/,
  );
});

test("nothing goes into time that has passed, and coats that were never planned are refused by name", () => {
  expect(told(anew([], evenings, "2026-10-06T19:00"))[0]).toBe("sand 06 19:00");
  const found = carriedOn(
    kept(),
    [coat(9, "2026-10-05T18:20", "2026-10-05T18:50")],
    evenings,
    "2026-10-06T18:55",
  );
  expect(found.ok ? null : found.error.field).toBe("begun.coats");
  const all = anew([coat(5, "2026-10-07T20:30", "2026-10-07T21:00")], evenings, "2026-10-08T09:00");
  expect(told(all)).toHaveLength(6);
});

test("how much longer the evenings must be for one fewer, by hand: twenty minutes, since 18:20 to 21:20 hold two coats", () => {
  const lastDay = (windows: readonly ShopWindow[]) => {
    const plan = planned(windows);
    return plan.ok ? (plan.value.steps.at(-1)?.at?.slice(0, 10) ?? null) : null;
  };
  // five coats: two on the first evening and three on the second, which take 3 · 30 + 2 · 120 = 330 minutes, 150 more than 180
  expect(soonerIf(evenings, lastDay)).toEqual({
    how: "begin earlier",
    minutes: 150,
    lastDay: "2026-10-06",
  });
  expect(soonerIf(evenings.slice(0, 2), lastDay)).toBeNull(); // it does not end at all
  const four = (windows: readonly ShopWindow[]) => {
    const steps = given.steps?.map((s) => (s.what === "coat" ? { ...s, times: 4 } : s));
    const plan = planned(windows, { coats: 4, ...(steps === undefined ? {} : { steps }) });
    return plan.ok ? (plan.value.steps.at(-1)?.at?.slice(0, 10) ?? null) : null;
  };
  expect(soonerIf(evenings, four)).toEqual({ how: "begin earlier", minutes: 20, lastDay: "2026-10-06" });
});

const sides = [
  { name: "underside", share: 0.5 },
  { name: "top", share: 0.5, turned: true },
];
/** By hand: ten minutes a side to sand, a quarter of an hour a side for a coat that is turned onto after an hour. */
const topGiven: PiecePlanInput = {
  ...given,
  coats: 3,
  steps: [
    { what: "sand", minutesPerM2: 20, leastWaitMinutes: 0 },
    { what: "coat", times: 2, millilitresPerM2: 100, minutesPerM2: 30, leastWaitMinutes: 60 },
    { what: "wait", minutesPerM2: 0, leastWaitMinutes: 0, overnight: true },
    { what: "coat", millilitresPerM2: 100, minutesPerM2: 30, leastWaitMinutes: 60 },
  ],
  surfaces: sides,
};
const sided = ({ steps }: ScheduleBody) =>
  steps.map((s) => `${s.what} ${s.surface ?? "-"} ${s.day?.slice(8) ?? "?"} ${s.at ?? ""}`.trim());

test("a coat that is on one side holds the other; what is on both is behind, each with its hour", () => {
  const plan = planned(evenings, topGiven);
  if (!plan.ok) throw new Error("it can be planned");
  const top = scheduleFromPlan(topGiven, plan.value, {});
  const first = sided(top);
  expect(first).toEqual([
    "sand underside 05 18:00",
    "sand top 05 18:10",
    "coat underside 05 18:20",
    "coat top 05 19:35",
    "coat underside 06 18:00", // 19:50 and an hour leave ten minutes
    "coat top 06 19:15",
    "wait - 06",
    "coat underside 07 18:00",
    "coat top 07 19:15",
  ]);
  const late = carriedOn(
    top,
    [
      { coat: 1, surface: "underside", from: "2026-10-05T18:20", until: "2026-10-05T18:35" },
      { coat: 1, surface: "top", from: "2026-10-05T19:35", until: "2026-10-05T19:50" },
      { coat: 2, surface: "underside", from: "2026-10-06T19:30", until: "2026-10-06T19:45" },
    ],
    evenings,
    "2026-10-06T19:50",
  );
  expect(late.ok && sided(late.value)).toEqual([
    ...first.slice(0, 4),
    "coat underside 06 19:30",
    "coat top 06 20:45", // a quarter of an hour before nine: it just fits
    ...first.slice(6),
  ]);
  expect(late.ok && late.value.workedOutFrom.begunOn).toEqual([
    { surface: "underside", coats: 2, at: "2026-10-06T19:45" },
    { surface: "top", coats: 1, at: "2026-10-05T19:50" },
  ]);
  // the rest from there: the wait is behind once, and not asked again
  if (!late.ok) return;
  const on = [3, 2].map((coat) => ({ coat, from: "2026-10-08T18:00", until: "2026-10-08T18:15" }));
  const done = carriedOn(late.value, on, evenings, "2026-10-08T18:20");
  expect(done.ok && sided(done.value).filter((line) => line.startsWith("wait"))).toHaveLength(1);
  expect(done.ok && done.value.steps).toHaveLength(9);
});
