import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { centreOf, type Distribution, drawFrom, standardDeviationOf } from "./distribution.ts";

test.each([
  // JCGM 100:2008, 4.3.7 (a/√3), 4.3.9 (a/√6, trapezoid a√((1 + β²)/6)); JCGM 101:2008, 6.4.6 (a/√2), 6.4.3.4, 6.4.9.5
  [{ dist: "rectangular", low: -1, high: 1 }, 1 / Math.sqrt(3)],
  [{ dist: "triangular", low: -1, high: 1 }, 1 / Math.sqrt(6)],
  [{ dist: "arcsine", low: -1, high: 1 }, 1 / Math.SQRT2],
  [{ dist: "trapezoid", low: -1, high: 1, top: 0.5 }, Math.sqrt(1.25 / 6)],
  [{ dist: "curvilinear-trapezoid", low: -1, high: 1, inexact: 0.3 }, Math.sqrt(1 / 3 + 0.09 / 9)],
  [{ dist: "t", mean: 5, scale: 2, df: 6 }, 2 * Math.sqrt(6 / 4)],
  [{ dist: "normal", mean: 5, sd: 2 }, 2],
] as const)("%j: the printed standard deviation, and the one of what is drawn", (distribution, expected) => {
  expect(Math.abs(standardDeviationOf(distribution) - expected)).toBeLessThan(1e-15);
  const draw = drawFrom(distribution, randomFromSeed("shapes"));
  const n = 200_000;
  const values = Array.from({ length: n }, draw);
  const mean = values.reduce((sum, x) => sum + x, 0) / n;
  const variance = values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / n;
  // four standard errors: of a mean, and of a standard deviation with a kurtosis of up to 6
  expect(Math.abs(mean - centreOf(distribution))).toBeLessThan((4 * expected) / Math.sqrt(n));
  expect(Math.abs(Math.sqrt(variance) / expected - 1)).toBeLessThan((4 * Math.sqrt(5 / 4)) / Math.sqrt(n));
});

test("limits between shapes: a trapezoid is a rectangle or a triangle at its ends, a sharp curvilinear one a rectangle", () => {
  const ends = { low: 2, high: 6 };
  const sd = (d: Distribution) => standardDeviationOf(d);
  const same = (a: Distribution, b: Distribution) => expect(Math.abs(sd(a) - sd(b))).toBeLessThan(1e-14);
  same({ dist: "trapezoid", ...ends, top: 1 }, { dist: "rectangular", ...ends });
  same({ dist: "trapezoid", ...ends, top: 0 }, { dist: "triangular", ...ends });
  same({ dist: "curvilinear-trapezoid", ...ends, inexact: 0 }, { dist: "rectangular", ...ends });
});

test.each([
  { dist: "rectangular", low: 2, high: 1 },
  { dist: "rectangular", low: Number.NaN, high: 1 },
  { dist: "normal", mean: 0, sd: -1 },
  { dist: "trapezoid", low: 0, high: 1, top: 1.1 },
  { dist: "curvilinear-trapezoid", low: 0, high: 1, inexact: 0.6 },
  { dist: "t", mean: 0, scale: 1, df: 2 },
  { dist: "t", mean: 0, scale: 1, df: Number.NaN },
] as const)("%j has no standard deviation", (distribution) => {
  expect(() => standardDeviationOf(distribution)).toThrow(DomainError);
});
