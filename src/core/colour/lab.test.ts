import fc from "fast-check";
import { expect, test } from "vitest";
import { labFromXyz, xyzFromLab } from "./lab.ts";
import { linearFromXyz, whiteD65, xyzFromLinear } from "./xyz.ts";

const near = (got: Record<string, number>, expected: Record<string, number>, by: number) => {
  for (const [key, value] of Object.entries(expected))
    expect(Math.abs((got[key] as number) - value)).toBeLessThanOrEqual(by);
};

test.each([
  // Printed to seven digits as M of sRGB with the white of ASTM E308, e.g. by Lindbloom (from memory); read there with Y = 1.
  [[1, 0, 0], { X: 41.24564, Y: 21.26729, Z: 1.93339 }],
  [[0, 1, 0], { X: 35.75761, Y: 71.51522, Z: 11.9192 }],
  [[0, 0, 1], { X: 18.04375, Y: 7.2175, Z: 95.03041 }],
] as const)("xyzFromLinear(%j) is the printed column of the matrix", (light, xyz) => {
  near({ ...xyzFromLinear(light) }, xyz, 1e-5);
});

test("the primaries together are the white, and the matrix agrees with the standard's four decimals", () => {
  near({ ...xyzFromLinear([1, 1, 1]) }, { ...whiteD65 }, 1e-12);
  // IEC 61966-2-1:1999, 5.2: 0.4124 0.3576 0.1805 …, made with its own rounding of the white
  near({ ...xyzFromLinear([1, 0, 0]) }, { X: 41.24, Y: 21.26, Z: 1.93 }, 0.011);
});

test("light, XYZ and CIELAB and back are the same light", () => {
  const unit = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(unit, unit, unit, (r, g, b) => {
      const back = linearFromXyz(xyzFromLab(labFromXyz(xyzFromLinear([r, g, b]))));
      [r, g, b].forEach((v, i) => {
        expect(Math.abs((back[i] as number) - v)).toBeLessThan(1e-9);
      });
    }),
  );
});

test("white, black and grey have no hue; the threshold joins", () => {
  near({ ...labFromXyz(whiteD65) }, { L: 100, a: 0, b: 0 }, 1e-12);
  near({ ...labFromXyz({ X: 0, Y: 0, Z: 0 }) }, { L: 0, a: 0, b: 0 }, 1e-12);
  const at = (Y: number) => labFromXyz({ X: 0, Y, Z: 0 }).L;
  const threshold = (100 * 216) / 24389; // CIE 15:2004: L = 8 there, from either side
  expect(Math.abs(at(threshold * (1 - 1e-9)) - 8)).toBeLessThan(1e-6);
  expect(Math.abs(at(threshold * (1 + 1e-9)) - 8)).toBeLessThan(1e-6);
});
