import { z } from "zod";
import { validShopTemperature } from "../evaporation/drying.ts";
import { celsius, type Kelvin, kelvinFromCelsius } from "../units.ts";
import type { Flag } from "./flag.ts";

/** A shop's air, between frost and heat in which nobody works. */
export const airTemperatureC = z
  .number()
  .min(validShopTemperature.min)
  .max(validShopTemperature.max)
  .describe("of the air, °C");
export const relativeHumidity = z.number().min(0).max(1).describe("of the air, 0 to 1");
export const surfaceTemperatureC = z.number().min(validShopTemperature.min).max(validShopTemperature.max);

export const kelvinOf = (x: number): Kelvin => kelvinFromCelsius(celsius(x));

/** For formulas whose source goes further than a shop does. */
export const outsideShop = (field: string, temperatureC: number): Flag[] =>
  temperatureC >= validShopTemperature.min && temperatureC <= validShopTemperature.max
    ? []
    : [
        {
          code: "outside-shop",
          field,
          message: `The formula still holds, but nobody works with finish outside ${validShopTemperature.min} to ${validShopTemperature.max} °C: look again at what was typed.`,
        },
      ];
