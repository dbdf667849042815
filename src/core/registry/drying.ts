import { z } from "zod";
import { type Blush, blushOf, blushWords } from "../evaporation/blush.ts";
import { changes, type Help, whatWouldHelp } from "../evaporation/blush-help.ts";
import { type DryingRun, type DryingSetup, dryFilm } from "../evaporation/drying.ts";
import { celsiusFromKelvin, type Kelvin, kelvin } from "../units.ts";
import { defineCalculation } from "./calculation.ts";
import { flagsOfDrying } from "./drying-flags.ts";
import { dryingInput, setupFromInput } from "./drying-input.ts";
import { flag } from "./flag.ts";

const output = z.object({
  series: z
    .array(
      z.object({
        s: z.number().describe("since it was put on, s"),
        surfaceC: z.number().describe("of the film, °C"),
        massGM2: z.record(z.string(), z.number()).describe("of each liquid in the film, g/m²"),
      }),
    )
    .describe("at the steps that the integration took"),
  touchDryMin: z.number().nullable().describe("to a light touch, minutes; null where it does not come to it"),
  recoatMin: z.number().nullable().describe("firm enough for the next coat, minutes"),
  goneMin: z.number().nullable().describe("solvent alone: until a thousandth is left, minutes"),
  dryUm: z.number().describe("resin of the coat and of what it melts, µm"),
  lowestSurfaceC: z.number().describe("until it is touch-dry, °C"),
  dewPointC: z.number().nullable().describe("of the air, °C; null below 1 % relative humidity"),
  dewMarginC: z.number().nullable().describe("lowest surface less dew point, K"),
  waterShareAtSet: z
    .number()
    .nullable()
    .describe("water in what is still liquid when it turns touch-dry, by mass"),
  blush: z.enum(blushWords).nullable().describe("whether it may turn white; null for solvent alone"),
  blushMarginC: z.number().nullable().describe("K to spare; below zero, K that it falls short"),
  wouldHelp: z
    .array(
      z.object({
        change: z.enum(changes),
        woodC: z.number().optional(),
        relativeHumidity: z.number().optional(),
        wetUm: z.number().optional(),
        nButanolMassShare: z.number().optional(),
        blush: z.enum(blushWords),
        blushMarginC: z.number().nullable(),
      }),
    )
    .nullable()
    .describe(
      "the least of each that is enough by itself, or all that a shop can do where that only helps; null when not asked for",
    ),
  balance: z
    .object({ mass: z.number(), heat: z.number() })
    .describe("what the run leaves unaccounted for, as a part of the whole"),
  flags: z.array(flag),
});

const minutes = (seconds: number | null | undefined): number | null =>
  seconds == null ? null : seconds / 60;

function seriesOf({ equations, run, components }: DryingRun) {
  return run.states.map(({ seconds, y }) => {
    const masses = equations.masses(y);
    return {
      s: seconds,
      surfaceC: celsiusFromKelvin(kelvin(equations.temperature(y))),
      massGM2: Object.fromEntries(components.map((c, i) => [c, (masses[i] ?? 0) * 1e3])),
    };
  });
}

const fieldOf: Readonly<Record<Help["change"], (value: number) => object>> = {
  "warmer wood": (k) => ({ woodC: celsiusFromKelvin(k as Kelvin) }), // the change's own unit
  "drier air": (relativeHumidity) => ({ relativeHumidity }),
  "thinner coat": (m) => ({ wetUm: m * 1e6 }),
  "slower alcohol": (nButanolMassShare) => ({ nButanolMassShare }),
};

const helpRow = ({ change, value, blush }: Help) => ({
  change,
  ...fieldOf[change](value),
  blush: blush.word,
  blushMarginC: blush.margin,
});

const celsiusOrNull = (t: Kelvin | null): number | null => (t === null ? null : celsiusFromKelvin(t));

/** The whole answer for a coat: what pages draw and say of it. It follows the film: for a worker. */
export function dryingAnswer(setup: DryingSetup, help: boolean, threshold = 0): z.output<typeof output> {
  const run = dryFilm(setup);
  const judged: Blush | undefined = blushOf(run, threshold);
  const helps = help && judged !== undefined ? whatWouldHelp(setup, judged, threshold).map(helpRow) : null;
  return {
    series: seriesOf(run),
    touchDryMin: minutes(run.touchDry),
    recoatMin: minutes(run.recoat),
    goneMin: minutes(run.run.events.get("gone")?.seconds),
    dryUm: run.equations.surface.film.resinVolume * 1e6,
    lowestSurfaceC: celsiusFromKelvin(run.lowestSurface),
    dewPointC: celsiusOrNull(run.dewPoint),
    dewMarginC: run.dewPoint === null ? null : run.lowestSurface - run.dewPoint,
    waterShareAtSet: run.waterShareAtSet,
    blush: judged?.word ?? null,
    blushMarginC: judged?.margin ?? null,
    wouldHelp: helps,
    balance: { mass: run.massBalance, heat: run.heatBalance },
    flags: flagsOfDrying(setup, run),
  };
}

export const drying = defineCalculation({
  name: "drying",
  purpose:
    "How a coat dries in a shop's air: what is left of it, how cold it gets, when it is dry, whether it turns white",
  input: dryingInput,
  output,
  run: (given) => dryingAnswer(setupFromInput(given), given.whatWouldHelp, given.whitensBelowC),
  sources: [
    "Activity coefficients: modified UNIFAC (Dortmund), Ind. Eng. Chem. Res. 32 (1993) 178; original UNIFAC with ketones and esters",
    "Vapour pressures: Perry's Chemical Engineers' Handbook, table 2-8; water: ASHRAE Handbook—Fundamentals (2017), ch. 1",
    "Heat and mass transfer: VDI Heat Atlas, G4; Incropera, eq. 9.32; Chilton and Colburn, Ind. Eng. Chem. 26 (1934) 1183",
    "Integration: RODAS, Hairer and Wanner, Solving Ordinary Differential Equations II, section VI.4",
    "Hold of the resin, touch-dry, wait for a coat, blush: fitted to practice",
  ],
  example: {
    input: {
      film: { wetUm: 125, cutLbPerGal: 1, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
      air: { temperatureC: 20, relativeHumidity: 0.5, speedMS: 0.1 },
      wood: { temperatureC: 20, thicknessMm: 20 },
      radiation: true,
    },
    output: { touchDryMin: 16.2, dewPointC: 9.27, blush: "unlikely" },
  },
});
