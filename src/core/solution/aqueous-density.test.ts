import { describe, expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { DomainError } from "../domain-error.ts";
import { celsius, type Kelvin, kelvinFromCelsius, massFraction } from "../units.ts";
import { aqueousDensity } from "./aqueous-density.ts";
import { methanolWater20C, nPropanolWater20C } from "./aqueous-tables.ts";
import type { Component } from "./component.ts";
import { ethanolWaterDensity } from "./ethanol-water.ts";
import { monotoneCubic } from "./monotone-cubic.ts";
import { pureDensity } from "./pure-density.ts";

const at = (t: number): Kelvin => kelvinFromCelsius(celsius(t));
const density = (component: Component, w: number, t = 20) =>
  aqueousDensity(component, massFraction(w), at(t));

const named: Readonly<Record<string, Component>> = {
  "1-propanol": "n-propanol",
  "2-propanol": "isopropanol",
  "1-butanol": "n-butanol",
  MEK: "mek",
  MIBK: "mibk",
  "ethyl acetate": "ethyl-acetate",
  "n-butyl acetate": "n-butyl-acetate",
};

describe("tables at 20 °C", () => {
  // CRC Handbook, 102nd ed.; 2-propanol's pure value there lies 0.7 kg/m³ below other sources, hence the wider tolerance.
  test.each(checkTable("solutions/aqueous_alcohol_20C_crc.csv"))("CRC: $alcohol $mass_percent %", (row) => {
    const name = row.alcohol ?? "";
    const got = density((named[name] ?? name) as Component, Number(row.mass_percent) / 100).value;
    const tolerance = name.endsWith("propanol") ? 1.5 : 0.5;
    expect(Math.abs(got - 1e3 * Number(row.density_20C_g_cm3))).toBeLessThanOrEqual(tolerance);
  });

  // J. Am. Chem. Soc. 43 (1921) 1005; one row is a slip of transcription and says so.
  test.each(
    checkTable("solutions/ipa_water_density_20C_1921.csv").filter((row) => !row.note?.includes("SUSPECT")),
  )("1921: 2-propanol $ipa_mass_percent %", (row) => {
    const got = density("isopropanol", Number(row.ipa_mass_percent) / 100).value;
    expect(Math.abs(got - 1e3 * Number(row.density_20C_g_cm3))).toBeLessThanOrEqual(1.5);
  });

  // Published open compilations, 20 °C within 0.3 %.
  test.each(checkTable("solutions/pure_components.csv"))("pure $name", (row) => {
    const component = (named[row.name ?? ""] ?? row.name) as Component;
    for (const t of [20, 25]) {
      const printed = Number(row[`density_${t}C_kg_m3`]);
      expect(Math.abs(pureDensity(component, at(t)).value / printed - 1)).toBeLessThanOrEqual(0.003);
    }
  });
});

describe("between and beyond the tables", () => {
  // Each row found from its neighbours: how far the curve may be off where the source has no row.
  test.each([
    ["methanol", methanolWater20C, 0.6],
    ["n-propanol", nPropanolWater20C, 2.5],
  ] as const)("%s: a row left out comes back", (_, table, worst) => {
    for (let i = 1; i < table.length - 1; i++) {
      const without = monotoneCubic(table.filter((__, k) => k !== i));
      const [w, printed] = table[i] as readonly [number, number];
      expect(Math.abs(without(w) - printed)).toBeLessThanOrEqual(worst);
    }
  });

  test("2-propanol has no step where the table hands over to the excess volume", () => {
    const step = density("isopropanol", 0.4 - 1e-9).value - density("isopropanol", 0.4).value;
    expect(Math.abs(step)).toBeLessThan(1e-3);
  });

  // The same way of carrying a table to a temperature, tried on ethanol, whose formula says what is right.
  test.each([0.2, 0.5, 0.8, 0.95])("expansion of the pure liquids, tried on ethanol at %d", (w) => {
    for (const t of [0, 10, 30, 40]) {
      const shift = (p: number): number =>
        1 / ethanolWaterDensity(massFraction(p), at(t)) - 1 / ethanolWaterDensity(massFraction(p), at(20));
      const carried =
        1 / (1 / ethanolWaterDensity(massFraction(w), at(20)) + w * shift(1) + (1 - w) * shift(0));
      const wrong = Math.abs(carried - ethanolWaterDensity(massFraction(w), at(t)));
      expect(wrong).toBeLessThanOrEqual(2 * (1 + 0.1 * Math.abs(t - 20)));
    }
  });

  test("away from 20 °C it is an estimate, and says so", () => {
    expect(density("isopropanol", 0.7).flags).toEqual([]);
    const warm = density("isopropanol", 0.7, 30);
    expect(warm.flags).toEqual(["estimated-temperature"]);
    expect(warm.standardUncertainty).toBeCloseTo(Math.hypot(1.2, 2), 9);
  });

  test("refused below −10 and above 40 °C", () => {
    for (const t of [-10, 40]) expect(density("methanol", 0.5, t).value).toBeGreaterThan(800);
    for (const t of [-10.01, 40.01]) expect(() => density("methanol", 0.5, t)).toThrow(DomainError);
  });

  test("ice is flagged: 10 % ethanol freezes at about −4.5 °C (Lange's Handbook, table 5.13)", () => {
    expect(density("ethanol", 0.1, -6).flags).toEqual(["below-freezing"]);
    expect(density("ethanol", 0.1, -3).flags).toEqual([]);
    expect(density("ethanol", 0.9, -20).flags).toEqual([]);
    expect(density("water", 1, -1).flags).toEqual(["below-freezing"]);
  });
});
