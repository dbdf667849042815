import fc from "fast-check";
import { expect, test } from "vitest";
import { colourDifferenceCie76, colourDifferenceCie2000 } from "./colour-difference.ts";

// The whole of Sharma, Wu & Dalal (2005), table 1 that we hold is run by `npm run checks -- colour`. Here the pairs of
// it that go wrong most easily: hues either side of 0°, and means taken the long way round.
test.each([
  [9, { L: 50, a: 2.49, b: -0.001 }, { L: 50, a: -2.49, b: 0.0009 }, 7.1792],
  [11, { L: 50, a: 2.49, b: -0.001 }, { L: 50, a: -2.49, b: 0.0011 }, 7.2195],
  [13, { L: 50, a: -0.001, b: 2.49 }, { L: 50, a: 0.0009, b: -2.49 }, 4.8045],
  [16, { L: 50, a: -0.001, b: 2.49 }, { L: 50, a: 0.0011, b: -2.49 }, 4.7461],
] as const)("colourDifferenceCie2000: pair %d of Sharma, Wu & Dalal (2005), table 1", (_, a, b, expected) => {
  expect(Math.abs(colourDifferenceCie2000(a, b) - expected)).toBeLessThan(5e-5);
});

const lab = fc.record({
  L: fc.double({ min: 0, max: 100, noNaN: true }),
  a: fc.double({ min: -100, max: 100, noNaN: true }),
  b: fc.double({ min: -100, max: 100, noNaN: true }),
});

test.each([colourDifferenceCie76, colourDifferenceCie2000])(
  "a colour does not differ from itself, nor by order: %s",
  (of) => {
    fc.assert(
      fc.property(lab, lab, (x, y) => {
        expect(of(x, x)).toBe(0);
        expect(Math.abs(of(x, y) - of(y, x))).toBeLessThan(1e-9);
        expect(of(x, y)).toBeGreaterThanOrEqual(0);
      }),
    );
  },
);

test("greys differ by lightness alone, weighted as the formula says", () => {
  // Sharma et al. (2005), eq. 15: at a mean L of 50, SL = 1
  expect(colourDifferenceCie2000({ L: 48, a: 0, b: 0 }, { L: 52, a: 0, b: 0 })).toBe(4);
});

test("NaN in, NaN out: never a number", () => {
  expect(colourDifferenceCie2000({ L: Number.NaN, a: 0, b: 0 }, { L: 52, a: 0, b: 0 })).toBeNaN();
});
