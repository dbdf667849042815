import { expect, test } from "vitest";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import { stripHours, stripRows } from "./strip-rows.ts";

const steps = [
  { step: "1", what: "sand", day: "2026-10-05", at: "18:00", minutes: 25, leastWaitMinutes: 0 },
  { step: "2", what: "coat", day: "2026-10-05", at: "18:25", minutes: 20, leastWaitMinutes: 120 },
  { step: "3", what: "coat", day: "2026-10-06", at: "18:00", minutes: 20, leastWaitMinutes: 0 },
  { step: "4", what: "cure", day: "2026-10-06", minutes: 0 },
] as const;

test("a row an evening, the wait drawn behind the hands, whole hours at both ends", () => {
  const rows = stripRows(steps, shopClock("Europe/Berlin"));
  expect(rows.map((row) => [row.day, row.blocks.length])).toEqual([
    ["2026-10-05", 2],
    ["2026-10-06", 1],
  ]);
  expect(rows[0]?.blocks.map((one) => one.level)).toEqual([0, 0]); // the sanding waits for nothing
  expect(rows[0]?.blocks[1]).toMatchObject({ from: 1105, until: 1125, dryUntil: 1245 });
  // 18:45 on one day to 18:00 on the next
  expect(rows.map((row) => row.gapHours)).toEqual([23.25, null]);
  expect(stripHours(rows)).toEqual({ from: 18, until: 21 });
});

// Directive 2000/84/EC: Berlin's clocks go back on 25 October 2026, forward on 28 March 2027; 15 U.S.C. 260a: New York's on 1 November 2026
// and 14 March 2027. By hand: from 21:00 to 18:00 are 21 hours, one more or one fewer over these nights.
test.each([
  ["Europe/Berlin", "2026-10-24", "2026-10-25", 22],
  ["Europe/Berlin", "2027-03-27", "2027-03-28", 20],
  ["America/New_York", "2026-10-31", "2026-11-01", 22],
  ["America/New_York", "2027-03-13", "2027-03-14", 20],
  ["America/New_York", "2026-10-24", "2026-10-25", 21],
])("%s, the night after %s: %i hours by real time", (zone, day, next, hours) => {
  const at = (on: string, from: string) => ({
    step: on,
    what: "sand" as const,
    day: on,
    at: from,
    minutes: 60,
  });
  expect(stripRows([at(day, "20:00"), at(next, "18:00")], shopClock(zone))[0]?.gapHours).toBe(hours);
});
