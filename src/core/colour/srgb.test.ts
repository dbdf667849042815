import fc from "fast-check";
import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { hexFromSrgb, isInGamut, linearFromSrgb, srgb, srgbFromHex, srgbFromLinear } from "./srgb.ts";

const unit = fc.double({ min: 0, max: 1, noNaN: true });
const eightBit = fc.integer({ min: 0, max: 255 });

test("linear light is what the standard's formula gives", () => {
  // IEC 61966-2-1:1999, 5.2, worked by hand: (0.5 + 0.055)/1.055 = 0.526066, to the power 2.4 = 0.214041; 0.04/12.92 = 0.0030960
  const [mid, low, one] = linearFromSrgb({ red: 0.5, green: 0.04, blue: 1 });
  expect(Math.abs(mid - 0.214041)).toBeLessThan(5e-7);
  expect(Math.abs(low - 0.003096)).toBeLessThan(1e-7);
  expect(one).toBe(1);
});

test("light and back is the same colour", () => {
  fc.assert(
    fc.property(unit, unit, unit, (r, g, b) => {
      const back = srgbFromLinear(linearFromSrgb(srgb(r, g, b)));
      for (const [x, y] of [
        [back.red, r],
        [back.green, g],
        [back.blue, b],
      ] as const)
        expect(Math.abs(x - y)).toBeLessThan(1e-6); // the standard's own step between its two branches
    }),
  );
});

test("six digits and back are the same digits", () => {
  fc.assert(
    fc.property(eightBit, eightBit, eightBit, (r, g, b) => {
      const hex = hexFromSrgb(srgb(r / 255, g / 255, b / 255));
      expect(hexFromSrgb(srgbFromHex(hex))).toBe(hex);
    }),
  );
});

test.each(["#FFF", "FF0000", "#GG0000", "#FF00000", ""])("%j is no colour", (hex) => {
  expect(() => srgbFromHex(hex)).toThrow(DomainError);
});

test.each([-1e-9, 1.0000001, Number.NaN])("a channel of %d is refused", (x) => {
  expect(() => srgb(0, x, 0)).toThrow(DomainError);
});

test("light that a screen cannot show is refused, not clipped; what arithmetic leaves over is not", () => {
  expect(() => srgbFromLinear([0, 1.01, 0])).toThrow(DomainError);
  expect(() => srgbFromLinear([0, Number.NaN, 0])).toThrow(DomainError);
  expect(isInGamut([-1e-9, 1 + 1e-9, 0.5])).toBe(true);
  expect(hexFromSrgb(srgbFromLinear([-1e-9, 1 + 1e-9, 0]))).toBe("#00FF00");
});
