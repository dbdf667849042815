import { expect, test } from "vitest";
import { cutFromPoundsPerUsGallon, poundsPerUsGallonFromCut } from "../units.ts";
import { type Amounts, combined, cutOf, massOf, volumeOf } from "./amounts.ts";
import { cutFigure, figureOf, propagated, type Reckoned } from "./reckoning.ts";

const near = (actual: number | undefined | null, expected: number, relative: number) =>
  expect(Math.abs((actual ?? Number.NaN) / expected - 1)).toBeLessThan(relative);

// 31 lb of flakes in 69 lb (10¼ gal) of alcohol make 13⅓ gal of a 3.02 lb cut: a production formula printed in a
// government handbook of the trade. The alcohol at 6.732 lb a gallon is 95.6 % by mass ethanol, so 1 % is left for that.
test("a production formula's cut and volume", () => {
  const lb = 0.45359237;
  const amounts: Amounts = { resin: 31 * lb, ethanol: 69 * 0.924 * lb, water: 69 * 0.076 * lb };
  near(poundsPerUsGallonFromCut(cutOf(amounts) ?? cutFromPoundsPerUsGallon(0)), 3.02, 0.01);
  near(volumeOf(amounts) / 3.785411784e-3, 13.333, 0.01);
});

const weighed = (key: string, kg: number, u: number) =>
  ({ key, source: "scaleG", value: kg, standardUncertainty: u }) as const;

const mixed: Reckoned = propagated(
  [],
  [weighed("r", 0.057, 0.001), weighed("s", 0.193, 0.002)],
  (_, [r = 0, s = 0]) => ({
    resin: r,
    ethanol: s,
  }),
);

test("the cut of resin over liquid: relative uncertainties add in squares (JCGM 100:2008, 5.1.6)", () => {
  const figure = cutFigure(mixed);
  const expected = Math.hypot(0.001 / 0.057, 0.002 / 0.193);
  near((figure?.standardUncertainty ?? 0) / (figure?.value ?? 1), expected, 0.02);
});

test("what is poured off and what is left keep one error between them", () => {
  const poured = propagated([mixed], [weighed("p", 0.1, 0.005)], ([all = {}], [kg = 0]) =>
    combined([kg / massOf(all), all]),
  );
  const left = propagated([mixed], [weighed("p", 0.1, 0.005)], ([all = {}], [kg = 0]) =>
    combined([1 - kg / massOf(all), all]),
  );
  const both = propagated([poured, left], [], ([a = {}, b = {}]) => combined([1, a], [1, b]));
  near(figureOf(both, massOf).standardUncertainty, Math.hypot(0.001, 0.002), 1e-6);
  near(figureOf(poured, massOf).standardUncertainty, 0.005, 1e-6);
  near(cutFigure(left)?.standardUncertainty, cutFigure(mixed)?.standardUncertainty ?? 0, 0.001);
});
