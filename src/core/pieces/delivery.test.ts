import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { randomFromSeed } from "../random.ts";
import { volumeFraction } from "../units.ts";
import { calendarDay, daysLater } from "./calendar-day.ts";
import { type DeliveryAsked, dayOfShare, deliveryChance } from "./delivery.ts";
import type { FinishingStep } from "./finishing-step.ts";

// SciPy's lognormal distribution and quadrature, by make-delivery.py beside the values.
const known: {
  oneWait: { median: number; spread: number; limit: number; chance: number }[];
  twoWaits: { medians: [number, number]; spread: number; limit: number; chance: number }[];
  nights: { median: number; spread: number; limit: number; nights: number; chance: number }[];
  cure: { median: number; spread: number; days: number; chance: number }[];
} = JSON.parse(
  readFileSync(new URL("../../../test/check-values/pieces/delivery.json", import.meta.url), "utf8"),
);

const first = calendarDay("2026-10-05");
const evenings = (n: number) =>
  Array.from({ length: n }, (_, i) => ({ day: daysLater(first, i), fromMinute: 1080, untilMinute: 1260 }));
const liquid = { litresPerM2: 0.1, volumeSolids: volumeFraction(0.1), transfer: 1 };
const coat = (minutesPerM2: number, leastWaitMinutes = 0): FinishingStep => ({
  what: "coat",
  minutesPerM2,
  leastWaitMinutes,
  liquid,
});
const runs = 20_000;
const ask = (steps: readonly FinishingStep[], spreadTimes: number, more: Partial<DeliveryAsked> = {}) =>
  deliveryChance({
    areaM2: 1,
    steps,
    evenings: evenings(40),
    spreadTimes,
    random: randomFromSeed("delivery"),
    runs,
    ...more,
  });
const by = (day: number, steps: readonly FinishingStep[], spread: number): number =>
  ask(steps, spread).doneBy.findLast((one) => one.day <= daysLater(first, day))?.share ?? 0;
/** Four standard errors of a share of so many runs. */
const near = (share: number, chance: number): void => {
  const error = Math.sqrt((chance * (1 - chance)) / runs);
  expect(Math.abs(share - chance)).toBeLessThan(4 * error + 1 / runs);
};

describe("against the distribution itself", () => {
  // An hour's coat from six, a wait, another hour: tonight, if the wait is of an hour or less.
  test.each(known.oneWait)("one wait of $median min, times $spread", ({ median, spread, chance }) => {
    near(by(0, [coat(60, median), coat(60)], spread), chance);
  });
  // Three coats of twenty minutes leave two hours of the evening for both waits.
  test.each(known.twoWaits)("two waits of $medians min, times $spread", ({ medians, spread, chance }) => {
    near(by(0, [coat(20, medians[0]), coat(20, medians[1]), coat(20)], spread), chance);
  });
  // A coat that fills its evening, 21 h between: each night is to be long enough.
  test.each(known.nights)("$nights nights in a row", ({ median, spread, nights, chance }) => {
    const steps = [...Array.from({ length: nights }, () => coat(180, median)), coat(180)];
    near(by(nights, steps, spread), chance);
  });
  test.each(known.cure)("a cure of 3 days, times $spread, over within $days days", (of) => {
    const cure: FinishingStep = { what: "cure", minutesPerM2: 0, leastWaitMinutes: of.median };
    near(by(of.days, [coat(60), cure], of.spread), of.chance);
  });
});

describe("as the page asks it", () => {
  const steps = [coat(30, 120), coat(30, 120), coat(30, 120), coat(30, 1200), coat(30)];
  test("the same seed gives the same, another seed another", () => {
    const seeded = (seed: string) => ask(steps, 1.4, { random: randomFromSeed(seed), runs: 2000 });
    expect(seeded("a")).toEqual(seeded("a"));
    expect(seeded("a")).not.toEqual(seeded("b"));
  });
  test("without spread every run is the plan", () => {
    expect(ask(steps, 1).doneBy).toHaveLength(1);
  });
  test("what the evenings are too few for is said", () => {
    const few = ask([coat(60, 60), coat(60)], 1.4, { evenings: evenings(1) });
    near(few.neverShare, 0.5); // the median lies at the evening's end
    expect(dayOfShare(few, 0.9)).toBeNull();
    expect(dayOfShare(few, 0.4)).toBe(first);
  });
  // By hand: cured on the eighth at seven, rubbed out that evening; at ten to nine, or with weekends alone, on the next.
  test("what comes after the cure is done on an evening", () => {
    const rub: FinishingStep = { what: "rub out", minutesPerM2: 60, leastWaitMinutes: 0 };
    const cure: FinishingStep = { what: "cure", minutesPerM2: 0, leastWaitMinutes: 3 * 1440 };
    const day = (minutes: number, on = evenings(40)) =>
      ask([coat(minutes), cure, rub], 1, { evenings: on, runs: 100 }).doneBy[0]?.day;
    expect(day(60)).toBe("2026-10-08");
    expect(day(170)).toBe("2026-10-09");
    expect(
      day(
        60,
        evenings(40).filter((_, i) => i % 7 === 0 || i % 7 === 5),
      ),
    ).toBe("2026-10-10");
    expect(day(60, evenings(1))).toBe("2026-10-08");
  });
  // By hand: one of two coats is on since seven, an hour waited, the other from eight; with both on the cure alone is left.
  test("with coats on, the rest is what is waited for", () => {
    const two = [coat(60, 60), coat(60)];
    const begun = (coats: number) => ({ day: daysLater(first, 3), minute: 1140, coats });
    expect(ask(two, 1, { begun: begun(1), runs: 100 }).doneBy[0]?.day).toBe("2026-10-08");
    const cure: FinishingStep = { what: "cure", minutesPerM2: 0, leastWaitMinutes: 3 * 1440 };
    expect(ask([...two, cure], 1, { begun: begun(2), runs: 100 }).doneBy[0]?.day).toBe("2026-10-11");
  });
  // By hand: 1454 min at the least and 2901 at the most, the spread draws more; every run ends, on time or never.
  test("a most wait that a drawn wait overtakes gives way, to the last fraction of a minute", () => {
    const tied: FinishingStep = { ...coat(9, 1454), mostWaitMinutes: 2901, times: 3 };
    const daily = [864, 514, 875, 549, 833, 573, 600, 700, 800].map((fromMinute, i) => ({
      day: daysLater(first, i),
      fromMinute,
      untilMinute: fromMinute + 200,
    }));
    const { doneBy, neverShare } = ask([tied, coat(67, 828), coat(67)], 1.4, { evenings: daily, runs: 2000 });
    expect((doneBy.at(-1)?.share ?? 0) + neverShare).toBeCloseTo(1, 12);
    expect(doneBy.length).toBeGreaterThan(1);
  });
  test("a share grows with the day, to what is ever done", () => {
    const { doneBy, neverShare } = ask(steps, 2);
    for (const [i, { share }] of doneBy.entries()) expect(share).toBeGreaterThan(doneBy[i - 1]?.share ?? 0);
    expect((doneBy.at(-1)?.share ?? 0) + neverShare).toBeCloseTo(1, 12);
  });
});

test.each<[string, Partial<DeliveryAsked>]>([
  ["spreadTimes", { spreadTimes: 0.9 }],
  ["spreadTimes", { spreadTimes: Number.NaN }],
  ["runs", { runs: 10 }],
  ["areaM2", { areaM2: 0 }],
  ["coats", { steps: [] }],
])("%s is refused by name", (field, change) => {
  expect(() => ask([coat(1)], 1.4, change)).toThrow(field);
});
