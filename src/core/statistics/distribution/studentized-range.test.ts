import { expect, test } from "vitest";
import { checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { studentTTails } from "./student-t.ts";
import { studentizedRangeCdf, studentizedRangeQuantile } from "./studentized-range.ts";

test("an arbitrary-precision table, all rows (scipy 1.10.1's tests): 1e-12 found, 1e-6 asked", () => {
  const rows = checkTable("trials/anova/studentized-range-cdf.csv");
  expect(rows.length).toBeGreaterThan(40);
  for (const { q, k, df, cdf } of rows) {
    const freedom = df === "inf" ? Number.POSITIVE_INFINITY : Number(df);
    expectNear(studentizedRangeCdf(Number(q), Number(k), freedom), Number(cdf), { absolute: 1e-12 });
  }
});

// Printed tables of the studentized range, from memory; 3.96 is read in Montgomery and Runger, hardwood concentration.
test.each([
  [0.95, 4, 16, 4.05],
  [0.95, 4, 20, 3.96],
  [0.95, 3, 10, 3.88],
  [0.95, 2, 1, 17.97],
  [0.99, 4, 16, 5.19],
])("the printed quantile at %d for %d groups and %d degrees of freedom is %d", (p, k, df, q) => {
  expectNear(studentizedRangeQuantile(p, k, df), q, { absolute: 6e-3 });
});

test.each([1, 2, 7.5, 40])("two groups at %d degrees of freedom are Student's t times √2", (df) => {
  const inside = 1 - 2 * studentTTails(2.5, df).upper;
  expectNear(studentizedRangeCdf(2.5 * Math.SQRT2, 2, df), inside, { absolute: 1e-12 });
});

test("more groups reach further, more degrees of freedom less far", () => {
  const q = (k: number, df: number) => studentizedRangeQuantile(0.95, k, df);
  expect(q(4, 10)).toBeGreaterThan(q(3, 10));
  expect(q(3, 10)).toBeGreaterThan(q(3, 20));
  expect(q(3, 20)).toBeGreaterThan(q(3, Number.POSITIVE_INFINITY));
});

test("200 groups, at 5 and 1 degrees of freedom", () => {
  // scipy.stats.studentized_range.cdf(6, 200, 5) and (20, 200, 1); also by 400 × 2000 Gauss–Legendre points.
  expectNear(studentizedRangeCdf(6, 200, 5), 0.5242475489055, { absolute: 2e-7 });
  expectNear(studentizedRangeCdf(20, 200, 1), 0.7837060821488, { absolute: 2e-7 });
});

test.each([
  () => studentizedRangeCdf(-1, 3, 10),
  () => studentizedRangeCdf(3, 1, 10),
  () => studentizedRangeCdf(3, 3, 0.5),
  () => studentizedRangeCdf(Number.NaN, 3, 10),
  () => studentizedRangeQuantile(1, 3, 10),
])("what is outside the range is refused: %s", (call) => {
  expect(call).toThrow(DomainError);
});
