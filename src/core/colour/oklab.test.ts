import fc from "fast-check";
import { expect, test } from "vitest";
import { linearFromOklch, linearInGamut, oklabFromLinear, oklchFromLinear } from "./oklab.ts";
import { isInGamut } from "./srgb.ts";
import { linearFromXyz } from "./xyz.ts";

test.each([
  // Ottosson (2020), "Table of example XYZ and Oklab pairs", three decimals (from memory)
  [
    [0.95, 1, 1.089],
    [1, 0, 0],
  ],
  [
    [1, 0, 0],
    [0.45, 1.236, -0.019],
  ],
  [
    [0, 1, 0],
    [0.922, -0.671, 0.263],
  ],
  [
    [0, 0, 1],
    [0.153, -1.415, -0.449],
  ],
] as const)("oklabFromLinear of the light of %j", ([X, Y, Z], expected) => {
  const got = oklabFromLinear(linearFromXyz({ X: 100 * X, Y: 100 * Y, Z: 100 * Z }));
  expected.forEach((value, i) => {
    expect(Math.abs((got[i] as number) - value)).toBeLessThanOrEqual(1e-3);
  });
});

test("white is light and has no chroma; red is where the specification of CSS colours puts it", () => {
  const white = oklabFromLinear([1, 1, 1]);
  expect(Math.hypot(white[0] - 1, white[1], white[2])).toBeLessThan(1e-7);
  // CSS Color 4, sample conversions: red is oklch(0.62796 0.25768 29.234)
  const red = oklchFromLinear([1, 0, 0]);
  expect(Math.abs(red.lightness - 0.62796)).toBeLessThan(1e-5);
  expect(Math.abs(red.chroma - 0.25768)).toBeLessThan(1e-5);
  expect(Math.abs(red.hue - 29.234)).toBeLessThan(1e-3);
});

const unit = fc.double({ min: 0, max: 1, noNaN: true });

test("there and back is the same", () => {
  fc.assert(
    fc.property(unit, unit, unit, (r, g, b) => {
      const back = linearFromOklch(oklchFromLinear([r, g, b]));
      [r, g, b].forEach((v, i) => {
        expect(Math.abs((back[i] as number) - v)).toBeLessThan(1e-8);
      });
    }),
  );
});

test("into the gamut: shown, same lightness and hue, no more chroma, and not far inside", () => {
  fc.assert(
    fc.property(
      unit,
      fc.double({ min: 0.02, max: 0.5, noNaN: true }),
      fc.double({ min: 0, max: 359, noNaN: true }),
      (l, chroma, hue) => {
        const lightness = 0.05 + 0.9 * l;
        const light = linearInGamut({ lightness, chroma, hue });
        const got = oklchFromLinear(light);
        expect(isInGamut(light)).toBe(true);
        expect(Math.abs(got.lightness - lightness)).toBeLessThan(1e-6);
        expect(got.chroma).toBeLessThanOrEqual(chroma + 1e-9);
        if (got.chroma < chroma - 1e-9)
          expect(isInGamut(linearFromOklch({ lightness, chroma: got.chroma + 2e-5, hue }))).toBe(false);
      },
    ),
  );
});
