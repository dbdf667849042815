import fc from "fast-check";
import { expect, test } from "vitest";
import { DomainError } from "../../domain-error.ts";
import { normalCdf } from "../distribution/normal.ts";
import { studentTUpperQuantile } from "../distribution/student-t.ts";
import {
  equivalencePower,
  pairedDifference,
  pooledDifference,
  summaryOf,
  twoOneSidedTests,
  welchDifference,
} from "./equivalence.ts";

// Cases computed by R 4.2.2, and what Lakens (2017), NCSS and PowerTOST print, are run by `npm run checks -- equivalence`.

test("Lakens (2017), Soc. Psychol. Personal. Sci. 8, 355: t = −2.69, p = .004", () => {
  const estimate = welchDifference(
    { mean: 5.25, deviation: 0.95, count: 95 },
    { mean: 5.22, deviation: 0.83, count: 89 },
  );
  const bound = 0.43 * Math.sqrt((0.95 ** 2 + 0.83 ** 2) / 2);
  const { tHigh, pValue, equivalent } = twoOneSidedTests(estimate, { low: -bound, high: bound }, 0.05);
  expect(Math.abs(tHigh - -2.69)).toBeLessThan(0.005);
  expect(Math.abs(pValue - 0.004)).toBeLessThan(0.0005);
  expect(equivalent).toBe(true);
});

test("two or three readings, unequal groups, worked by hand", () => {
  // 1, 3 and 2, 4, 9: means 2 and 5; squares 2 and 26; pooled s² = 28/3; se² = 28/3·(1/2 + 1/3)
  const [a, b] = [summaryOf([1, 3]), summaryOf([2, 4, 9])];
  const pooled = pooledDifference(a, b);
  expect(pooled.difference).toBe(-3);
  expect(Math.abs(pooled.standardError - Math.sqrt((28 / 3) * (5 / 6)))).toBeLessThan(1e-14);
  expect(pooled.degreesOfFreedom).toBe(3);
  // Welch: se² = 2/2 + 13/3; ν = (16/3)²/(1²/1 + (13/3)²/2)
  const welch = welchDifference(a, b);
  expect(Math.abs(welch.standardError - Math.sqrt(16 / 3))).toBeLessThan(1e-14);
  expect(Math.abs(welch.degreesOfFreedom - (16 / 3) ** 2 / (1 + (13 / 3) ** 2 / 2))).toBeLessThan(1e-12);
});

test("equivalent exactly when the interval lies inside the bounds, and the mirror image says the same", () => {
  const scale = fc.double({ min: 0.05, max: 5, noNaN: true });
  fc.assert(
    fc.property(
      fc.double({ min: -3, max: 3, noNaN: true }),
      scale,
      fc.integer({ min: 1, max: 60 }),
      scale,
      (difference, standardError, degreesOfFreedom, bound) => {
        const bounds = { low: -bound, high: 1.3 * bound };
        const test = twoOneSidedTests({ difference, standardError, degreesOfFreedom }, bounds, 0.05);
        const inside = test.interval[0] > bounds.low && test.interval[1] < bounds.high;
        const margin = Math.min(Math.abs(test.pLow - 0.05), Math.abs(test.pHigh - 0.05));
        if (margin > 1e-9) expect(test.equivalent).toBe(inside);
        const mirror = twoOneSidedTests(
          { difference: -difference, standardError, degreesOfFreedom },
          { low: -bounds.high, high: -bounds.low },
          0.05,
        );
        expect(mirror.equivalent).toBe(test.equivalent);
        expect(Math.abs(mirror.pValue - test.pValue)).toBeLessThan(1e-12);
      },
    ),
  );
});

test("power with two degrees of freedom agrees with Simpson's rule over the known density, s = √(−ln(1 − u))", () => {
  // χ²(2)/2 is exponential with mean 1, so s has density 2s·e^(−s²): no function of ours but Φ and t is in the sum.
  const [above, below] = [4, -3];
  const t = studentTUpperQuantile(0.05, 2);
  const end = (above - below) / (2 * t);
  const n = 20_000;
  const f = (s: number) => 2 * s * Math.exp(-s * s) * (normalCdf(above - t * s) - normalCdf(below + t * s));
  let sum = 0;
  for (let i = 0; i <= n; i++) sum += f((end * i) / n) * (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2);
  const expected = (sum * end) / n / 3;
  const got = equivalencePower(
    { difference: 0, standardError: 1, degreesOfFreedom: 2 },
    { low: below, high: above },
    0.05,
  );
  expect(Math.abs(got - expected)).toBeLessThan(1e-10);
});

test("power grows as the error shrinks, and at the bound is at most alpha", () => {
  const at = (difference: number, standardError: number) =>
    equivalencePower({ difference, standardError, degreesOfFreedom: 10 }, { low: -1, high: 1 }, 0.05);
  expect(at(0, 0.2)).toBeGreaterThan(at(0, 0.3));
  expect(at(1, 0.2)).toBeLessThanOrEqual(0.05 + 1e-6);
  expect(at(1, 0.2)).toBeGreaterThan(0.049);
});

test("what cannot be answered is refused", () => {
  const estimate = { difference: 0, standardError: 1, degreesOfFreedom: 5 };
  expect(() => twoOneSidedTests(estimate, { low: 1, high: 1 }, 0.05)).toThrow(DomainError);
  expect(() => twoOneSidedTests(estimate, { low: Number.NaN, high: 1 }, 0.05)).toThrow(DomainError);
  expect(() => twoOneSidedTests(estimate, { low: -1, high: 1 }, 0.6)).toThrow(DomainError);
  expect(() => summaryOf([1])).toThrow(DomainError);
  expect(() => pooledDifference(summaryOf([2, 2]), summaryOf([3, 3]))).toThrow(DomainError);
  expect(() => pairedDifference([1, 2], [1])).toThrow(DomainError);
  expect(() => pairedDifference([1, 2, 3], [0, 1, 2])).toThrow(DomainError);
});
