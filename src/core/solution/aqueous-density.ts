import { inRange } from "../domain-error.ts";
import { celsius, celsiusFromKelvin, type Kelvin, kelvinFromCelsius, type MassFraction } from "../units.ts";
import { methanolWater20C, nPropanolWater20C } from "./aqueous-tables.ts";
import type { Component } from "./component.ts";
import { ethanolWaterDensity } from "./ethanol-water.ts";
import { type Estimate, flagsTogether } from "./flag.ts";
import { isBelowFreezing } from "./freezing.ts";
import { isopropanolWaterDensity20C } from "./isopropanol-water.ts";
import { monotoneCubic } from "./monotone-cubic.ts";
import { pureDensity, validTableTemperature } from "./pure-density.ts";

const at20C = kelvinFromCelsius(celsius(20));

/** Alcohols whose mixtures with water were measured. For any other liquid with water, volumes are taken to add. */
export const tabulatedAlcohols = ["ethanol", "isopropanol", "n-propanol", "methanol"] as const;
export type TabulatedAlcohol = (typeof tabulatedAlcohols)[number];

/** Whether the liquid was measured with water. */
export const isTabulated = (component: Component): component is TabulatedAlcohol =>
  (tabulatedAlcohols as readonly Component[]).includes(component);

const tables: Readonly<
  Record<
    Exclude<TabulatedAlcohol, "ethanol">,
    { readonly density20C: (w: number) => number; readonly standardUncertainty: number }
  >
> = {
  isopropanol: { density20C: isopropanolWaterDensity20C, standardUncertainty: 1.2 },
  "n-propanol": { density20C: monotoneCubic(nPropanolWater20C), standardUncertainty: 1 },
  methanol: { density20C: monotoneCubic(methanolWater20C), standardUncertainty: 0.3 },
};

/** How much longer a kilogram becomes from 20 °C to the temperature, as a pure liquid [m³/kg]. */
const expansion = (component: Component, temperature: Kelvin): number =>
  1 / pureDensity(component, temperature).value - 1 / pureDensity(component, at20C).value;

/**
 * Density of one liquid with water.
 *
 *     ethanol: OIML R 22
 *     isopropanol, n-propanol, methanol at 20 °C: the table; at t: 1/ρ(w, t) = 1/ρ(w, 20 °C) + w·Δva + (1−w)·Δvw
 *     any other liquid: 1/ρ = w/ρa(t) + (1−w)/ρw(t), volumes taken to add
 *
 * Δv is the expansion of the pure liquids from 20 °C. Ethanol at 50 % by mass, carried the same way from 20 to 40 °C,
 * comes out 2.1 kg/m³ above its formula, within the uncertainty that is stated here.
 *
 * @param component    the liquid beside water
 * @param w            mass fraction of that liquid [kg/kg], scalar
 * @param temperature  [K], scalar
 * @returns            density [kg/m³] with its standard uncertainty and flags, scalar
 * @throws DomainError outside −20–40 °C (ethanol, water) or −10–40 °C (all others), named in °C, and for NaN
 *
 * Valid:    mass fraction 0–1 above the freezing curve
 * Accuracy: ethanol 0.01 kg/m³; isopropanol 1.2, n-propanol 1, methanol 0.3 at 20 °C; away from it hypot of that
 *           with 1 + 0.1 per K; volumes taken to add 5
 * Source:   as `ethanolWaterDensity`, `isopropanolWaterDensity20C`, the tables and `pureDensity`
 * @example
 * aqueousDensity("methanol", massFraction(0.5), kelvinFromCelsius(celsius(20))).value // => 915.6
 */
export function aqueousDensity(component: Component, w: MassFraction, temperature: Kelvin): Estimate {
  if (w === 0) return pureDensity("water", temperature);
  if (component === "ethanol")
    return {
      value: ethanolWaterDensity(w, temperature),
      standardUncertainty: 0.01,
      flags: isBelowFreezing(w, temperature) ? ["below-freezing"] : [],
    };
  const t = inRange("temperatureC", celsiusFromKelvin(temperature), validTableTemperature);
  const pure = pureDensity(component, temperature);
  if (w === 1) return pure;
  if (!isTabulated(component)) {
    const value = 1 / (w / pure.value + (1 - w) / pureDensity("water", temperature).value);
    const standardUncertainty = Math.hypot(5, w * pure.standardUncertainty);
    return { value, standardUncertainty, flags: flagsTogether(pure.flags, ["ideal-volumes"]) };
  }
  const table = tables[component];
  const value20C = table.density20C(w);
  if (t === 20) return { value: value20C, standardUncertainty: table.standardUncertainty, flags: [] };
  const volume =
    1 / value20C + w * expansion(component, temperature) + (1 - w) * expansion("water", temperature);
  return {
    value: 1 / volume,
    standardUncertainty: Math.hypot(table.standardUncertainty, 1 + 0.1 * Math.abs(t - 20)),
    flags: ["estimated-temperature"],
  };
}
