import { waterSaturationCurve } from "../air/saturation-pressure.ts";
import { inRange } from "../domain-error.ts";
import { findRoot } from "../solution/find-root.ts";
import { type Kelvin, kelvin, type Pascal, pascal } from "../units.ts";
import { propertiesOf, type Volatile } from "./volatiles.ts";

/** From a frosty shop to above the boiling point of the slowest liquid of the table. */
export const validVapourTemperature = { min: kelvin(240), max: kelvin(405) } as const;

/**
 * Saturation vapour pressure of a pure liquid.
 *
 *     ln p = c1 + c2/T + c3·ln T + c4·T^c5   (water as in the air's own formula, so that film and air agree)
 *
 * @param component    the liquid
 * @param temperature  [K], scalar
 * @returns            [Pa], scalar
 * @throws DomainError outside `validVapourTemperature`, and for NaN
 *
 * Valid:    240–405 K
 * Accuracy: 1–2 % at room temperature; isopropanol 3 % low at its boiling point, where `boilingPressure` is closer
 * Source:   Perry's Chemical Engineers' Handbook, table 2-8 (DIPPR 101); water as `waterSaturationPressure`
 * @example
 * vapourPressure("ethanol", kelvin(293.15)) // => 5898.7
 */
export function vapourPressure(component: Volatile, temperature: Kelvin): Pascal {
  const t = inRange("temperature", temperature, validVapourTemperature);
  return pascal(pressureCurve(component)(t));
}

/**
 * The curve of `vapourPressure` for the inside of a loop: looked up once, and the temperature is not checked.
 *
 * @param component  the liquid
 * @returns          a function from a temperature [K] to the pressure [Pa]
 *
 * Valid:    240–405 K
 * Accuracy: as `vapourPressure`
 * Source:   as `vapourPressure`
 * @example
 * pressureCurve("ethanol")(293.15) // => 5898.7
 */
export function pressureCurve(component: Volatile): (temperature: number) => number {
  if (component === "water") return waterSaturationCurve;
  const [c1, c2, c3, c4, c5] = propertiesOf(component).dippr;
  return (t) => Math.exp(c1 + c2 / t + c3 * Math.log(t) + c4 * t ** c5);
}

/**
 * Vapour pressure near the boiling point, by the equation that was fitted to it.
 *
 *     log10 p = a − b/(T + c)
 *     outside its range: the curve of `vapourPressure` times what makes the two meet at the end of the range
 *
 * @param component    the liquid
 * @param temperature  [K], scalar
 * @returns            [Pa], scalar
 * @throws DomainError outside `validVapourTemperature`, and for NaN
 *
 * Valid:    240–405 K
 * Accuracy: 0.5 K at the normal boiling point
 * Source:   Poling, Prausnitz, O'Connell, The Properties of Gases and Liquids, 5th ed., appendix A
 * @example
 * boilingPressure("isopropanol", kelvin(355.4)) // => 101255
 */
export function boilingPressure(component: Volatile, temperature: Kelvin): Pascal {
  const t = inRange("temperature", temperature, validVapourTemperature);
  const [a, b, c, min, max] = propertiesOf(component).antoine;
  const antoine = (at: number): number => 10 ** (a - b / (at + c));
  if (t >= min && t <= max) return pascal(antoine(t));
  const end = t < min ? min : max;
  const curve = pressureCurve(component);
  return pascal((curve(t) * antoine(end)) / curve(end));
}

/**
 * Boiling point of a pure liquid: where `boilingPressure` is the pressure of the air.
 *
 *     p(T) = pressure
 *
 * @param component  the liquid
 * @param pressure   [Pa], scalar
 * @returns          [K], scalar
 * @throws DomainError where that lies outside the range of the vapour pressures
 *
 * Valid:    as `boilingPressure`
 * Accuracy: 0.5 K at one atmosphere
 * Source:   as `boilingPressure`
 * @example
 * boilingPoint("ethanol", pascal(101325)) // => 351.4
 */
export function boilingPoint(component: Volatile, pressure: Pascal): Kelvin {
  const excess = (t: number): number => Math.log(boilingPressure(component, kelvin(t)) / pressure);
  return kelvin(findRoot(excess, validVapourTemperature.min, validVapourTemperature.max));
}

/**
 * Latent heat of evaporation.
 *
 *     Δh(T) = Δh25 + (Δhb − Δh25)·(T − 298.15)/(Tb − 298.15)
 *
 * The line through two printed values, carried on to the cold side.
 *
 * @param component    the liquid
 * @param temperature  [K], scalar
 * @returns            [J/mol], scalar
 * @throws DomainError outside `validVapourTemperature`, and for NaN
 *
 * Valid:    240–405 K
 * Accuracy: 1 % from 0 °C to the boiling point
 * Source:   CRC Handbook of Chemistry and Physics, 102nd ed., enthalpies of vaporization
 * @example
 * latentHeat("water", kelvin(298.15)) // => 43980
 */
export function latentHeat(component: Volatile, temperature: Kelvin): number {
  const t = inRange("temperature", temperature, validVapourTemperature);
  const { latentHeatAt25C: cool, latentHeatAtBoiling: hot, boilingPoint: tb } = propertiesOf(component);
  return cool + ((hot - cool) * (t - 298.15)) / (tb - 298.15);
}
