import { DomainError, inRange } from "../domain-error.ts";
import { findRoot } from "../solution/find-root.ts";
import { celsiusFromKelvin, type Kelvin, kelvin, type Pascal, pascal } from "../units.ts";
import { waterSaturationPressure } from "./saturation-pressure.ts";

/** Molar mass of water over that of dry air. */
export const waterToAir = 0.621945;
/** Specific gas constant of dry air, J/(kg·K). */
const gasConstantOfAir = 287.042;

export const validAltitude = { min: -5000, max: 11_000 } as const;
export const validAirPressure = { min: pascal(50_000), max: pascal(120_000) } as const;
export const standardPressure = pascal(101_325);

/**
 * Pressure of the standard atmosphere at an altitude.
 *
 *     p = 101325·(1 − 2.25577e-5·Z)^5.2559
 *
 * @param altitude  Z above sea level [m], scalar
 * @returns         pressure [Pa], scalar
 * @throws DomainError outside `validAltitude`, and for NaN
 *
 * Valid:    −5000–11000 m
 * Accuracy: the weather moves it by 3 %
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 3
 * @example
 * standardAtmosphere(500) // => 95461
 */
export function standardAtmosphere(altitude: number): Pascal {
  const z = inRange("altitudeM", altitude, validAltitude);
  return pascal(101_325 * (1 - 2.25577e-5 * z) ** 5.2559);
}

/**
 * Humidity ratio: mass of water vapour to a mass of dry air.
 *
 *     W = 0.621945·pw/(p − pw)
 *
 * @param vapour    partial pressure of water pw [Pa], scalar
 * @param pressure  of the air p [Pa], scalar
 * @returns         [kg/kg dry air], scalar
 * @throws DomainError when the vapour alone would be more than the whole
 *
 * Valid:    0 ≤ pw < p
 * Accuracy: 0.5 % of saturated air, which is not quite an ideal gas
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 20
 * @example
 * humidityRatio(pascal(3169.2), pascal(101325)) // => 0.02008
 */
export function humidityRatio(vapour: Pascal, pressure: Pascal): number {
  if (!(vapour < pressure))
    throw new DomainError({ code: "out-of-range", field: "vapourPressurePa", value: vapour });
  return (waterToAir * vapour) / (pressure - vapour);
}

/**
 * The partial pressure of water in air of a humidity ratio: the inverse of `humidityRatio`.
 *
 *     pw = p·W/(0.621945 + W)
 *
 * @param ratio     W [kg/kg dry air], scalar
 * @param pressure  of the air p [Pa], scalar
 * @returns         pw [Pa], scalar
 *
 * Valid:    W ≥ 0
 * Accuracy: as `humidityRatio`
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 34
 * @example
 * vapourPressureFromHumidityRatio(0.0065, pascal(101325)) // => 1048.
 */
export const vapourPressureFromHumidityRatio = (ratio: number, pressure: Pascal): Pascal =>
  pascal((pressure * ratio) / (waterToAir + ratio));

/**
 * Humidity ratio from a dry and a wet bulb above freezing.
 *
 *     W = [(2501 − 2.326·t*)·Ws* − 1.006·(t − t*)] / (2501 + 1.86·t − 4.186·t*)
 *
 * @param dryBulb   t [K], scalar
 * @param wetBulb   t* [K], scalar, at most t
 * @param pressure  [Pa], scalar
 * @returns         W [kg/kg dry air], scalar
 * @throws DomainError for a wet bulb above the dry bulb, below freezing, or lower than dry air would have it
 *
 * Valid:    wet bulb 0 °C and above
 * Accuracy: as the two readings
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 33
 * @example
 * humidityRatioFromWetBulb(kelvin(313.15), kelvin(293.15), pascal(101325)) // => 0.0064
 */
