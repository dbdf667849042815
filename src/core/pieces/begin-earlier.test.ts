import { expect, test } from "vitest";
import { planFaults } from "../plan-check/plan-faults.ts";
import { calculate } from "../registry/calculation.ts";
import { type PiecePlanInput, type PiecePlanOutput, scheduleFromPlan } from "../registry/piece-schedule.ts";
import { piecePlan } from "../registry/pieces.ts";
import { shopClock } from "../schedule/shop-clock.ts";
import { beginEarlier } from "./begin-earlier.ts";
import type { WrittenStep } from "./finishing-schedules.ts";
import type { ShopWindow } from "./shop-windows.ts";

const zone = "Europe/Berlin";
const clock = shopClock(zone);
/** Twenty minutes to sand, and coats of half an hour with two hours between them. */
const input = (windows: readonly ShopWindow[], coats = 3): PiecePlanInput => ({
  areaM2: 1,
  method: "brush",
  coats,
  cutLbPerGal: 2,
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  steps: [
    { what: "sand", minutesPerM2: 20, leastWaitMinutes: 0 },
    { what: "coat", times: coats, millilitresPerM2: 100, minutesPerM2: 30, leastWaitMinutes: 120 },
  ],
  windows: windows.map(([from, until]): [string, string] => [from, until]),
  zone,
});
function planned(windows: readonly ShopWindow[], coats = 3) {
  const given = input(windows, coats);
  const found = calculate(piecePlan, given);
  if (!found.ok) throw new Error(found.error.message);
  return scheduleFromPlan(given, found.value as PiecePlanOutput, {}).steps;
}
const found = (windows: readonly ShopWindow[], now: string, coats = 3) =>
  beginEarlier({ steps: planned(windows, coats), on: (w) => planned(w, coats) }, windows, now, clock);
const evenings = (days: readonly string[], from: string, until: string) =>
  days.map((day) => [`${day}T${from}`, `${day}T${until}`] as const);
const week = evenings(["2026-10-05", "2026-10-06", "2026-10-07", "2026-10-08"], "18:00", "21:00");

// By hand: sanded until 18:20, coat 1 until 18:50, so that coat 2 is due at 20:50 and would be done at 21:20: twenty minutes too late.
test("coat 2 comes due at 20:50, too late to be done by 21:00; begun at 17:40 it goes on that evening", () => {
  const told = found(week, "2026-10-05T08:00");
  expect(told).toMatchObject({
    from: "2026-10-05T17:40",
    until: "2026-10-05T21:00",
    due: "2026-10-05T20:50",
  });
  expect(told?.coats.map(({ what, day, at }) => [what, day, at])).toEqual([["coat", "2026-10-06", "18:00"]]);
});

test("nothing begins before now; then the next evening that it helps is told", () => {
  // By hand: coats 2 and 3 fit the second evening, 18:00 and 20:30; nothing is left for the third.
  expect(found(week, "2026-10-05T17:45")).toBeNull();
  // With a fourth coat the second evening would need 330 minutes from 18:00, until 23:30: begun at 15:30.
  expect(found(week, "2026-10-05T17:45", 4)).toMatchObject({
    from: "2026-10-06T15:30",
    due: "2026-10-06T23:00",
  });
});

test("a night that is asked is no such wait", () => {
  const given = input(week, 2);
  const [sand, coat] = given.steps as [WrittenStep, WrittenStep];
  const steps = [sand, { ...coat, times: 1, overnight: true }, { ...coat, times: 1 }];
  const on = (windows: readonly ShopWindow[]) => {
    const now = {
      ...given,
      steps,
      windows: windows.map(([a, b]): [string, string] => [a, b]),
    };
    const plan = calculate(piecePlan, now);
    return plan.ok ? scheduleFromPlan(now, plan.value as PiecePlanOutput, {}).steps : null;
  };
  expect(beginEarlier({ steps: on(week) ?? [], on }, week, "2026-10-05T08:00", clock)).toBeNull();
});

// The check shares nothing with the planner.
test("the independent check passes the plan from that beginning, and five minutes later the coat is not in it", () => {
  for (const until of ["19:45", "20:00", "20:30", "21:00", "21:15", "22:00"])
    for (const coats of [2, 3, 4, 5]) {
      const windows = evenings(
        ["2026-10-23", "2026-10-24", "2026-10-25", "2026-10-26", "2026-10-27", "2026-10-28"],
        "18:00",
        until,
      );
      const told = found(windows, "2026-10-23T08:00", coats);
      if (told === null) continue;
      const day = told.from.slice(0, 10);
      const begun = (from: string) =>
        windows.map((one) => (one[0].startsWith(day) ? ([from, one[1]] as const) : one));
      const at = begun(told.from);
      const steps = planned(at, coats);
      const minutes = (text: string) => clock.minutes(text, "test");
      const names = steps.map((_, i) => String(i));
      const rules = {
        tasks: steps.map(({ minutes: m = 0 }, i) => ({ task: String(i), minutes: m, hands: true })),
        waits: names
          .slice(1)
          .map((to, i) => ({ from: String(i), to, leastMinutes: steps[i]?.leastWaitMinutes ?? 0 })),
        capacity: { person: 1 },
        windows: at.map(([a, b]) => [minutes(a), minutes(b)] as const),
      };
      const starts = Object.fromEntries(steps.map((s, i) => [String(i), minutes(`${s.day}T${s.at}`)]));
      expect(planFaults(rules, { starts })).toEqual([]);
      const coatsBy = (all: typeof steps) =>
        all.filter((s) => s.what === "coat" && (s.day ?? "9") <= day).length;
      expect(coatsBy(steps)).toBeGreaterThan(coatsBy(planned(windows, coats)));
      const later = clock.clock(minutes(told.from) + 5);
      expect(coatsBy(planned(begun(later), coats))).toBe(coatsBy(planned(windows, coats)));
    }
});
