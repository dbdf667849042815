import { z } from "zod";
import { dewPoint, validAirTemperature, validRelativeHumidity } from "../air/dew-point.ts";
import { humidityRatio, standardPressure, validAirPressure, wetBulb } from "../air/moist-air.ts";
import { waterSaturationPressure } from "../air/saturation-pressure.ts";
import { DomainError } from "../domain-error.ts";
import { celsiusFromKelvin, type Kelvin, pascal } from "../units.ts";
import { kelvinOf, outsideShop } from "./air-input.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";

const coldest = celsiusFromKelvin(validAirTemperature.min);
const warmest = celsiusFromKelvin(validAirTemperature.max);

/** The wet bulb where it is above freezing; the equation says nothing of an iced one. */
function wetBulbC(air: Kelvin, humidity: number, pressure: number): number | null {
  try {
    return celsiusFromKelvin(wetBulb(air, humidity, pascal(pressure)));
  } catch (error) {
    if (error instanceof DomainError) return null;
    throw error;
  }
}

const frost: Flag = {
  code: "frost-point",
  field: "dewPointC",
  message: "Below freezing, this is where frost would form.",
};

export const dewPointCalculation = defineCalculation({
  name: "dew-point",
  purpose: "The dew point of the air, and how far a surface is from drawing water out of it",
  input: z.strictObject({
    temperatureC: z.number().min(coldest).max(warmest).describe("of the air, °C"),
    relativeHumidity: z
      .number()
      .min(validRelativeHumidity.min)
      .max(validRelativeHumidity.max)
      .describe("of the air, 0 to 1"),
    surfaceC: z
      .number()
      .min(coldest)
      .max(warmest)
      .optional()
      .describe("of the wood, °C; as the air unless told"),
    pressurePa: z
      .number()
      .min(validAirPressure.min)
      .max(validAirPressure.max)
      .default(standardPressure)
      .describe("of the air, Pa"),
  }),
  output: z.object({
    dewPointC: z.number().describe("°C"),
    marginC: z.number().describe("the surface less the dew point, K; below zero water condenses on it"),
    wetBulbC: z.number().nullable().describe("°C; null where it would freeze"),
    vapourPressurePa: z.number().describe("of the water in the air, Pa"),
    saturationPressurePa: z.number().describe("of water at the air's temperature, Pa"),
    humidityRatio: z.number().describe("kg of water to a kg of dry air"),
    flags: z.array(flag),
  }),
  run: ({ temperatureC, relativeHumidity, surfaceC, pressurePa }) => {
    const air = kelvinOf(temperatureC);
    const dew = celsiusFromKelvin(dewPoint(air, relativeHumidity));
    const saturated = waterSaturationPressure(air);
    const vapour = pascal(relativeHumidity * saturated);
    return {
      dewPointC: dew,
      marginC: (surfaceC ?? temperatureC) - dew,
      wetBulbC: wetBulbC(air, relativeHumidity, pressurePa),
      vapourPressurePa: vapour,
      saturationPressurePa: saturated,
      humidityRatio: humidityRatio(vapour, pascal(pressurePa)),
      flags: [
        ...(dew < 0 ? [frost] : []),
        ...outsideShop("temperatureC", temperatureC),
        ...(surfaceC === undefined ? [] : outsideShop("surfaceC", surfaceC)),
      ],
    };
  },
  sources: [
    "ASHRAE Handbook—Fundamentals (2017), ch. 1: saturation pressure (eqs. 5, 6), humidity ratio (eq. 20), wet bulb (eq. 33)",
  ],
  example: {
    input: { temperatureC: 20, relativeHumidity: 0.5, surfaceC: 12 },
    output: { dewPointC: 9.27, marginC: 2.73, wetBulbC: 13.8 },
  },
});
