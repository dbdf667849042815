import { expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { expectNear } from "../../../test/near.ts";
import { kelvin, pascal } from "../units.ts";
import {
  boilingPoint,
  boilingPressure,
  latentHeat,
  pressureCurve,
  validVapourTemperature,
  vapourPressure,
} from "./vapour-pressure.ts";
import { propertiesOf, type Volatile, volatiles } from "./volatiles.ts";

// The tables in test/check-values/solutions are held by the outside-check runner; here what they imply of each other.
const names: Record<string, Volatile> = {
  "2-propanol": "isopropanol",
  "1-propanol": "n-propanol",
  "1-butanol": "n-butanol",
  MEK: "mek",
  MIBK: "mibk",
  "ethyl acetate": "ethyl-acetate",
  "n-butyl acetate": "n-butyl-acetate",
};
const nameOf = (name = ""): Volatile => names[name] ?? (name as Volatile);

test("every liquid of the calculations but the unnamed one is here, with its molar mass", () => {
  expect(volatiles).toHaveLength(13);
  for (const row of checkTable("solutions/pure_components.csv"))
    expectNear(propertiesOf(nameOf(row.name)).molarMass, Number(row.molar_mass_g_mol) / 1e3, {
      relative: 1e-9,
    });
});

// Clausius and Clapeyron: the latent heat (CRC) is the slope of the vapour pressure (Perry), two sources apart; the
// vapour is not quite ideal, which takes 1–3 %. Isobutanol's curve is from another table, in which it is steeper.
test.each(volatiles)(
  "%s: the slope of the vapour pressure at 25 °C is its latent heat, within 4 percent",
  (liquid) => {
    const curve = pressureCurve(liquid);
    const slope = (8.314462618 * 298.15 ** 2 * Math.log(curve(298.25) / curve(298.05))) / 0.2;
    expectNear(slope, latentHeat(liquid, kelvin(298.15)), {
      relative: liquid === "isobutanol" ? 0.06 : 0.04,
    });
  },
);

// Two published curves of one liquid. The table says where the second is carried beyond its range: up to 11 % off there.
test.each(checkTable("solutions/vapor_pressure.csv"))("$name: both curves at 25 °C within 3 %", (row) => {
  const liquid = nameOf(row.name);
  const [, , , from] = propertiesOf(liquid).antoine;
  if (from > 298.15) return expect(/extrapolated/.test(row.note ?? "")).toBe(true);
  expectNear(boilingPressure(liquid, kelvin(298.15)), vapourPressure(liquid, kelvin(298.15)), {
    relative: 0.03,
  });
});

test("isobutanol boils at 107.9 °C (CRC) and has 1.39 kPa at 25 °C (VDI Heat Atlas)", () => {
  expectNear(boilingPoint("isobutanol", pascal(101_325)), 381.04, { absolute: 0.5 });
  expectNear(vapourPressure("isobutanol", kelvin(298.15)), 1392.7, { relative: 5e-3 });
});

test("the boiling curve has no step where it leaves its equation", () => {
  for (const liquid of volatiles) {
    const [, , , from, to] = propertiesOf(liquid).antoine;
    for (const edge of [from, Math.min(to, 404.9)])
      expectNear(boilingPressure(liquid, kelvin(edge - 1e-6)), boilingPressure(liquid, kelvin(edge + 1e-6)), {
        relative: 1e-6,
      });
  }
});

test("vapour pressure rises with temperature, latent heat falls", () => {
  for (const liquid of volatiles)
    for (let t = 245; t < 400; t += 5) {
      expect(vapourPressure(liquid, kelvin(t + 5))).toBeGreaterThan(vapourPressure(liquid, kelvin(t)));
      expect(latentHeat(liquid, kelvin(t + 5))).toBeLessThan(latentHeat(liquid, kelvin(t)));
    }
});

test("both ends are in the range; just outside and NaN are not", () => {
  const { min, max } = validVapourTemperature;
  for (const f of [vapourPressure, boilingPressure, latentHeat]) {
    expect(() => f("ethanol", min)).not.toThrow();
    expect(() => f("ethanol", max)).not.toThrow();
    expect(() => f("ethanol", kelvin(min - 0.01))).toThrow(/temperature/);
    expect(() => f("ethanol", kelvin(max + 0.01))).toThrow(/temperature/);
    expect(() => f("ethanol", Number.NaN as typeof min)).toThrow(/temperature/);
  }
});
