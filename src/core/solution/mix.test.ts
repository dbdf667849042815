import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { DomainError } from "../domain-error.ts";
import {
  celsius,
  cubicMetre,
  cutFromPoundsPerUsGallon,
  kelvinFromCelsius,
  kilogram,
  kilogramPerCubicMetre,
  massFraction,
  poundKg,
  poundsPerUsGallonFromCut,
  usGallonM3,
  volumeFraction,
} from "../units.ts";
import { aqueous, type Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { type MixGiven, mixFrom, type Recipe } from "./mix.ts";
import { blendOfResins, plainResin } from "./resin.ts";
import { cutOfSolution, massFractionOfResin, massOfSolution, volumeOfSolution } from "./solution.ts";
import { massFractionFromUsProof, massFractionFromVolumeFraction, strengthAt20C } from "./strength.ts";

const ethanol95: Composition = aqueous(
  "ethanol",
  massFractionFromVolumeFraction("ethanol", volumeFraction(0.95), strengthAt20C),
);
const plain: Recipe = { resin: blendOfResins([plainResin]), solvent: ethanol95, temperature: strengthAt20C };
const pounds = poundsPerUsGallonFromCut;
const lb = (x: number) => kilogram(x * poundKg);
const ounce = poundKg / 16;
const fluidOunce = usGallonM3 / 128;
const density95 = densityOfSolvent(ethanol95, strengthAt20C).value;

describe("the trade's own numbers", () => {
  test("1 lb cut is 119.8 g to a litre of solvent (arithmetic: 453.59237 / 3.785411784)", () => {
    expect(cutFromPoundsPerUsGallon(1)).toBeCloseTo(119.826, 3);
  });

  test("8 fl oz of alcohol to 2 oz of flakes is a 2 lb cut; with the alcohol weighed it is 1.69", () => {
    const poured = mixFrom(plain, {
      resin: kilogram(2 * ounce),
      solvent: kilogram(8 * fluidOunce * density95),
    });
    expect(pounds(poured.cut)).toBeCloseTo(2, 9);
    const weighed = mixFrom(plain, { resin: kilogram(2 * ounce), solvent: kilogram(8 * ounce) });
    expect(pounds(weighed.cut)).toBeCloseTo(1.69, 2);
  });

  test("2 lb in a gallon makes 1.2 gallons with 1.66 lb in each (a magazine's chart)", () => {
    const mixed = mixFrom(plain, {
      cut: cutFromPoundsPerUsGallon(2),
      solvent: kilogram(usGallonM3 * density95),
    });
    const gallons = mixed.solutionVolume / usGallonM3;
    expect(Math.abs(gallons - 1.2)).toBeLessThan(0.005);
    expect(Math.abs(2 / gallons - 1.66)).toBeLessThan(0.015);
  });

  test("31 lb with 10¼ gal (69 lb) makes 13⅓ gal of 7.5 lb (a government handbook's production formula)", () => {
    const recipe = { ...plain, solvent: aqueous("ethanol", massFractionFromUsProof(190)) };
    const mixed = mixFrom(recipe, { resin: lb(31), solvent: lb(69) });
    expect(Math.abs(mixed.solutionVolume / usGallonM3 / (40 / 3) - 1)).toBeLessThan(0.01);
    expect(Math.abs(100 / (mixed.solutionVolume / usGallonM3) - 7.5)).toBeLessThan(0.08);
    expect(Math.abs(pounds(mixed.cut) - 31 / 10.25)).toBeLessThan(0.03);
  });

  // ASTM D360 section 6: minima of nonvolatile matter lie below what the cut makes of dry resin, by 4 points at most.
  test.each(checkTable("solutions/shellac_d360_nonvolatile.csv"))(
    "$cut_lb_per_us_gal lb cut against D360",
    (row) => {
      const mixed = mixFrom(
        { ...plain, solvent: aqueous("ethanol", massFractionFromUsProof(190)) },
        { resin: kilogram(1), cut: cutFromPoundsPerUsGallon(Number(row.cut_lb_per_us_gal)) },
      );
      const above = 100 * massFractionOfResin(mixed.solution) - Number(row.min_nonvolatile_orange_percent);
      expect(above).toBeGreaterThan(0);
      expect(above).toBeLessThan(4);
    },
  );
});

const recipes = fc.record({
  moisture: fc.double({ min: 0, max: 0.06, noNaN: true }),
  partialDensity: fc.double({ min: 1000, max: 1300, noNaN: true }),
  strength: fc.double({ min: 0.5, max: 1, noNaN: true }),
  alcohol: fc.constantFrom("ethanol", "isopropanol", "n-propanol", "methanol", "acetone"),
  t: fc.double({ min: 0, max: 35, noNaN: true }),
  cut: fc.double({ min: 0.1, max: 8, noNaN: true }),
  resin: fc.double({ min: 0.001, max: 10, noNaN: true }),
} as const);

type Drawn = typeof recipes extends fc.Arbitrary<infer T> ? T : never;
const recipeOf = (drawn: Drawn): Recipe => ({
  resin: blendOfResins([
    {
      ...plainResin,
      moisture: massFraction(drawn.moisture),
      partialDensity: kilogramPerCubicMetre(drawn.partialDensity),
    },
  ]),
  solvent: aqueous(drawn.alcohol as "ethanol", massFraction(drawn.strength)),
  temperature: kelvinFromCelsius(celsius(drawn.t)),
});

describe("in any direction", () => {
  test("every two amounts give the other two back", () => {
    fc.assert(
      fc.property(recipes, (drawn) => {
        const recipe = recipeOf(drawn);
        const whole = mixFrom(recipe, {
          resin: kilogram(drawn.resin),
          cut: cutFromPoundsPerUsGallon(drawn.cut),
        });
        const { resin, cut, solvent, solutionVolume } = whole;
        const pairs: MixGiven[] = [
          { resin, solvent },
          { resin, solutionVolume },
          { cut, solvent },
          { cut, solutionVolume },
          { solvent, solutionVolume },
        ];
        for (const given of pairs) {
          const back = mixFrom(recipe, given);
          for (const name of ["resin", "cut", "solvent", "solutionVolume"] as const)
            expect(Math.abs(back[name] / whole[name] - 1)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  test("mass is kept, and the moisture is in the liquid", () => {
    fc.assert(
      fc.property(recipes, (drawn) => {
        const mixed = mixFrom(recipeOf(drawn), {
          resin: kilogram(drawn.resin),
          cut: cutFromPoundsPerUsGallon(drawn.cut),
        });
        expect(massOfSolution(mixed.solution) / (mixed.resin + mixed.solvent)).toBeCloseTo(1, 12);
        expect(mixed.solution.resin / (mixed.resin * (1 - drawn.moisture))).toBeCloseTo(1, 12);
        const water = (mixed.solution.liquid.composition.water ?? 0) * mixed.solution.liquid.mass;
        expect(water).toBeCloseTo(mixed.solvent * (1 - drawn.strength) + mixed.resin * drawn.moisture, 9);
      }),
    );
  });

  test("with dry flakes the jar's cut is the cut it was mixed to", () => {
    const mixed = mixFrom(plain, { resin: kilogram(1), cut: cutFromPoundsPerUsGallon(2) });
    expect(pounds(cutOfSolution(mixed.solution))).toBeCloseTo(2, 9);
    expect(volumeOfSolution(mixed.solution, strengthAt20C)).toBeCloseTo(mixed.solutionVolume, 12);
  });
});

describe("what cannot be", () => {
  test("one amount says too little", () => {
    expect(() => mixFrom(plain, { resin: kilogram(1) })).toThrowError(/missing/);
  });

  test("a volume that its parts already pass", () => {
    const refused = (given: MixGiven): string => {
      try {
        mixFrom(plain, given);
        return "";
      } catch (error) {
        return (error as DomainError).detail.because ?? "";
      }
    };
    expect(refused({ resin: kilogram(1.205), solutionVolume: cubicMetre(0.9e-3) })).toBe(
      "The resin alone takes 1000 mL.",
    );
    expect(refused({ solvent: kilogram(1), solutionVolume: cubicMetre(1e-3) })).toMatch(
      /solvent alone takes 123\d mL/,
    );
  });
});

describe("several resins", () => {
  const waxy = { ...plainResin, massShare: 0.25, wax: massFraction(0.05), moisture: massFraction(0.02) };
  const dewaxed = { ...plainResin, massShare: 0.75, partialDensity: kilogramPerCubicMetre(1150) };

  test("what they bring adds, by mass and by volume", () => {
    const blend = blendOfResins([waxy, dewaxed]);
    expect(blend.dry).toBeCloseTo(0.25 * 0.98 + 0.75, 12);
    expect(blend.wax).toBeCloseTo(0.0125, 12);
    expect(blend.dry / blend.partialDensity).toBeCloseTo((0.25 * 0.98) / 1205 + 0.75 / 1150, 12);
  });

  test.each([
    ["shares that do not sum to one", [{ ...plainResin, massShare: 0.5 }]],
    ["a density that is a slip of unit", [{ ...plainResin, partialDensity: kilogramPerCubicMetre(1.205) }]],
    [
      "more moisture, wax and insolubles than flakes",
      [{ ...plainResin, wax: massFraction(0.6), moisture: massFraction(0.5) }],
    ],
  ])("%s are refused", (_, resins) => {
    expect(() => blendOfResins(resins)).toThrow(DomainError);
  });
});
