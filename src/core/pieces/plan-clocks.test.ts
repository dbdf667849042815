import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { volumeFraction } from "../units.ts";
import { calendarDay, daysLater } from "./calendar-day.ts";
import { deliveryChance } from "./delivery.ts";
import type { FinishingStep } from "./finishing-step.ts";
import type { PieceToPlan } from "./piece-to-plan.ts";
import { planPiece } from "./plan.ts";

const coat = (minutes: number, leastWaitMinutes: number, mostWaitMinutes?: number): FinishingStep => ({
  what: "coat",
  minutesPerM2: minutes,
  leastWaitMinutes,
  ...(mostWaitMinutes === undefined ? {} : { mostWaitMinutes }),
  liquid: { litresPerM2: 0.1, volumeSolids: volumeFraction(0.1), transfer: 1 },
});
const evening = (day: string, from: string, until: string) => {
  const minute = (text: string) => Number(text.slice(0, 2)) * 60 + Number(text.slice(3));
  return { day: calendarDay(day), fromMinute: minute(from), untilMinute: minute(until) };
};
const piece = (zone: string | undefined, over: Partial<PieceToPlan>): PieceToPlan => ({
  areaM2: 1,
  steps: [coat(30, 1440), coat(30, 0)],
  evenings: [],
  ...(zone === undefined ? {} : { zone }),
  ...over,
});
const at = (plan: ReturnType<typeof planPiece>) =>
  plan.steps.map(({ day, fromMinute }) => `${day} ${fromMinute === null ? "" : fromMinute / 60}`);

// Directive 2000/84/EC: Berlin's clocks go back on 25 October 2026 and forward on 28 March 2027; 15 U.S.C. 260a: New York's go back on
// 1 November 2026 and forward on 14 March 2027. By hand: a coat done at 18:30 that dries a day is dry at 17:30 on the wall where
// the clocks went back and at 19:30 where they went forward.
test.each([
  ["Europe/Berlin", "2026-10-24", 17.5],
  ["Europe/Berlin", "2027-03-27", 19.5],
  ["America/New_York", "2026-10-31", 17.5],
  ["America/New_York", "2027-03-13", 19.5],
  ["America/New_York", "2026-10-24", 18.5],
  [undefined, "2026-10-24", 18.5],
])("%s, a coat on %s that dries a day: the next at %d h", (zone, day, hour) => {
  const next = daysLater(calendarDay(day), 1);
  const evenings = [evening(day, "18:00", "21:00"), evening(next, "17:00", "21:00")];
  expect(at(planPiece(piece(zone, { evenings })))).toEqual([`${day} 18`, `${next} ${hour}`]);
  const begun = { coats: 1, day: calendarDay(day), minute: 18.5 * 60 };
  expect(at(planPiece(piece(zone, { evenings, begun })))[1]).toBe(`${next} ${hour}`);
});

test("a most wait is real time too: a day and a quarter of an hour are not kept by the same hour after the clocks went back", () => {
  const evenings = [evening("2026-10-24", "18:00", "18:30"), evening("2026-10-25", "18:00", "18:30")];
  const steps = [coat(30, 60, 1425), coat(30, 0)];
  expect(() => planPiece(piece("Europe/Berlin", { steps, evenings }))).toThrow("steps[0].mostWaitMinutes");
  expect(at(planPiece(piece("Asia/Tokyo", { steps, evenings })))).toEqual(["2026-10-24 18", "2026-10-25 18"]);
});

test("the day on which a run of a delivery is done is a day of the zone, also where it is tomorrow in UTC", () => {
  const evenings = [evening("2026-10-31", "20:00", "22:00"), evening("2026-11-02", "20:00", "22:00")];
  const asked = { ...piece("America/New_York", { evenings }), spreadTimes: 1, runs: 100 };
  expect(deliveryChance({ ...asked, random: randomFromSeed("zone") }).doneBy).toEqual([
    { day: "2026-11-02", share: 1 },
  ]);
});

const nights = [
  ["Europe/Berlin", "2026-10-24"],
  ["Europe/Berlin", "2027-03-27"],
  ["America/New_York", "2026-10-31"],
  ["America/New_York", "2027-03-13"],
] as const;
const clockText = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;

test("over these nights no wait is cut short nor overrun, and every step lies in its evening, as Temporal counts", () => {
  const days = fc.record({
    night: fc.constantFrom(...nights),
    from: fc.integer({ min: 0, max: 22 * 60 }),
    length: fc.integer({ min: 60, max: 110 }),
    minutes: fc.integer({ min: 5, max: 50 }),
    least: fc.integer({ min: 0, max: 3000 }),
    more: fc.option(fc.integer({ min: 0, max: 1440 }), { nil: undefined }),
    coats: fc.integer({ min: 2, max: 5 }),
  });
  fc.assert(
    fc.property(days, ({ night: [zone, first], from, length, minutes, least, more, coats }) => {
      const evenings = Array.from({ length: 30 }, (_, i) => ({
        day: daysLater(calendarDay(first), i - 1),
        fromMinute: from,
        untilMinute: from + length,
      }));
      const most = more === undefined ? undefined : least + more;
      const steps = Array.from({ length: coats }, () => coat(minutes, least, most));
      const instant = (day: string, minute: number) =>
        Temporal.PlainDateTime.from(`${day}T${clockText(minute)}`).toZonedDateTime(zone);
      let plan: ReturnType<typeof planPiece>;
      try {
        plan = planPiece(piece(zone, { evenings, steps }));
      } catch (error) {
        if (!(error instanceof DomainError)) throw error;
        return; // refused for its most wait
      }
      const placed = plan.steps.flatMap((s) =>
        s.day === null || s.fromMinute === null ? [] : [{ ...s, start: instant(s.day, s.fromMinute) }],
      );
      placed.forEach((step, i) => {
        const end = step.start.add({ minutes: step.minutes });
        const [opens, closes] = [instant(step.day ?? "", from), instant(step.day ?? "", from + length)];
        expect(Temporal.ZonedDateTime.compare(step.start, opens)).toBeGreaterThanOrEqual(0);
        // the second time that an hour comes is not told apart on the page
        if (step.start.hour > 3) expect(Temporal.ZonedDateTime.compare(end, closes)).toBeLessThanOrEqual(0);
        const next = placed[i + 1];
        if (next === undefined || step.start.hour < 4 || next.start.hour < 4) return;
        const waited = end.until(next.start).total({ unit: "minutes" });
        expect(waited).toBeGreaterThanOrEqual(least);
        if (most !== undefined) expect(waited).toBeLessThanOrEqual(most);
      });
    }),
    { numRuns: 300, seed: 5 },
  );
});
