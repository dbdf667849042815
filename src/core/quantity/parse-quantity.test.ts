import { describe, expect, test } from "vitest";
import { type Expected, parseQuantity } from "./parse-quantity.ts";
import { quantityProblemSentence, sayItAs } from "./problem-sentence.ts";
import type { Dimension } from "./unit-table.ts";

const read = (text: string, ...dims: Dimension[]) => parseQuantity(text, { dimensions: dims });
const value = (text: string, ...dims: Dimension[]) => {
  const result = read(text, ...dims);
  if (!result.ok) throw new Error(quantityProblemSentence(result.error));
  return result.value;
};
const problem = (text: string, expected: Expected) => {
  const result = parseQuantity(text, expected);
  if (result.ok) throw new Error(`${text} was read as ${result.value.unit}`);
  return result.error;
};

// Factors: NIST Handbook 44, appendix C, general tables (gal 3.785411784 L, fl oz 29.57353 mL, pt 473.1765 mL,
// qt 946.3529 mL, oz av 28.349523 g, lb 453.59237 g); imperial gallon 4.54609 L (Weights and Measures Act 1985).
const published = [
  ["57 g", "mass", "g", 0.057],
  ["57g", "mass", "g", 0.057],
  ["2 oz", "mass", "oz", 2 * 0.028349523],
  ["2 lb", "mass", "lb", 2 * 0.45359237],
  ["1 lb 4 oz", "mass", "lb", 1.25 * 0.45359237],
  ["8 fl oz", "volume", "floz-us", 8 * 29.57353e-6],
  ["8 fl. oz.", "volume", "floz-us", 8 * 29.57353e-6],
  ["1 1/2 cup", "volume", "cup-us", 1.5 * 236.5882e-6],
  ["1½ cups", "volume", "cup-us", 1.5 * 236.5882e-6],
  ["1 ½ cups", "volume", "cup-us", 1.5 * 236.5882e-6],
  ["1-1/2 cup", "volume", "cup-us", 1.5 * 236.5882e-6],
  ["½ cup", "volume", "cup-us", 0.5 * 236.5882e-6],
  ["3/4 gal", "volume", "gal-us", 0.75 * 3.785411784e-3],
  ["350 ml", "volume", "ml", 350e-6],
  ["350 mL", "volume", "ml", 350e-6],
  ["1 pt", "volume", "pt-us", 473.1765e-6],
  ["1 imp pt", "volume", "pt-imp", 4.54609e-3 / 8],
  ["1 pint (UK)", "volume", "pt-imp", 568.26125e-6],
  ["1 qt", "volume", "qt-us", 946.3529e-6],
  ["0.5 l", "volume", "l", 5e-4],
  ["0,5 l", "volume", "l", 5e-4],
  [".5 L", "volume", "l", 5e-4],
  ["1\u2009250 ml", "volume", "ml", 1.25e-3],
  ["1,250.5 ml", "volume", "ml", 1.2505e-3],
  ["1.250,5 ml", "volume", "ml", 1.2505e-3],
  ["96 %", "fraction", "percent", 0.96],
  ["95 % vol", "fraction", "percent-vol", 0.95],
  ["92.4 % by mass", "fraction", "percent-mass", 0.924],
  ["190 proof", "fraction", "us-proof", 0.95],
  ["68 %", "fraction", "percent", 0.68],
  ["20 °C", "temperature", "degC", 293.15],
  ["20C", "temperature", "degC", 293.15],
  ["68 F", "temperature", "degF", 293.15],
  ["\u221210 °C", "temperature", "degC", 263.15],
  ["125 µm", "length", "um", 125e-6],
  ["125 μm", "length", "um", 125e-6],
  ["5 mil", "length", "mil", 127e-6],
  ["5 ft 6 in", "length", "ft", 1.6764],
  ["1.5 m²", "area", "m2", 1.5],
  ["1.5 m2", "area", "m2", 1.5],
  ["16 sq ft", "area", "ft2", 16 * 0.09290304],
  ["2 lb cut", "cut", "lb-cut", 2 * 119.826427],
  ["2 lb", "cut", "lb-cut", 2 * 119.826427],
  ["1½ lb cut", "cut", "lb-cut", 1.5 * 119.826427],
  ["2 lb/imp gal", "cut", "lb-cut-imp", 2 * 99.7763726],
  ["240 g/l", "cut", "g-per-l", 240],
  ["6 oz/pint", "cut", "oz-per-pt-us", 3 * 119.826427],
  ["8 oz per imp pint", "cut", "oz-per-pt-imp", 4 * 99.7763726],
] as const;

describe("what people type", () => {
  test.each(published)("%s (%s)", (text, dimension, unit, si) => {
    const got = value(text, dimension);
    expect(got.typed).toBe(text.trim());
    expect(got.unit).toBe(unit);
    expect(got.dimension).toBe(dimension);
    expect(Math.abs(got.si / si - 1)).toBeLessThan(3e-7);
  });

  test("a bare number takes the field's unit, where the field has one", () => {
    const got = parseQuantity("57", { dimensions: ["mass"], bareUnit: "g" });
    expect(got.ok && got.value).toEqual({ typed: "57", unit: "g", si: 0.057, dimension: "mass" });
    expect(problem("57", { dimensions: ["mass"] }).code).toBe("no-unit");
  });
});

