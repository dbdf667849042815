import { z } from "zod";
import { celsius, type Kelvin, kelvinFromCelsius } from "../units.ts";

/** A shop's air, between frost and heat in which nobody works. */
export const airTemperatureC = z.number().min(0).max(50).describe("of the air, °C");
export const relativeHumidity = z.number().min(0).max(1).describe("of the air, 0 to 1");
export const surfaceTemperatureC = z.number().min(0).max(50);

export const kelvinOf = (x: number): Kelvin => kelvinFromCelsius(celsius(x));
