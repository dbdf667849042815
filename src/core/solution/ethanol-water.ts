import { inRange } from "../domain-error.ts";
import {
  celsius,
  celsiusFromKelvin,
  type Kelvin,
  type KilogramPerCubicMetre,
  kilogramPerCubicMetre,
  type MassFraction,
  massFraction,
} from "../units.ts";
import { oimlR22 } from "./oiml-r22-coefficients.ts";

/** In °C, as the source states it. */
export const validEthanolWaterTemperature = { min: celsius(-20), max: celsius(40) } as const;

/** Σ coefficients[k] x^k (Horner). */
function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + (coefficients[k] as number);
  return sum;
}

/**
 * Density of ethanol with water.
 *
 *     ρ(p, t) = Σ a[k] p^k + Σ b[k] (t − 20)^k + Σ Σ c[i][k] p^k (t − 20)^i
 *
 * Below the freezing curve the formula still gives a number, for a liquid that would be part ice; `densityOfSolvent`
 * flags it.
 *
 * @param ethanol      mass fraction of ethanol [kg/kg], scalar
 * @param temperature  [K], scalar
 * @returns            density in vacuum [kg/m³], scalar
 * @throws DomainError outside `validEthanolWaterTemperature` (named in °C), and for NaN
 *
 * Valid:    −20–40 °C, mass fraction 0–1 above the freezing curve
 * Accuracy: 0.005 kg/m³ against the source's tables
 * Source:   OIML R 22 (1975), general formula
 * @example
 * ethanolWaterDensity(massFraction(0.5), kelvinFromCelsius(celsius(20))) // => 913.77
 */
export function ethanolWaterDensity(ethanol: MassFraction, temperature: Kelvin): KilogramPerCubicMetre {
  const p = massFraction(ethanol);
  const d = inRange("temperatureC", celsiusFromKelvin(temperature), validEthanolWaterTemperature) - 20;
  if (d === 0) return kilogramPerCubicMetre(polynomial(oimlR22.a, p)); // every other term has t − 20 in it
  let crossed = 0;
  for (let i = oimlR22.c.length - 1; i >= 0; i--)
    crossed = crossed * d + p * polynomial(oimlR22.c[i] as readonly number[], p);
  return kilogramPerCubicMetre(polynomial(oimlR22.a, p) + d * (polynomial(oimlR22.b, d) + crossed));
}
