import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { gardnerNumber, gardnerStandards } from "./gardner.ts";

test("the standards are those of ASTM D1544-04, table 1", () => {
  const file = new URL("../../../test/check-values/trials/colour/gardner-d1544.csv", import.meta.url);
  const rows = readFileSync(file, "utf8").trim().split("\n").slice(1);
  expect(rows.map((row) => row.split(",").slice(0, 3).map(Number))).toEqual(
    gardnerStandards.map(({ gardner, x, y }) => [gardner, x, y]),
  );
});

test.each(gardnerStandards)("standard $gardner is on the line", (standard) => {
  const { gardner, distance } = gardnerNumber(standard);
  expect(Math.abs(gardner - standard.gardner)).toBeLessThan(1e-9);
  expect(distance).toBeLessThan(1e-12);
});

test("half-way between two standards is half a step", () => {
  const { gardner } = gardnerNumber({ x: (0.4044 + 0.4207) / 2, y: (0.4352 + 0.4498) / 2 });
  expect(Math.abs(gardner - 7.5)).toBeLessThan(1e-9);
});

test("paler than 1 and darker than 18 are said to be beyond, never given a number of their own", () => {
  expect(gardnerNumber({ x: 0.3101, y: 0.3162 })).toMatchObject({ gardner: 1, beyondTheStandards: true }); // CIE C itself
  expect(gardnerNumber({ x: 0.68, y: 0.32 })).toMatchObject({ gardner: 18, beyondTheStandards: true });
  expect(gardnerNumber({ x: 0.366, y: 0.395 }).beyondTheStandards).toBe(false);
});

test.each([Number.NaN, -0.1, 1.1])("x = %d is refused", (x) => {
  expect(() => gardnerNumber({ x, y: 0.4 })).toThrow(DomainError);
});
