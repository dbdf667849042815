import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { DomainError } from "../domain-error.ts";
import { celsius, type Kelvin, kelvin, kelvinFromCelsius, massFraction, volumeFraction } from "../units.ts";
import { ethanolWaterDensity } from "./ethanol-water.ts";
import { massFractionFromVolumeFraction, strengthAt20C } from "./strength.ts";

const at = (t: number): Kelvin => kelvinFromCelsius(celsius(t));
const density = (p: number, t: number): number => ethanolWaterDensity(massFraction(p), at(t));

describe("against what others measured and printed", () => {
  // Cells of the OIML R 22 tables and of the official table by volume at 20 °C; the tolerance is the file's.
  test.each(checkTable("solutions/oiml_r22_check_values.csv"))(
    "OIML R 22: $fraction_basis $ethanol_fraction at $t_C °C",
    (row) => {
      const given = Number(row.ethanol_fraction);
      const p =
        row.fraction_basis === "mass"
          ? given
          : massFractionFromVolumeFraction("ethanol", volumeFraction(given), strengthAt20C);
      const residual = Math.abs(density(p, Number(row.t_C)) - Number(row.density_ref_kg_m3));
      expect(residual).toBeLessThanOrEqual(Number(row.tolerance_kg_m3));
    },
  );

  // NBS Bulletin 9, an experiment of another country; 0.15 kg/m³ is the two tables' agreement.
  test.each(checkTable("solutions/ethanol_water_density_nbs.csv"))("NBS: $ethanol_mass_percent %", (row) => {
    for (const [column, cell] of Object.entries(row)) {
      const t = /^density_(\d+)C/.exec(column)?.[1];
      if (t === undefined || cell === "") continue;
      const residual = Math.abs(
        density(Number(row.ethanol_mass_percent) / 100, Number(t)) - 1e3 * Number(cell),
      );
      expect(residual).toBeLessThanOrEqual(0.15);
    }
  });
});

describe("where it holds", () => {
  test("both ends of the range, and not beyond", () => {
    expect(density(1, -20)).toBeGreaterThan(density(1, 40));
    for (const t of [-20.001, 40.001])
      expect(() => density(0.5, t)).toThrowError(expect.objectContaining({ name: "DomainError" }));
  });

  test("the refusal names the temperature in °C", () => {
    try {
      density(0.5, 45);
      expect.unreachable();
    } catch (error) {
      const { detail } = error as DomainError;
      expect(detail.field).toBe("temperatureC");
      expect(detail.value).toBeCloseTo(45, 9);
      expect(detail.limits).toEqual({ min: -20, max: 40 });
    }
  });

  test.each([-0.001, 1.001, Number.NaN])("a mass fraction of %d is refused", (p) => {
    expect(() => ethanolWaterDensity(p as ReturnType<typeof massFraction>, at(20))).toThrow(DomainError);
  });
  test("a temperature that is not a number is refused", () => {
    expect(() => ethanolWaterDensity(massFraction(0.5), Number.NaN as Kelvin)).toThrow(DomainError);
  });
});

test("more ethanol is lighter, and so is warmer above 12 °C", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.999, noNaN: true }),
      fc.double({ min: 12, max: 39, noNaN: true }),
      (p, t) => {
        expect(density(p + 0.001, t)).toBeLessThan(density(p, t));
        expect(ethanolWaterDensity(massFraction(p), kelvin(at(t) + 1))).toBeLessThan(density(p, t));
      },
    ),
  );
});
