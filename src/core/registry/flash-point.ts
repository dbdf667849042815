import { z } from "zod";
import { activityModel } from "../evaporation/activity.ts";
import { molarLiquid } from "../evaporation/molar-liquid.ts";
import { vapourAbove } from "../evaporation/vapour-liquid.ts";
import { flashPoint, validFlashPoint } from "../safety/flash-point.ts";
import { hazardsOf } from "../safety/hazards.ts";
import { celsius, celsiusFromKelvin, kelvinFromCelsius } from "../units.ts";
import { defineCalculation } from "./calculation.ts";
import { flag } from "./flag.ts";
import { solvent } from "./solvent.ts";
import { flagsOfVapour } from "./vapour-flags.ts";
import { notAClearance, volatileFromInput } from "./volatile-input.ts";

const room = kelvinFromCelsius(celsius(20));

export const flashPointCalculation = defineCalculation({
  name: "flash-point",
  purpose: "Where the vapour over a solvent first catches from a spark, estimated from its parts",
  input: z.strictObject({ solvent }),
  output: z.object({
    flashPointC: z.number().nullable().describe("°C, closed cup; null where there is none up to 100 °C"),
    components: z.array(
      z.object({
        component: z.string(),
        moleFraction: z.number().describe("in the liquid"),
        activityCoefficient: z.number().describe("at 20 °C"),
        flashPointC: z.number().nullable().describe("of it alone, the lower of two lists; null for water"),
        vapourShareAt20C: z.number().describe("of the vapour over the liquid at 20 °C"),
      }),
    ),
    statement: z.string(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const liquid = molarLiquid(volatileFromInput(given.solvent));
    const found = flashPoint(liquid);
    const model = activityModel(liquid.components);
    const gammas = new Float64Array(liquid.components.length);
    model.lnGamma(Float64Array.from(liquid.moleFractions), room, gammas);
    const { vapourFractions } = vapourAbove(liquid, room);
    return {
      flashPointC: found === undefined ? null : celsiusFromKelvin(found),
      components: liquid.components.map((component, i) => ({
        component,
        moleFraction: liquid.moleFractions[i] ?? 0,
        activityCoefficient: Math.exp(gammas[i] ?? 0),
        flashPointC: hazardsOf(component)?.flashPoint ?? null,
        vapourShareAt20C: vapourFractions[i] ?? 0,
      })),
      statement: notAClearance,
      flags: [
        ...flagsOfVapour(model.method, "solvent"),
        ...(found === undefined
          ? [
              {
                code: "no-flash-point",
                field: "flashPointC",
                message: `None was found from ${celsiusFromKelvin(validFlashPoint.min)} to ${celsiusFromKelvin(validFlashPoint.max)} °C.`,
              },
            ]
          : []),
      ],
    };
  },
  sources: [
    "H.-J. Liaw, Y.-Y. Chiu, J. Hazard. Mater. A101 (2003) 83, after Le Chatelier",
    "Activity coefficients: modified UNIFAC (Dortmund), Ind. Eng. Chem. Res. 32 (1993) 178",
    "Flash points of the parts: IEC 60079-20-1:2010 and NFPA 497 (2008), the lower of the two",
  ],
  example: {
    input: { solvent: { alcohol: "ethanol", volumeFraction: 0.5 } },
    output: { flashPointC: 25.0 },
  },
});
