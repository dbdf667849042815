import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { kelvin, pascal } from "../units.ts";
import { airSide, molarMassOfGas, stefanFactor, vapourOverWater, waterInAir } from "./air-side.ts";
import { diffusivityInFilm, glassTemperature, kelvinAboveGlass, resinFactor } from "./resin-hold.ts";
import { propertiesOf } from "./volatiles.ts";

const air = { temperature: kelvin(300), pressure: pascal(101_325) };
const side = (speed: number, length = 0.3) => airSide({ ...air, speed, length });

// Incropera, Fundamentals of Heat and Mass Transfer, table A.4, air at 300 K: ν 15.89e-6 m²/s, k 0.0263 W/(m·K). From memory.
test("air at 300 K: Reynolds number, and the laminar plate's h within the turbulence that is added", () => {
  expectNear(side(1).reynolds, 0.3 / 15.89e-6, { relative: 0.02 });
  const laminar = (0.664 * Math.sqrt(0.3 / 15.89e-6) * 0.71 ** (1 / 3) * 0.0263) / 0.3;
  const got = side(1).heatTransfer(1);
  expect(got).toBeGreaterThan(laminar);
  expect(got).toBeLessThan(2.2 * laminar);
});

// At Re = 10⁶ Incropera's eq. 7.38 for a plate that is turbulent throughout, 0.037·Re^⅘·Pr^⅓ = 2085; from memory.
test("a long plate in a strong wind", () => {
  const long = airSide({ ...air, speed: 5, length: 3.178 });
  expectNear((long.heatTransfer(1) * 3.178) / 0.0263, 2085, { relative: 0.15 });
});

test("still air takes its 0.52·Ra^⅕, a faster draught and heavier gas take more", () => {
  expectNear((side(0).heatTransfer(1.02) * 0.075) / 0.0263, 0.52 * side(0).rayleigh(1.02) ** 0.2, {
    relative: 0.01,
  });
  const speeds = [0, 0.05, 0.1, 0.3, 1, 5].map((v) => side(v).heatTransfer(1.02));
  for (let i = 1; i < speeds.length; i++) expect(speeds[i]).toBeGreaterThan(speeds[i - 1] ?? 0);
  expect(side(0).heatTransfer(1.05)).toBeGreaterThan(side(0).heatTransfer(1.01));
});

// Perry's Handbook, 7th ed., table 2-324 (0 °C, carried to 25 °C by T^1.75), through the reference table: 15 % is its own
// scatter; acetone was measured 20 % higher.
test.each([
  ["ethanol", 0.1189],
  ["n-butanol", 0.0819],
  ["ethyl-acetate", 0.0833],
  ["n-butyl-acetate", 0.0676],
  ["water", 0.256],
] as const)("diffusivity of %s in air within 15 percent of the measured", (vapour, measured) => {
  expectNear(propertiesOf(vapour).diffusivity * 1e4, measured, { relative: 0.15 });
});

test("water is the measure of vapours, and heavier ones are slower", () => {
  expect(vapourOverWater("water")).toBe(1);
  expect(vapourOverWater("n-butanol")).toBeLessThan(vapourOverWater("ethanol"));
});

test("Stefan's factor: one vapour by its own formula, and no step where the two sides are alike", () => {
  expectNear(stefanFactor(0.3, 0.1), Math.log(0.9 / 0.7) / 0.2, { relative: 1e-12 });
  expectNear(stefanFactor(0.2 + 1e-7, 0.2), stefanFactor(0.2, 0.2), { relative: 1e-6 });
  expectNear(stefanFactor(0.2, 0.2), 1.25, { relative: 1e-9 });
});

test("gas: dry air is air, and half a percent of it is water at 20 °C and 21 %", () => {
  expectNear(molarMassOfGas([], []), 0.02897, { relative: 1e-3 });
  expectNear(waterInAir(kelvin(293.15), 0.21, air.pressure), 0.00485, { relative: 0.01 });
});

test("resin: alone it is a glass, its liquids are free without it, and it slows the larger ones more", () => {
  const free = { resin: 0, molesPerVolume: 1 / 5.84e-5, interactions: 0 };
  expect(resinFactor(0.4, 5.84e-5, free)).toBe(1);
  expectNear(glassTemperature(1, [["ethanol", 0]]), glassTemperature(1, []), { relative: 1e-12 });
  expect(diffusivityInFilm(9.2e-5, 0.8, 293.15)).toBeLessThan(diffusivityInFilm(1.8e-5, 0.8, 293.15));
  expect(diffusivityInFilm(5.84e-5, 0.8, 283.15)).toBeLessThan(diffusivityInFilm(5.84e-5, 0.8, 293.15));
});

// Williams, Landel and Ferry: 100 K above its glass temperature a polymer has 10^(12 − 17.44·100/151.6) Pa·s.
test("the viscosity's temperature is the inverse of the printed equation", () => {
  for (const kelvins of [20, 55, 100]) {
    const decades = 12 - (17.44 * kelvins) / (51.6 + kelvins);
    expectNear(kelvinAboveGlass(decades), kelvins, { relative: 1e-12 });
  }
});