export function humidityRatioFromWetBulb(dryBulb: Kelvin, wetBulb: Kelvin, pressure: Pascal): number {
  const [dry, wet] = [celsiusFromKelvin(dryBulb), celsiusFromKelvin(wetBulb)];
  inRange("wetBulbC", wet, { min: 0, max: dry });
  const ratio = ratioAtWetBulb(dry, wet, humidityRatio(waterSaturationPressure(wetBulb), pressure));
  if (ratio < 0)
    throw new DomainError({
      code: "contradiction",
      field: "wetBulbC",
      value: wet,
      because: "Even air without any water would not cool it so far.",
    });
  return ratio;
}

const ratioAtWetBulb = (dry: number, wet: number, saturated: number): number =>
  ((2501 - 2.326 * wet) * saturated - 1.006 * (dry - wet)) / (2501 + 1.86 * dry - 4.186 * wet);

/**
 * The wet bulb of air: where a wetted thermometer in a draught settles.
 *
 * Found by a bracketed root of `humidityRatioFromWetBulb`, whose equation it inverts.
 *
 * @param dryBulb           [K], scalar
 * @param relativeHumidity  0–1, scalar
 * @param pressure          [Pa], scalar
 * @returns                 [K], scalar
 * @throws DomainError outside 0–1, and where the bulb would freeze
 *
 * Valid:    wet bulb 0 °C and above
 * Accuracy: the root to 1e-9 K; as the equation
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 33
 * @example
 * celsiusFromKelvin(wetBulb(kelvin(298.15), 0.5, pascal(101325))) // => 17.9
 */
export function wetBulb(dryBulb: Kelvin, relativeHumidity: number, pressure: Pascal): Kelvin {
  const humidity = inRange("relativeHumidity", relativeHumidity, { min: 0, max: 1 });
  if (humidity === 1) return dryBulb;
  const dry = celsiusFromKelvin(dryBulb);
  const ratio = humidityRatio(pascal(humidity * waterSaturationPressure(dryBulb)), pressure);
  const excess = (t: number): number =>
    ratioAtWetBulb(dry, t - 273.15, humidityRatio(waterSaturationPressure(kelvin(t)), pressure)) - ratio;
  if (!(dry > 0 && excess(273.15) <= 0))
    throw new DomainError({
      code: "out-of-range",
      field: "relativeHumidity",
      value: relativeHumidity,
      because: "A wet bulb would freeze in this air.",
    });
  return kelvin(findRoot(excess, 273.15, dryBulb));
}

/**
 * Enthalpy of moist air, zero for dry air at 0 °C.
 *
 *     h = 1.006·t + W·(2501 + 1.86·t)
 *
 * @param dryBulb  t [K], scalar
 * @param ratio    W [kg/kg dry air], scalar
 * @returns        [kJ/kg dry air], scalar
 *
 * Valid:    −50–110 °C
 * Accuracy: 0.1 kJ/kg
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 30
 * @example
 * moistAirEnthalpy(kelvin(313.15), 0.0065) // => 56.98
 */
export function moistAirEnthalpy(dryBulb: Kelvin, ratio: number): number {
  const t = celsiusFromKelvin(dryBulb);
  return 1.006 * t + ratio * (2501 + 1.86 * t);
}

/**
 * Volume of moist air to a mass of dry air.
 *
 *     v = R·T·(1 + 1.607858·W)/p
 *
 * @param dryBulb   T [K], scalar
 * @param ratio     W [kg/kg dry air], scalar
 * @param pressure  p [Pa], scalar
 * @returns         [m³/kg dry air], scalar
 *
 * Valid:    as an ideal gas
 * Accuracy: 0.2 %
 * Source:   ASHRAE Handbook—Fundamentals (2017), ch. 1, eq. 26
 * @example
 * moistAirVolume(kelvin(313.15), 0.0065, pascal(101325)) // => 0.8964
 */
export const moistAirVolume = (dryBulb: Kelvin, ratio: number, pressure: Pascal): number =>
  (gasConstantOfAir * dryBulb * (1 + 1.607858 * ratio)) / pressure;