describe("what is asked, not guessed", () => {
  test("an ounce of liquid", () => {
    for (const dims of [["mass", "volume"], ["volume"]] as const) {
      const asked = problem("8 oz", { dimensions: dims });
      expect(asked.code).toBe("ambiguous");
      expect(asked.readings?.map((r) => r.unit)).toEqual(["floz-us", "oz"]);
      expect(quantityProblemSentence(asked)).toBe(
        "“8 oz” can be fluid ounces (237 ml) or ounces of weight (227 g): which? “8 fl oz” or “8 oz by weight” would do.",
      );
    }
    expect(value("8 oz", "mass").unit).toBe("oz");
    expect(value("8 oz by weight", "mass").unit).toBe("oz");
    expect(problem("8 oz", { dimensions: ["volume"], gallon: "imperial" }).readings?.[0]?.unit).toBe(
      "floz-imp",
    );
  });

  test("a pint is of the gallon that was told, and says what it would be otherwise", () => {
    const us = parseQuantity("1 pt", { dimensions: ["volume"] });
    expect(us.ok && [us.value.unit, us.value.instead?.unit]).toEqual(["pt-us", "pt-imp"]);
    const uk = parseQuantity("1 cup", { dimensions: ["volume"], gallon: "imperial" });
    expect(uk.ok && [uk.value.unit, uk.value.instead?.unit]).toEqual(["cup-imp", "cup-us"]);
    const asked = problem("1 pint", { dimensions: ["volume"], gallon: "ask" });
    expect(asked.readings?.map((r) => r.unit)).toEqual(["pt-us", "pt-imp"]);
    const said = value("1 US pint", "volume");
    expect([said.unit, said.instead]).toEqual(["pt-us", undefined]);
  });

  test("a pound where mass and cut both fit", () => {
    const asked = problem("2 lb", { dimensions: ["mass", "cut"] });
    expect(asked.readings?.map((r) => r.unit).sort()).toEqual(["lb", "lb-cut"]);
  });

  test("one comma before three digits", () => {
    const asked = problem("1,500 g", { dimensions: ["mass"] });
    expect(asked.readings?.map((r) => r.si)).toEqual([0.0015, 1.5]);
    expect(value("0,500 g", "mass").si).toBeCloseTo(0.0005, 12);
    expect(value("1,000,000 mg", "mass").si).toBeCloseTo(1, 12);
  });
});

test("each reading of what is asked can be said so that it is not asked again", () => {
  const asked = [
    ["8 oz", { dimensions: ["mass", "volume"] }],
    ["1½ pt", { dimensions: ["volume"], gallon: "ask" }],
    ["2 lb", { dimensions: ["mass", "cut"] }],
    ["1,500 g", { dimensions: ["mass"] }],
    ["2 lb cut", { dimensions: ["cut"], gallon: "ask" }],
  ] as const;
  for (const [text, expected] of asked)
    for (const r of problem(text, expected).readings ?? []) {
      const again = parseQuantity(sayItAs(r), { ...expected, gallon: "us" });
      expect(again.ok && [again.value.unit, again.value.si]).toEqual([r.unit, expect.closeTo(r.si, 9)]);
    }
});

describe("what cannot be read says what would do", () => {
  const refusals = [
    ["", "empty"],
    ["   ", "empty"],
    ["g", "not-a-number"],
    ["abc", "not-a-number"],
    ["NaN g", "not-a-number"],
    ["Infinity g", "not-a-number"],
    ["1/0 oz", "not-a-number"],
    ["1..5 g", "not-a-number"],
    ["1,2,3 g", "not-a-number"],
    ["1.2.3 g", "not-a-number"],
    ["1e3 g", "unknown-unit"],
    ["12 stone", "unknown-unit"],
    ["57", "no-unit"],
    ["1 cup", "wrong-dimension"],
    ["20 °C", "wrong-dimension"],
    ["-5 g", "out-of-range"],
  ] as const;
  test.each(refusals)("“%s” as a mass: %s", (text, code) => {
    const got = problem(text, { dimensions: ["mass"] });
    expect(got.code).toBe(code);
    expect(quantityProblemSentence(got)).toContain("57 g");
  });

  test("limits are in the unit that was typed", () => {
    expect(problem("101 %", { dimensions: ["fraction"] }).limits).toEqual({ min: 0, max: 100 });
    expect(problem("201 proof", { dimensions: ["fraction"] }).limits).toEqual({ min: 0, max: 200 });
    expect(problem("-300 °C", { dimensions: ["temperature"] }).limits).toEqual({ min: -273.15 });
    expect(problem("-500 F", { dimensions: ["temperature"] }).limits?.min).toBeCloseTo(-459.67, 9);
  });
});
