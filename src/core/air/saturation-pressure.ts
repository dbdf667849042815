import { inRange } from "../domain-error.ts";
import { type Kelvin, kelvin, type Pascal, pascal } from "../units.ts";

/** The curve over ice is given down to −100 °C; over water up to 200 °C. */
export const validTemperature = { min: kelvin(173.15), max: kelvin(473.15) } as const;

const icePoint = 273.15;

const overWater = (t: number): number =>
  -5.8002206e3 / t +
  1.3914993 -
  4.8640239e-2 * t +
  4.1764768e-5 * t ** 2 -
  1.4452093e-8 * t ** 3 +
  6.5459673 * Math.log(t);

const overIce = (t: number): number =>
  -5.6745359e3 / t +
  6.3925247 -
  9.677843e-3 * t +
  6.2215701e-7 * t ** 2 +
  2.0747825e-9 * t ** 3 -
  9.484024e-13 * t ** 4 +
  4.1635019 * Math.log(t);

/**
 * Saturation vapour pressure of water: over ice below 0 °C, over liquid water from there up.
 *
 *     ln p = c1/T + c2 + c3·T + c4·T² + c5·T³ (+ c6·T⁴) + c7·ln T
 *
 * @param temperature  air temperature [K], scalar
 * @returns            saturation pressure [Pa], scalar
 * @throws DomainError outside `validTemperature`, and for NaN
 *
 * Valid:    173.15–473.15 K
 * Accuracy: within 300 ppm or 0.01 Pa of the source's table 3, −60 to 100 °C
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eqs. 5 and 6 (Hyland and Wexler)
 * @example
 * waterSaturationPressure(kelvinFromCelsius(celsius(25))) // => 3169.2
 */
export function waterSaturationPressure(temperature: Kelvin): Pascal {
  const t = inRange("temperature", temperature, validTemperature);
  return pascal(waterSaturationCurve(t));
}

/**
 * The curve of `waterSaturationPressure` for the inside of a loop: the temperature is not checked.
 *
 * @param temperature  [K], scalar
 * @returns            [Pa], scalar
 *
 * Valid:    173.15–473.15 K
 * Accuracy: as `waterSaturationPressure`
 * Source:   as `waterSaturationPressure`
 * @example
 * waterSaturationCurve(298.15) // => 3169.2
 */
export const waterSaturationCurve = (temperature: number): number =>
  Math.exp(temperature < icePoint ? overIce(temperature) : overWater(temperature));
