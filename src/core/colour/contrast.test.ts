import { expect, test } from "vitest";
import { contrastRatio } from "./contrast.ts";
import { srgbFromHex } from "./srgb.ts";

test.each([
  // WCAG 2.2: black on white is 21:1; Understanding 1.4.3 names #777777 on white as 4.48, just short of 4.5
  ["#000000", "#FFFFFF", 21, 1e-9],
  ["#777777", "#FFFFFF", 4.48, 0.005],
  // The darkest grey that passes on white (from memory, a value that the guidelines' trainers use)
  ["#767676", "#FFFFFF", 4.54, 0.005],
  // WCAG 2.2, relative luminance worked by hand: red 0.2126, so 1.05/0.2626 = 3.998
  ["#FF0000", "#FFFFFF", 3.998, 0.001],
] as const)("contrastRatio(%s, %s) = %d", (one, other, expected, by) => {
  expect(Math.abs(contrastRatio(srgbFromHex(one), srgbFromHex(other)) - expected)).toBeLessThanOrEqual(by);
  expect(contrastRatio(srgbFromHex(one), srgbFromHex(other))).toBe(
    contrastRatio(srgbFromHex(other), srgbFromHex(one)),
  );
});

test("a colour has no contrast with itself", () => {
  expect(contrastRatio(srgbFromHex("#EFC752"), srgbFromHex("#EFC752"))).toBe(1);
});
