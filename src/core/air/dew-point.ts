import { inRange } from "../domain-error.ts";
import { type Kelvin, kelvin } from "../units.ts";
import { validTemperature, waterSaturationPressure } from "./saturation-pressure.ts";

/** Air drier than this is found in no shop, and its dew point may lie below the pressure formula's range. */
export const validRelativeHumidity = { min: 0.01, max: 1 } as const;
export const validAirTemperature = { min: kelvin(243.15), max: kelvin(333.15) } as const;

/**
 * Dew point: the temperature at which air of this moisture is saturated; below 0 °C the frost point.
 *
 *     p(Td) = φ·p(T)
 *
 * Found by halving, not by a published regression, which would be less exact over a narrower range.
 *
 * @param temperature       air temperature [K], scalar
 * @param relativeHumidity  φ, a fraction of saturation, scalar
 * @returns                 dew point [K], scalar
 * @throws DomainError outside `validAirTemperature` or `validRelativeHumidity`, and for NaN
 *
 * Valid:    243.15–333.15 K, 0.01–1
 * Accuracy: 1e-6 K in the inversion; 0.05 K against computed check values, 18–30 °C
 * Source:   as `waterSaturationPressure`; the definition of the dew point
 * @example
 * celsiusFromKelvin(dewPoint(kelvinFromCelsius(celsius(20)), 0.5)) // => 9.27
 */
export function dewPoint(temperature: Kelvin, relativeHumidity: number): Kelvin {
  const air = inRange("temperature", temperature, validAirTemperature);
  const humidity = inRange("relativeHumidity", relativeHumidity, validRelativeHumidity);
  const pressure = humidity * waterSaturationPressure(air);
  let [low, high]: [number, number] = [validTemperature.min, air];
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (waterSaturationPressure(kelvin(middle)) < pressure) low = middle;
    else high = middle;
  }
  return kelvin(humidity === 1 ? air : (low + high) / 2);
}
