import { inRange } from "../domain-error.ts";
import { type Celsius, celsius, type MassFraction, massFraction } from "../units.ts";

export const validWoodTemperature = { min: celsius(-1.1), max: celsius(130) } as const;
export const validWoodHumidity = { min: 0, max: 1 } as const;

const polynomial = (c: readonly [number, number, number], t: number): number =>
  c[0] + c[1] * t + c[2] * t * t;

/**
 * Equilibrium moisture content: where wood of any species settles in air that stays as it is.
 *
 *     M = 18/W · [ K·h/(1 − K·h) + (K1·K·h + 2·K1·K2·K²·h²)/(1 + K1·K·h + K1·K2·K²·h²) ]
 *
 * with W, K, K1, K2 quadratic in the temperature in °C.
 *
 * @param temperature       [°C], scalar
 * @param relativeHumidity  h, 0–1, scalar
 * @returns                 mass of water to a mass of dry wood, scalar
 * @throws DomainError outside the ranges, and for NaN
 *
 * Valid:    −1.1–130 °C
 * Accuracy: of the formula 0.05 points to the printed table; of a piece of wood 1 point, by species and by the way it came
 * Source:   USDA Wood Handbook (FPL-GTR-282), ch. 4, eq. 4-5 (Hailwood and Horrobin)
 * @example
 * equilibriumMoisture(celsius(21.1), 0.6) // => 0.1097
 */
export function equilibriumMoisture(temperature: Celsius, relativeHumidity: number): MassFraction {
  const t = inRange("temperatureC", temperature, validWoodTemperature);
  const h = inRange("relativeHumidity", relativeHumidity, validWoodHumidity);
  const w = polynomial([349, 1.29, 0.0135], t);
  const kh = polynomial([0.805, 0.000736, -0.00000273], t) * h;
  const k1 = polynomial([6.27, -0.00938, -0.000303], t);
  const k2 = polynomial([1.91, 0.0407, -0.000293], t);
  const dissolved = kh / (1 - kh);
  const bound = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return massFraction((18 / w) * (dissolved + bound), "moisture");
}
