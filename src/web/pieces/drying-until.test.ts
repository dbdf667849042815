import { expect, test } from "vitest";
import { shopClock } from "../../core/schedule/shop-clock.ts";
import { dryingUntil } from "./drying-until.ts";

const coat = {
  step: "1",
  what: "coat" as const,
  minutes: 30,
  leastWaitMinutes: 8 * 60,
  mostWaitMinutes: 24 * 60,
};
const schedule = {
  entry: "plan",
  recipe: { cutLbPerGal: 2, coats: 2, method: "brush" as const },
  steps: [coat, { ...coat, step: "2" }],
  millilitresPerM2PerCoat: 100,
};

// Directive 2000/84/EC: Berlin's clocks go back on 25 October 2026 at 03:00, forward on 28 March 2027 at 02:00; 15 U.S.C. 260a: New
// York's go back on 1 November 2026 at 02:00. By hand: eight and twenty-four hours after half past midnight are half past eight and
// half past midnight by the clock, an hour less where it was put back, an hour more where forward.
test.each([
  ["Europe/Berlin", "2026-10-24T22:30:00Z", "2026-10-25T07:30", "2026-10-25T23:30"],
  ["America/New_York", "2026-11-01T04:30:00Z", "2026-11-01T07:30", "2026-11-01T23:30"],
  ["Europe/Berlin", "2027-03-27T23:30:00Z", "2027-03-28T09:30", "2027-03-29T01:30"],
  ["Europe/Berlin", "2026-10-17T22:30:00Z", "2026-10-18T08:30", "2026-10-19T00:30"],
])("in %s a coat that is finished at %s is waited for until %s", (zone, at, ready, most) => {
  const on = { logged: [{ coat: 1, at, entry: "coat" }] };
  const drying = dryingUntil({ schedule, given: undefined, on }, undefined);
  const clock = shopClock(zone);
  expect([clock.clock(drying?.ready ?? 0), clock.clock(drying?.most ?? 0)]).toEqual([ready, most]);
});
