import { celsiusFromKelvin, type Kelvin, type MassFraction } from "../units.ts";
import { type Knot, monotoneCubic } from "./monotone-cubic.ts";

/** Ethanol with water: [mass fraction of ethanol, freezing point in °C]. Source: Lange's Handbook of Chemistry, table 5.13. */
const freezingPoints: readonly Knot[] = [
  [0, 0],
  [0.025, -1],
  [0.048, -2],
  [0.068, -3],
  [0.113, -5],
  [0.138, -6.1],
  [0.164, -7.5],
  [0.175, -8.7],
  [0.188, -9.4],
  [0.203, -10.6],
  [0.221, -12.2],
  [0.242, -14],
  [0.267, -16],
  [0.299, -18.9],
  [0.338, -23.6],
];
const strongest = 0.338;
const freezingPoint = monotoneCubic(freezingPoints);

/**
 * Whether ice would form in ethanol with water, so that a density formula no longer speaks of one liquid.
 *
 * @param ethanol      mass fraction of ethanol [kg/kg], scalar
 * @param temperature  [K], scalar
 * @returns            true below the freezing curve; above 33.8 % by mass it lies under −23.6 °C, out of every range here
 *
 * Valid:    −20–40 °C
 * Accuracy: 0.5 K (the source gives tenths, and its steps scatter by that)
 * Source:   Lange's Handbook of Chemistry, table 5.13
 * @example
 * isBelowFreezing(massFraction(0.1), kelvinFromCelsius(celsius(-10))) // => true
 */
export const isBelowFreezing = (ethanol: MassFraction, temperature: Kelvin): boolean =>
  ethanol < strongest && celsiusFromKelvin(temperature) < freezingPoint(ethanol);
