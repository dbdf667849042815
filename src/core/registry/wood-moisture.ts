import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import { celsius, metre } from "../units.ts";
import { equilibriumMoisture, validWoodTemperature } from "../wood/equilibrium-moisture.ts";
import { grains, movement } from "../wood/movement.ts";
import { type Shrinkage, shrinkageOf, woodSpecies } from "../wood/shrinkage.ts";
import { outsideShop } from "./air-input.ts";
import { defineCalculation } from "./calculation.ts";
import { type Flag, flag } from "./flag.ts";

const temperatureC = z
  .number()
  .min(validWoodTemperature.min)
  .max(validWoodTemperature.max)
  .describe("of the air, °C");
const relativeHumidity = z.number().min(0).max(1).describe("of the air, 0 to 1");

const panel = z.strictObject({
  species: z.enum(woodSpecies),
  widthMm: z.number().min(1).max(5000).describe("across the grain, in this air, mm"),
  grain: z.enum(grains).describe("tangential: a flatsawn board's width; radial: a quartersawn board's"),
});

const nearSaturation = (humidities: readonly number[]): Flag[] =>
  humidities.some((h) => h > 0.95)
    ? [
        {
          code: "near-saturation",
          field: "relativeHumidity",
          message: "Above 95 % the printed table ends, and the formula is a guide only.",
        },
      ]
    : [];

export const woodMoisture = defineCalculation({
  name: "wood-moisture",
  purpose:
    "Where wood settles in air of a temperature and humidity, and how a panel moves between two seasons",
  input: z.strictObject({
    temperatureC,
    relativeHumidity,
    otherSeason: z
      .strictObject({ temperatureC, relativeHumidity })
      .optional()
      .describe("another air, to compare with"),
    panel: panel.optional().describe("a panel whose movement between the two is wanted"),
  }),
  output: z.object({
    moisturePercent: z.number().describe("water to dry wood, percent by mass"),
    otherMoisturePercent: z.number().nullable().describe("the same in the other air"),
    panel: z
      .object({
        changeMm: z.number().describe("of the width, from this air to the other, mm"),
        widthMm: z.number().describe("in the other air, mm"),
        giveOrTakeMm: z.number().describe("standard uncertainty: boards differ, mm"),
        method: z.string(),
      })
      .nullable(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const here = equilibriumMoisture(celsius(given.temperatureC), given.relativeHumidity);
    const other = given.otherSeason;
    const there =
      other === undefined
        ? undefined
        : equilibriumMoisture(celsius(other.temperatureC), other.relativeHumidity);
    if (given.panel !== undefined && there === undefined)
      throw new DomainError({
        code: "missing",
        field: "otherSeason",
        value: undefined,
        because: "A panel moves between two airs.",
      });
    const moved =
      there === undefined || given.panel === undefined
        ? undefined
        : movement(
            metre(given.panel.widthMm / 1e3),
            here,
            there,
            shrinkageOf(given.panel.species) as Shrinkage, // the schema allows no other name
            given.panel.grain,
          );
    return {
      moisturePercent: 100 * here,
      otherMoisturePercent: there === undefined ? null : 100 * there,
      panel:
        moved === undefined
          ? null
          : {
              changeMm: moved.change * 1e3,
              widthMm: moved.width * 1e3,
              giveOrTakeMm: Math.abs(moved.change) * 1e3 * 0.15,
              method: moved.method,
            },
      flags: [
        ...nearSaturation([given.relativeHumidity, other?.relativeHumidity ?? 0]),
        ...outsideShop("temperatureC", given.temperatureC),
        ...(other === undefined ? [] : outsideShop("otherSeason.temperatureC", other.temperatureC)),
      ],
    };
  },
  sources: [
    "USDA Wood Handbook (FPL-GTR-282), ch. 4, eq. 4-5 (equilibrium moisture), ch. 13, eqs. 13-1, 13-2 (movement), tables 4-3, 4-4, 13-5",
  ],
  example: {
    input: {
      temperatureC: 21.1,
      relativeHumidity: 0.3,
      otherSeason: { temperatureC: 21.1, relativeHumidity: 0.6 },
      panel: { species: "cherry, black", widthMm: 300, grain: "tangential" },
    },
    output: { moisturePercent: 6.17, otherMoisturePercent: 10.97, panel: { changeMm: 3.57 } },
  },
});
