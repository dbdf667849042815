import { z } from "zod";
import { standardPressure } from "../air/moist-air.ts";
import { validSpeed } from "../evaporation/air-side.ts";
import { type DryingSetup, validThickness, validWoodThickness } from "../evaporation/drying.ts";
import { validWoodDensity } from "../evaporation/wood-slab.ts";
import { usualPartialDensity, validPartialDensity } from "../solution/resin.ts";
import { cutFromPoundsPerUsGallon, kilogramPerCubicMetre, metre } from "../units.ts";
import { airTemperatureC, kelvinOf, relativeHumidity, surfaceTemperatureC } from "./air-input.ts";
import { solvent } from "./solvent.ts";
import { volatileFromInput } from "./volatile-input.ts";

const film = z.strictObject({
  wetUm: z
    .number()
    .min(validThickness.min * 1e6)
    .max(validThickness.max * 1e6)
    .describe("as it is put on, µm"),
  cutLbPerGal: z.number().min(0).max(40).describe("of the liquid; 0 for solvent alone"),
  solvent,
  partialDensityKgM3: z
    .number()
    .min(validPartialDensity.min)
    .max(validPartialDensity.max)
    .default(usualPartialDensity)
    .describe("of the resin once dissolved"),
  temperatureC: surfaceTemperatureC.optional().describe("of the liquid, °C; as the wood unless told"),
  beneathUm: z
    .number()
    .min(0)
    .max(1000)
    .default(0)
    .describe("dry film that it goes on, µm; the coat melts some of it"),
});

const air = z.strictObject({
  temperatureC: airTemperatureC,
  relativeHumidity,
  speedMS: z
    .number()
    .min(validSpeed.min)
    .max(validSpeed.max)
    .default(0.1)
    .describe("along the surface, m/s: 0.1 in a closed room, 1 by a fan"),
});

const wood = z.strictObject({
  temperatureC: surfaceTemperatureC.describe("°C"),
  thicknessMm: z
    .number()
    .min(validWoodThickness.min * 1e3)
    .max(validWoodThickness.max * 1e3)
    .default(20),
  densityKgM3: z.number().min(validWoodDensity.min).max(validWoodDensity.max).default(600),
});

export const dryingInput = z.strictObject({
  film,
  air,
  wood: wood.nullable().describe("null: on nothing that holds heat"),
  radiation: z.boolean().default(true).describe("whether walls as warm as the air warm the film"),
  lengthM: z.number().min(0.05).max(3).default(0.3).describe("of the surface along the draught"),
  hours: z.number().min(0.01).max(72).default(12).describe("how long it is followed"),
  whitensBelowC: z
    .number()
    .min(-20)
    .max(20)
    .default(0)
    .describe("margin below which one's own coats turn white, K; 0 is common practice"),
  whatWouldHelp: z
    .boolean()
    .default(false)
    .describe("whether to work out what would keep it from turning white"),
});
export type DryingInput = z.output<typeof dryingInput>;

export function setupFromInput(given: DryingInput): DryingSetup {
  const { film: wet, air: room } = given;
  const woodC = given.wood?.temperatureC ?? room.temperatureC;
  return {
    applied: {
      composition: volatileFromInput(wet.solvent, "film.solvent"),
      thickness: metre(wet.wetUm / 1e6),
      cut: cutFromPoundsPerUsGallon(wet.cutLbPerGal),
      partialDensity: kilogramPerCubicMetre(wet.partialDensityKgM3),
      beneath: metre(wet.beneathUm / 1e6),
    },
    liquidTemperature: kelvinOf(wet.temperatureC ?? woodC),
    air: {
      temperature: kelvinOf(room.temperatureC),
      relativeHumidity: room.relativeHumidity,
      pressure: standardPressure,
      speed: room.speedMS,
    },
    length: metre(given.lengthM),
    wood:
      given.wood === null
        ? null
        : {
            temperature: kelvinOf(given.wood.temperatureC),
            thickness: metre(given.wood.thicknessMm / 1e3),
            density: kilogramPerCubicMetre(given.wood.densityKgM3),
          },
    radiation: given.radiation,
    seconds: given.hours * 3600,
  };
}
