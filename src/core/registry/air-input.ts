import { z } from "zod";
import { validShopTemperature } from "../evaporation/drying.ts";
import { celsius, type Kelvin, kelvinFromCelsius } from "../units.ts";

/** A shop's air, between frost and heat in which nobody works. */
export const airTemperatureC = z
  .number()
  .min(validShopTemperature.min)
  .max(validShopTemperature.max)
  .describe("of the air, °C");
export const relativeHumidity = z.number().min(0).max(1).describe("of the air, 0 to 1");
export const surfaceTemperatureC = z.number().min(validShopTemperature.min).max(validShopTemperature.max);

export const kelvinOf = (x: number): Kelvin => kelvinFromCelsius(celsius(x));
