import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { DomainError } from "../domain-error.ts";
import { massFraction, volumeFraction } from "../units.ts";
import { tabulatedAlcohols } from "./aqueous-density.ts";
import { ethanolWaterDensity } from "./ethanol-water.ts";
import {
  massFractionFromUsProof,
  massFractionFromVolumeFraction,
  strengthAt20C,
  strengthAt60F,
  usProofFromMassFraction,
  volumeFractionFromMassFraction,
} from "./strength.ts";

const massAt20C = (q: number): number =>
  massFractionFromVolumeFraction("ethanol", volumeFraction(q), strengthAt20C);
const massAt60F = (q: number): number =>
  massFractionFromVolumeFraction("ethanol", volumeFraction(q), strengthAt60F);

describe("against printed tables", () => {
  // USP 29 alcoholometric table: two tables side by side, 60 °F.
  const usp = checkTable("solutions/ethanol_usp_alcoholometric.csv");
  test.each(usp)("USP: $vol_percent_60F % vol, $mass_percent_b % by mass", (row) => {
    const percent = 100 * massAt60F(Number(row.vol_percent_60F) / 100);
    expect(Math.abs(percent - Number(row.mass_percent))).toBeLessThanOrEqual(0.02);
    const back =
      100 *
      volumeFractionFromMassFraction(
        "ethanol",
        massFraction(Number(row.mass_percent_b) / 100),
        strengthAt60F,
      );
    expect(Math.abs(back - Number(row.vol_percent_60F_b))).toBeLessThanOrEqual(0.02);
  });

  // OIML R 22 at 20 °C, widely quoted; 40 % vol is another mass at 60 °F.
  test.each([
    [0.95, 0.9241, 0.9242],
    [0.4, 0.333, 0.33361],
  ])("%d by volume", (q, at20C, at60F) => {
    expect(Math.abs(massAt20C(q) - at20C)).toBeLessThan(1e-4);
    expect(Math.abs(massAt60F(q) - at60F)).toBeLessThan(1e-4);
  });

  test("27 CFR 30.11: pure ethanol at 60 °F has specific gravity 0.7939", () => {
    const gravity =
      ethanolWaterDensity(massFraction(1), strengthAt60F) /
      ethanolWaterDensity(massFraction(0), strengthAt60F);
    expect(Math.abs(gravity - 0.7939)).toBeLessThan(1e-4);
    expect(massFractionFromUsProof(200)).toBe(1);
  });

  // Pharmacopoeial statement for 2-propanol: 70 % by volume is 62.8 % by mass; tolerance the file's 0.2.
  test("70 % by volume of 2-propanol", () => {
    const percent = 100 * massFractionFromVolumeFraction("isopropanol", volumeFraction(0.7), strengthAt20C);
    expect(Math.abs(percent - 62.8)).toBeLessThanOrEqual(0.2);
  });
});

describe("inverses", () => {
  test("mass and volume fraction, every alcohol, both temperatures", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tabulatedAlcohols, "acetone" as const),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom(strengthAt20C, strengthAt60F),
        (alcohol, q, temperature) => {
          const w = massFractionFromVolumeFraction(alcohol, volumeFraction(q), temperature);
          expect(Math.abs(volumeFractionFromMassFraction(alcohol, w, temperature) - q)).toBeLessThan(1e-12);
        },
      ),
    );
  });

  test("proof", () => {
    for (const proof of [0, 80, 100, 190, 200])
      expect(usProofFromMassFraction(massFractionFromUsProof(proof))).toBeCloseTo(proof, 9);
  });

  test.each([-1, 200.1, Number.NaN])("%d proof is refused", (proof) => {
    expect(() => massFractionFromUsProof(proof)).toThrow(DomainError);
  });
});
