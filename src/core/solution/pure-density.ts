import { inRange } from "../domain-error.ts";
import { celsius, celsiusFromKelvin, type Kelvin, massFraction } from "../units.ts";
import type { Component } from "./component.ts";
import { ethanolWaterDensity } from "./ethanol-water.ts";
import type { Estimate } from "./flag.ts";

/** In °C. Beyond it, two points of a density line say nothing. */
export const validTableTemperature = { min: celsius(-10), max: celsius(40) } as const;

interface Line {
  /** kg/m³ at 20 °C and at 25 °C: the expansion is the line through the two. */
  readonly at20C: number;
  readonly at25C: number;
  readonly standardUncertainty: number;
  readonly source: string;
}

const crc = "CRC Handbook of Chemistry and Physics, 102nd ed.";

/** Liquids without a formula of their own. */
export const pureDensities: Readonly<Record<Exclude<Component, "ethanol" | "water" | "unknown">, Line>> = {
  // 20 °C from the aqueous table, so that weak and strong mixtures meet; the same book's pure value is 791.4.
  methanol: { at20C: 791.7, at25C: 786.9, standardUncertainty: 0.5, source: `${crc}; slope from memory` },
  isopropanol: {
    at20C: 785.5,
    at25C: 780.9,
    standardUncertainty: 0.5,
    source: `J. Am. Chem. Soc. 43 (1921) 1005; 25 °C ${crc}`,
  },
  "n-propanol": { at20C: 803.4, at25C: 799.7, standardUncertainty: 0.5, source: crc },
  "n-butanol": { at20C: 809.5, at25C: 805.7, standardUncertainty: 0.5, source: `${crc}; 25 °C from memory` },
  isobutanol: { at20C: 801.8, at25C: 797.8, standardUncertainty: 1.5, source: "from memory" },
  acetone: { at20C: 790.1, at25C: 784.5, standardUncertainty: 1, source: `${crc}; slope Perry, DIPPR-105` },
  mek: { at20C: 805.0, at25C: 799.9, standardUncertainty: 1, source: `${crc}; 20 °C Perry, DIPPR-105` },
  mibk: { at20C: 801.0, at25C: 796.5, standardUncertainty: 1, source: `${crc}; slope Perry, DIPPR-105` },
  "ethyl-acetate": {
    at20C: 900.3,
    at25C: 894.5,
    standardUncertainty: 1,
    source: `${crc}; 25 °C from memory`,
  },
  "n-butyl-acetate": {
    at20C: 882.5,
    at25C: 876.4,
    standardUncertainty: 1,
    source: `${crc}; 25 °C from memory`,
  },
  "n-heptane": { at20C: 683.8, at25C: 679.5, standardUncertainty: 1, source: `${crc}; 20 °C from memory` },
};

/** Something in a data sheet that is not named: the liquids of the trade lie within about two of these uncertainties. */
const unknownLiquid: Line = { at20C: 810, at25C: 805, standardUncertainty: 50, source: "assumed" };

/**
 * Density of a pure liquid.
 *
 *     ethanol, water: OIML R 22 at p = 1 and p = 0
 *     others: ρ(t) = ρ20 + (ρ25 − ρ20)(t − 20)/5
 *
 * @param component    the liquid
 * @param temperature  [K], scalar
 * @returns            density [kg/m³] with its standard uncertainty, scalar; away from 20 °C the line adds
 *                     0.05 kg/m³ per K, and more than 5 K away it is flagged
 * @throws DomainError outside `validTableTemperature` (ethanol and water: −20–40 °C), and for NaN
 *
 * Valid:    −10–40 °C; ethanol and water −20–40 °C
 * Accuracy: as each row states, 0.5–1.5 kg/m³; `unknown` 50 kg/m³
 * Source:   as each row of `pureDensities`
 * @example
 * pureDensity("acetone", kelvinFromCelsius(celsius(20))).value // => 790.1
 */
export function pureDensity(component: Component, temperature: Kelvin): Estimate {
  if (component === "ethanol" || component === "water") {
    const value = ethanolWaterDensity(massFraction(component === "ethanol" ? 1 : 0), temperature);
    const frozen = component === "water" && celsiusFromKelvin(temperature) < 0;
    return { value, standardUncertainty: 0.01, flags: frozen ? ["below-freezing"] : [] };
  }
  const line = component === "unknown" ? unknownLiquid : pureDensities[component];
  const away = inRange("temperatureC", celsiusFromKelvin(temperature), validTableTemperature) - 20;
  return {
    value: line.at20C + ((line.at25C - line.at20C) / 5) * away,
    standardUncertainty: Math.hypot(line.standardUncertainty, 0.05 * away),
    flags: [
      ...(Math.abs(away) > 5 ? (["estimated-temperature"] as const) : []),
      ...(component === "unknown" ? (["unknown-component"] as const) : []),
    ],
  };
}
