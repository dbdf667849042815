import { describe, expect, test } from "vitest";
import { type CheckRow, checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { betaQuantile, incompleteBeta } from "./beta.ts";
import { chiSquareTails, chiSquareUpperQuantile } from "./chi-square.ts";
import { fTails, fUpperQuantile, noncentralFTails } from "./f-distribution.ts";
import { incompleteGamma, logGamma, type Tails } from "./gamma.ts";
import { noncentralTTails } from "./noncentral-t.ts";
import { logNormalCdf, normalCdf, normalQuantile } from "./normal.ts";
import { studentTTails, studentTUpperQuantile } from "./student-t.ts";

// Both tails by mpmath with 40 digits (18 for noncentral t): make-distributions.py beside the table.
const table = checkTable("statistics/distributions.csv");

const compute: Readonly<Record<string, (x: number, a: number, b: number) => Tails>> = {
  normal: (z) => ({ lower: normalCdf(z), upper: normalCdf(-z) }),
  beta: (x, a, b) => incompleteBeta(x, a, b),
  gamma: (x, a) => incompleteGamma(a, x),
  t: (t, v) => studentTTails(t, v),
  F: (f, n, d) => fTails(f, n, d),
  "noncentral-t": (t, v, d) => noncentralTTails(t, v, d),
};
const tolerance: Readonly<Record<string, { relative: number; absolute: number }>> = {
  normal: { relative: 1e-14, absolute: 0 },
  beta: { relative: 1e-11, absolute: 1e-300 },
  gamma: { relative: 1e-11, absolute: 1e-300 },
  t: { relative: 1e-12, absolute: 0 },
  F: { relative: 1e-11, absolute: 0 },
  "noncentral-t": { relative: 0, absolute: 1e-12 },
};

const name = (row: CheckRow): string => `${row.distribution}(${row.x}; ${row.a}, ${row.b})`;

test.each(table.map((row) => [name(row), row] as const))("%s: both tails", (_, row) => {
  const kind = row.distribution ?? "";
  const tails = compute[kind]?.(Number(row.x), Number(row.a), Number(row.b));
  expect(tails).toBeDefined();
  expectNear(tails?.lower ?? Number.NaN, Number(row.lower), tolerance[kind] ?? {});
  expectNear(tails?.upper ?? Number.NaN, Number(row.upper), tolerance[kind] ?? {});
});

test("the table holds every distribution", () => {
  expect(new Set(table.map((row) => row.distribution))).toEqual(new Set(Object.keys(compute)));
});

describe("printed values", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2 (t), 1.3.6.7.3 (F), 1.3.6.7.4 (chi-square).
  test.each([
    [0.025, 10, 2.228],
    [0.05, 1, 6.314],
    [0.001, 30, 3.385],
  ])("t exceeded with %d at %d degrees of freedom is %d", (p, df, t) => {
    expectNear(studentTUpperQuantile(p, df), t, { absolute: 5e-4 });
  });
  test.each([
    [0.05, 3, 9, 3.863],
    [0.01, 10, 10, 4.849],
    [0.1, 1, 5, 4.06],
  ])("F exceeded with %d at %d and %d is %d", (p, n, d, f) => {
    expectNear(fUpperQuantile(p, n, d), f, { absolute: 5e-4 });
  });
  test.each([
    [0.05, 1, 3.841],
    [0.01, 20, 37.566],
    [0.999, 100, 61.918],
  ])("chi-square exceeded with %d at %d is %d", (p, df, x) => {
    expectNear(chiSquareUpperQuantile(p, df), x, { absolute: 5e-4 });
  });
  test("the power of an F test: 0.3535594 (R's documentation of power.anova.test)", () => {
    expectNear(noncentralFTails(fUpperQuantile(0.05, 3, 16), 3, 16, 5).upper, 0.3535594, { absolute: 5e-8 });
  });
  test("ln Γ at whole numbers is the logarithm of a factorial", () => {
    expectNear(logGamma(11), Math.log(3628800), { relative: 1e-15 });
    expectNear(logGamma(1), 0, { absolute: 1e-15 });
  });
});

describe("quantiles undo tails", () => {
  const ps = [1e-12, 1e-4, 0.025, 0.3, 0.5, 0.7, 0.975];
  test.each(ps)("at %d", (p) => {
    expectNear(normalCdf(normalQuantile(p)), p, { relative: 1e-13 });
    expectNear(studentTTails(studentTUpperQuantile(p, 1), 1).upper, p, { relative: 1e-10 });
    expectNear(studentTTails(studentTUpperQuantile(p, 7.3), 7.3).upper, p, { relative: 1e-10 });
    expectNear(fTails(fUpperQuantile(p, 2, 5), 2, 5).upper, p, { relative: 1e-10 });
    expectNear(chiSquareTails(chiSquareUpperQuantile(p, 3), 3).upper, p, { relative: 1e-10 });
    const { x, complement } = betaQuantile(p, 0.4, 12);
    expectNear(incompleteBeta(x, 0.4, 12, complement).lower, p, { relative: 1e-10 });
  });
});

test("the far normal tail goes on in its logarithm: ln Φ(−40) = −804.6084420137538 (mpmath)", () => {
  expectNear(logNormalCdf(-40), -804.6084420137538, { relative: 1e-15 });
});

test("noncentral F with no noncentrality is F, and its tails sum to one", () => {
  expect(noncentralFTails(2, 3, 8, 0)).toEqual(fTails(2, 3, 8));
  const { lower, upper } = noncentralFTails(2, 3, 8, 40);
  expectNear(lower + upper, 1, { absolute: 1e-12 });
});

test.each([
  () => normalCdf(Number.NaN),
  () => normalQuantile(0),
  () => normalQuantile(1),
  () => logGamma(0),
  () => incompleteGamma(1, -1e-9),
  () => incompleteGamma(1, Number.NaN),
  () => incompleteBeta(1.0000001, 1, 1),
  () => incompleteBeta(0.5, 0, 1),
  () => fTails(-1, 1, 1),
  () => noncentralFTails(1, 1, 1, -1),
  () => noncentralTTails(1, 0.9, 0),
])("what is outside the range is refused: %s", (call) => {
  expect(call).toThrow(DomainError);
});
