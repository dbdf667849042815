import { describe, expect, test } from "vitest";
import { kilogram, massFraction, poundKg, usGallonM3, volumeFraction } from "../units.ts";
import { aqueous, type Composition, pouredTogether } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { findRoot } from "./find-root.ts";
import { volumeOfLiquid } from "./solution.ts";
import {
  massFractionFromUsProof,
  massFractionFromVolumeFraction,
  strengthAt20C,
  strengthAt60F,
} from "./strength.ts";

const ethanol = (q: number, at = strengthAt20C): Composition =>
  aqueous("ethanol", massFractionFromVolumeFraction("ethanol", volumeFraction(q), at));
const litres = (composition: Composition, volume: number) => ({
  composition,
  mass: kilogram((volume * densityOfSolvent(composition, strengthAt20C).value) / 1e3),
});

describe("volumes do not add", () => {
  test("500 mL of 95 % alcohol and 500 mL of water make about 971 mL (USP, Diluted Alcohol, prints about 970)", () => {
    const blend = pouredTogether([
      litres(ethanol(0.95), 0.5),
      litres(aqueous("water", massFraction(1)), 0.5),
    ]);
    expect(Math.abs(volumeOfLiquid(blend, strengthAt20C) * 1e6 - 971)).toBeLessThan(1);
  });

  test("95 to 70 % takes 39.1 volumes of water to 100, not 35.7 (a printed dilution table, 60 °F)", () => {
    const [strong, weak] = [ethanol(0.95, strengthAt60F), ethanol(0.7, strengthAt60F)];
    const stock = 0.1 * densityOfSolvent(strong, strengthAt60F).value;
    const water = stock * ((strong.ethanol ?? 0) / (weak.ethanol ?? 1) - 1);
    const volumes = (water / densityOfSolvent({ water: massFraction(1) }, strengthAt60F).value) * 1e3;
    expect(Math.abs(volumes - 39.1)).toBeLessThan(0.15);
  });
});

describe("several liquids", () => {
  const denatured: Composition = {
    ethanol: massFraction(0.875),
    methanol: massFraction(0.04),
    "ethyl-acetate": massFraction(0.015),
    water: massFraction(0.07),
  };

  // 27 CFR 21.161: 100 gal of alcohol with 4 gal of methanol, lb per gal in air at 60 °F; brass of 8000 kg/m³.
  test.each([
    [190, 6.788],
    [192, 6.756],
    [200, 6.611],
  ])("specially denatured alcohol, formula 1, on %d proof weighs %d lb to the gallon", (proof, printed) => {
    const at60F = (composition: Composition, volume: number) => ({
      composition,
      mass: kilogram(volume * densityOfSolvent(composition, strengthAt60F).value),
    });
    const blend = pouredTogether([
      at60F(aqueous("ethanol", massFractionFromUsProof(proof)), 1),
      at60F({ methanol: massFraction(1) }, 0.04),
    ]);
    const density = densityOfSolvent(blend.composition, strengthAt60F).value;
    const inAir = (((density - 1.2) / (1 - 1.2 / 8000)) * usGallonM3) / poundKg;
    expect(Math.abs(inAir - printed)).toBeLessThanOrEqual(0.003);
  });

  test("a reagent alcohol of 86–89 % ethanol, 1–2 % ethyl acetate, 3–5 % methanol, 6–8 % water is sold at 0.809–0.813", () => {
    const { value, flags } = densityOfSolvent(denatured, strengthAt20C);
    const gravity = value / densityOfSolvent({ water: massFraction(1) }, strengthAt20C).value;
    expect(gravity).toBeGreaterThan(0.809);
    expect(gravity).toBeLessThan(0.813);
    expect(flags).toEqual(["ideal-volumes"]);
  });

  test("the order of the parts does not matter, and shares sum to one", () => {
    const parts = [
      litres(ethanol(0.96), 1),
      litres({ mek: massFraction(1) }, 0.03),
      litres({ isopropanol: massFraction(1) }, 0.05),
    ];
    const [one, other] = [pouredTogether(parts), pouredTogether([...parts].reverse())];
    expect(one.mass).toBeCloseTo(other.mass, 12);
    expect(Object.values(one.composition).reduce((sum, x) => sum + x, 0)).toBeCloseTo(1, 12);
    expect(densityOfSolvent(one.composition, strengthAt20C).value).toBeCloseTo(
      densityOfSolvent(other.composition, strengthAt20C).value,
      9,
    );
  });

  test("what is not named widens the uncertainty and is flagged", () => {
    const named = densityOfSolvent(denatured, strengthAt20C);
    const unknown = densityOfSolvent(
      { ethanol: massFraction(0.9), unknown: massFraction(0.1) },
      strengthAt20C,
    );
    expect(unknown.standardUncertainty).toBeGreaterThan(2 * named.standardUncertainty);
    expect(unknown.flags).toEqual(["ideal-volumes", "unknown-component"]);
  });

  test("nothing at all has no composition", () => {
    expect(() => pouredTogether([])).toThrowError(/not-enough-data/);
  });
});

test("a root that is not bracketed is refused, one at an end is found", () => {
  expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrowError(/no-convergence/);
  expect(findRoot((x) => x, 0, 1)).toBe(0);
  expect(findRoot((x) => x - 1, 0, 1)).toBe(1);
});
