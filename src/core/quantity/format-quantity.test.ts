import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatFraction, formatNumber, formatQuantity, formatUncertain } from "./format-quantity.ts";
import { parseQuantity } from "./parse-quantity.ts";
import { units } from "./unit-table.ts";

describe("numbers as they are known", () => {
  test.each([
    [237.84, 3, "238"],
    [2540.4, 3, "2540"],
    [9.996, 3, "10.0"],
    [0.02281, 2, "0.023"],
    [0, 3, "0"],
    [-12.34, 3, "-12.3"],
    [99950, 2, "100000"],
  ])("%d to %d digits is %s", (x, digits, text) => expect(formatNumber(x, digits)).toBe(text));

  // JCGM 100:2008, 7.2.6: 10.05762 ohm with u = 27 milliohm is stated as 10.058 (27 to two digits; to one, 10.06 ± 0.03).
  test.each([
    [10.05762, 0.027, "10.06", "0.03"],
    [1.6928, 0.0134, "1.693", "0.013"],
    [2, 0.08, "2.00", "0.08"],
    [2.04, 0.096, "2.0", "0.1"],
    [237.8, 5.2, "238", "5"],
    [2540.4, 120, "2540", "120"],
    [3, 0, "3.000", "0"],
  ])("%d ± %d", (x, u, value, uncertainty) => expect(formatUncertain(x, u)).toEqual({ value, uncertainty }));
});

describe("fractions", () => {
  test.each([
    [1.5, "1½"],
    [0.25, "¼"],
    [0.335, "⅓"],
    [2.999, "3"],
    [2, "2"],
    [0.125, "⅛"],
    [0.06, undefined],
    [1.44, undefined],
    [0, undefined],
  ])("%d is %s", (x, text) => expect(formatFraction(x)).toBe(text));
});

test("a quantity in a unit", () => {
  expect(formatQuantity(2.3784e-4, "ml")).toBe("238 ml");
  expect(formatQuantity(1.5 * 236.588e-6, "cup-us", { fractions: true })).toBe("1½ cup");
  expect(formatQuantity(293.15, "degF")).toBe("68.0 °F");
  expect(formatQuantity(2 * 119.826427, "lb-cut", { standardUncertainty: 0.08 * 119.826427 })).toBe(
    "2.00 lb cut",
  );
  expect(formatQuantity(0.35, "no-such-unit")).toBe("0.350");
});

test("what is written can be read again, in every unit", () => {
  fc.assert(
    fc.property(fc.constantFrom(...units), fc.double({ min: 0.001, max: 0.999, noNaN: true }), (unit, x) => {
      const si = x * unit.factor + (unit.zero ?? 0);
      const text = formatQuantity(si, unit.id, { significantDigits: 6 });
      const read = parseQuantity(text, { dimensions: [unit.dimension], gallon: unit.system ?? "us" });
      const got = read.ok ? read.value : read.error.readings?.find((r) => r.unit === unit.id);
      expect(got?.unit).toBe(unit.id);
      expect(Math.abs((got?.si ?? 0) - si)).toBeLessThanOrEqual(1e-5 * Math.abs(unit.factor));
    }),
  );
});
