import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { combinedUncertainty, coverageFactor } from "./combine.ts";

const known = Number.POSITIVE_INFINITY;

test("JCGM 100:2008, H.1: end gauge, u = 32 nm, ν = 16, U99 = 93 nm", () => {
  const { standardUncertainty, degreesOfFreedom, shares } = combinedUncertainty([
    { source: "standard", size: 25, degreesOfFreedom: 18 },
    { source: "comparison", size: 9.7, degreesOfFreedom: 25.6 },
    { source: "expansion", size: 2.9, degreesOfFreedom: 50 },
    { source: "temperature", size: 16.6, degreesOfFreedom: 2 },
  ]);
  expect(Math.abs(standardUncertainty - 32)).toBeLessThan(0.5);
  const { factor, degreesOfFreedomUsed } = coverageFactor(0.99, degreesOfFreedom);
  expect(degreesOfFreedomUsed).toBe(16);
  expect(Math.abs(factor - 2.92)).toBeLessThan(0.005);
  expect(Math.abs(factor * standardUncertainty - 93)).toBeLessThan(1);
  expect(shares[0]?.source).toBe("standard");
  expect(Math.abs(shares.reduce((sum, { share }) => sum + share, 0) - 1)).toBeLessThan(1e-15);
});

test.each([
  // JCGM 100:2008, table G.2
  [0.95, 1, 12.71],
  [0.95, 10, 2.23],
  [0.99, 5, 4.03],
  [0.95, known, 1.96],
] as const)("k at level %d with %d degrees of freedom is %d", (level, freedom, k) => {
  expect(Math.abs(coverageFactor(level, freedom).factor - k)).toBeLessThanOrEqual(0.005);
});

test("sources taken as known leave the result's degrees of freedom without end, and a single one keeps its own", () => {
  const one = { source: "a", size: 2, degreesOfFreedom: 7 };
  expect(combinedUncertainty([one]).degreesOfFreedom).toBe(7);
  expect(combinedUncertainty([{ ...one, degreesOfFreedom: known }]).degreesOfFreedom).toBe(known);
  expect(combinedUncertainty([one, { source: "b", size: 0, degreesOfFreedom: 1 }]).degreesOfFreedom).toBe(7);
});

test("what cannot be combined is refused", () => {
  expect(() => combinedUncertainty([])).toThrow(DomainError);
  expect(() => combinedUncertainty([{ source: "a", size: Number.NaN, degreesOfFreedom: 3 }])).toThrow(
    DomainError,
  );
  expect(() => combinedUncertainty([{ source: "a", size: 1, degreesOfFreedom: 0 }])).toThrow(DomainError);
  expect(() => coverageFactor(1, 5)).toThrow(DomainError);
  expect(() => coverageFactor(0.95, 0.9)).toThrow(DomainError);
});
