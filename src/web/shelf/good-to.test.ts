import { expect, test } from "vitest";
import { goodToWords, readGoodTo } from "./good-to.ts";

const value = (use: Parameters<typeof readGoodTo>[0], typed: string) => {
  const read = readGoodTo(use, typed);
  return read.ok ? read.value : read.problem.says;
};

// A degree Fahrenheit is 5/9 of a kelvin as a difference (SI Brochure): no 273.15, no 32.
test.each([
  ["scale", "0.5", 0.5e-3, "0.5 g"],
  ["jug", "5 ml", 5e-6, "5 ml"],
  ["hygrometer", "3", 0.03, "3 % RH"],
  ["thermometer", "0,5", 0.5, "0,5 °C"],
  ["thermometer", "0.9 °F", 0.5, "0.9 °F"],
  ["gloss-meter", "1", 1, "1 GU"],
] as const)("a %s good to %j", (use, typed, si, says) => {
  const read = value(use, typed);
  if (typeof read === "string") throw new Error(read);
  expect(read.si).toBeCloseTo(si, 9);
  expect(goodToWords(read)).toBe(says);
});

test.each([
  ["scale", "0 g"],
  ["scale", "5 ml"],
  ["thermometer", "half"],
  ["thermometer", "1 g"],
  ["thermometer", "0"],
  ["gloss-meter", "-1"],
  ["hygrometer", "80 %"],
] as const)("a %s good to %j is refused in a sentence", (use, typed) => {
  expect(value(use, typed)).toMatch(/\.$/);
});
