import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { refusalOf } from "../../../../test/refusal-of.ts";
import { settling } from "./settling.ts";
import type { TimedReading } from "./settling-course.ts";

const timed = (rows: readonly (readonly [number, number])[]): TimedReading[] =>
  rows.map(([time, value]) => ({ time, value }));

/** D. M. Bates and D. G. Watts (1988), A4.1; figures as R 4.2.2 nls gives and its help page prints (A 19.143, k 0.5311, s 2.549). */
describe("Bates and Watts, A4.1: a first-order course from 0", () => {
  const found = settling(
    timed([
      [1, 8.3],
      [2, 10.3],
      [3, 19],
      [4, 16],
      [5, 15.6],
      [7, 19.8],
    ]),
    "first-order",
    { start: 0 },
  );

  test("where it ends, its time and the scatter", () => {
    expectNear(found.end.value, 19.1425753432, { relative: 1e-6 });
    expectNear(found.end.standardError, 2.49591736019, { relative: 1e-4 });
    expectNear(1 / found.timeConstant.value, 0.531091371373, { relative: 1e-6 });
    // An error of ln τ is one of ln k: the same share of either.
    expectNear(found.timeConstant.standardError / found.timeConstant.value, 0.20308209847 / 0.531091371373, {
      relative: 1e-4,
    });
    expectNear(found.fit.residualDeviation, 2.54903252637, { relative: 1e-6 });
    expect(found.start).toEqual({ value: 0, standardError: 0, interval: [0, 0] });
  });

  test("1/e is left after τ, half after τ·ln 2; the curve passes there", () => {
    const half = found.timeUntilLeft(0.5);
    expectNear(half.value, found.timeConstant.value * Math.LN2, { relative: 1e-12 });
    expectNear(found.valueAt(half.value), found.end.value / 2, { relative: 1e-12 });
    expect(half.interval[0]).toBeLessThan(half.value);
    expect(half.interval[1]).toBeGreaterThan(half.value);
  });
});

describe("a Weibull course", () => {
  const truth = (time: number) => 12 + (85 - 12) * Math.exp(-((time / 30) ** 1.4));
  const times = [0, 5, 10, 20, 30, 45, 60, 90];
  const found = settling(timed(times.map((time) => [time, truth(time)])), "weibull");

  test("its four figures come back from readings without scatter", () => {
    expectNear(found.start.value, 85, { relative: 1e-6 });
    expectNear(found.end.value, 12, { relative: 1e-6 });
    expectNear(found.timeConstant.value, 30, { relative: 1e-6 });
    expectNear(found.shape.value, 1.4, { relative: 1e-6 });
    expectNear(found.timeUntilLeft(0.05).value, 30 * (-Math.log(0.05)) ** (1 / 1.4), { relative: 1e-6 });
  });
});

test("95 of 100 intervals of the time until little is left hold it, near enough", () => {
  // Readings scatter by a fixed set of normal quantiles dealt in turn: no chance in the test, and every reading met by each.
  const quantiles = [-1.53, -0.98, -0.63, -0.35, -0.11, 0.11, 0.35, 0.63, 0.98, 1.53];
  const truth = 20 * Math.log(20);
  let held = 0;
  for (let turn = 0; turn < 100; turn++) {
    const readings = [2, 5, 10, 15, 25, 40, 60, 80].map((time, i) => ({
      time,
      value:
        100 * Math.exp(-time / 20) +
        3 * (quantiles[(turn * (i + 3) + i * i + Math.floor(turn / 10)) % 10] ?? 0),
    }));
    const [low, high] = settling(readings, "first-order", { start: 100, end: 0 }).timeUntilLeft(
      0.05,
    ).interval;
    if (low <= truth && truth <= high) held++;
  }
  expect(held).toBeGreaterThanOrEqual(88); // three standard deviations of a share of 95 in 100 below it
});

test("readings on the curve to the last digit are no surer than readings can be", () => {
  const exact = [4, 8, 12].map((time) => ({ time, value: 2 ** (-time / 4) }));
  const sure = settling(exact, "first-order", { start: 1, end: 0 }).timeUntilLeft(0.02).interval;
  expectNear(sure[1] - sure[0], 0, { absolute: 1e-6 });
  // By hand: the slope of 2^(−t/4) by ln τ is 2^(−t/4)·(t/4)·ln 2, so Σ = ln²2·(1/4 + 4/16 + 9/64); error of ln τ 0.05/√Σ.
  const error = 0.05 / Math.sqrt(Math.LN2 ** 2 * (1 / 4 + 4 / 16 + 9 / 64));
  const rough = settling(exact, "first-order", { start: 1, end: 0 }, 0.05).timeUntilLeft(0.02);
  expectNear(rough.standardError / rough.value, error, { relative: 1e-6 });
  expectNear(Math.log(rough.interval[1] / rough.value), 1.959964 * error, { relative: 1e-6 });
});

describe("refused", () => {
  const few = timed([
    [0, 1],
    [2, 0.5],
  ]);
  const cases: readonly [string, () => unknown, object][] = [
    [
      "as many readings as unknowns",
      () => settling(few, "weibull", { start: 1, end: 0 }),
      { code: "not-enough-data", value: 2, limits: { min: 3 } },
    ],
    [
      "a time below 0",
      () =>
        settling(
          timed([
            [-1, 1],
            [2, 0.5],
          ]),
          "first-order",
          { start: 1, end: 0 },
        ),
      { field: "readings[0].time", value: -1 },
    ],
    [
      "a time that is no number",
      () =>
        settling(
          timed([
            [Number.NaN, 1],
            [2, 0.5],
          ]),
          "first-order",
          { start: 1, end: 0 },
        ),
      { field: "readings[0].time" },
    ],
    [
      "readings all alike",
      () =>
        settling(
          timed([
            [0, 4],
            [2, 4],
            [4, 4],
            [6, 4],
          ]),
          "first-order",
        ),
      { code: "no-variation", value: 4 },
    ],
    [
      "no bend yet: a straight line has no end",
      () =>
        settling(
          timed([
            [0, 0],
            [1, 1],
            [2, 2],
            [3, 3],
          ]),
          "first-order",
        ),
      { code: "no-convergence" },
    ],
  ];
  test.each(cases)("%s", (_, act, detail) => {
    expect(refusalOf(act)).toMatchObject(detail);
  });
});
