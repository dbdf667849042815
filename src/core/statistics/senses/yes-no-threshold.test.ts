import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { normalCdf, normalDensity } from "../distribution/normal.ts";
import { thresholdFromAnswers } from "./yes-no-threshold.ts";

interface Case {
  readonly name: string;
  readonly answers: readonly (readonly [number, boolean])[];
  readonly mean: number;
  readonly standardDeviation: number;
  readonly spread: number;
  readonly estimate: number;
  readonly standardError: number;
  readonly interval: readonly [number, number];
}

// SciPy's adaptive quadrature over the same posterior: see make-yes-no.py beside the values.
const { cases } = JSON.parse(readFileSync("test/check-values/statistics/yes-no.json", "utf8")) as {
  readonly cases: readonly Case[];
};

test.each(cases)("$name", (given) => {
  const answers = given.answers.map(([at, yes]) => ({ at, yes }));
  const found = thresholdFromAnswers(answers, given, given.spread);
  const { standardError } = given;
  expectNear(found.estimate, given.estimate, { absolute: 1e-6 * standardError });
  expectNear(found.standardError, standardError, { relative: 1e-6 });
  found.interval.forEach((limit, i) => {
    expectNear(limit, given.interval[i] ?? Number.NaN, { absolute: 1e-3 * standardError });
  });
  expect([found.yes, found.no]).toEqual(
    [true, false].map((kind) => answers.filter((answer) => answer.yes === kind).length),
  );
});

// Rasmussen and Williams (2006), eq. 3.85: after one answer the mean is m − τ²/√(τ² + s²)·φ(z)/Φ(z), z = (x − m)/√(τ² + s²).
test.each([
  [0.7, 0.2, 1.5, 0.4],
  [-2, 1, 0.5, 1],
  [3, 0, 3, 0.3],
] as const)("one answer at %d has a closed form", (x, m, tau, s) => {
  const size = Math.hypot(tau, s);
  const z = (x - m) / size;
  const mean = m - (tau ** 2 / size) * (normalDensity(z) / normalCdf(z));
  const found = thresholdFromAnswers([{ at: x, yes: true }], { mean: m, standardDeviation: tau }, s);
  expectNear(found.estimate, mean, { absolute: 1e-7 });
});

test("nothing answered is what was expected", () => {
  const found = thresholdFromAnswers([], { mean: 2, standardDeviation: 3 }, 1);
  expectNear(found.estimate, 2, { absolute: 1e-6 });
  expectNear(found.standardError, 3, { relative: 1e-6 });
  expectNear(found.interval[1], 2 + 1.959964 * 3, { absolute: 3e-3 });
});

test("many answers about one place pin it down, and the order in which they came does not matter", () => {
  const about = [-0.6, -0.3, -0.1, 0.1, 0.3, 0.6];
  const few = about.map((d) => ({ at: 1 + d, yes: d > 0 }));
  const many = Array.from({ length: 30 }, () => few).flat();
  const expected = { mean: 0, standardDeviation: 1 };
  const found = thresholdFromAnswers(many, expected, 0.3);
  expectNear(found.estimate, 1, { absolute: 0.06 });
  expect(found.standardError).toBeLessThan(thresholdFromAnswers(few, expected, 0.3).standardError / 4);
  expect(thresholdFromAnswers(many.toReversed(), expected, 0.3).estimate).toBeCloseTo(found.estimate, 9);
});

test("a place that is none is refused", () => {
  const nowhere = [{ at: Number.NaN, yes: true }];
  expect(() => thresholdFromAnswers(nowhere, { mean: 0, standardDeviation: 1 }, 1)).toThrow(/not-a-number/);
});
