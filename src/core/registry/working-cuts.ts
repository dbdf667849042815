import { z } from "zod";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { massOfSolution, type Solution, volumeOfSolution } from "../solution/solution.ts";
import { thinTo } from "../solution/thin.ts";
import {
  cutFromPoundsPerUsGallon,
  gramsFromKilogram,
  type Kelvin,
  kilogram,
  millilitresFromCubicMetre,
} from "../units.ts";
import { amountMl, cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { jar, jarFromInput } from "./jar-input.ts";
import { solventFromInput, temperatureFromInput } from "./solution-input.ts";
import { solvent } from "./solvent.ts";

const wanted = z.strictObject({ toCutLbPerGal: cutLbPerGal, resultMl: amountMl });

/** One working cut: how much of the stock and how much solvent, since amounts scale. */
function portion(stock: Solution, want: z.output<typeof wanted>, added: Composition, temperature: Kelvin) {
  const target = cutFromPoundsPerUsGallon(want.toCutLbPerGal, "toCutLbPerGal");
  const whole = thinTo(stock, target, added);
  const share = want.resultMl / millilitresFromCubicMetre(volumeOfSolution(whole.result, temperature));
  const solventMass = kilogram(whole.added * share);
  return {
    share,
    toCutLbPerGal: want.toCutLbPerGal,
    resultMl: want.resultMl,
    stockMl: millilitresFromCubicMetre(volumeOfSolution(stock, temperature)) * share,
    stockG: gramsFromKilogram(massOfSolution(stock)) * share,
    addMl: (solventMass / densityOfSolvent(added, temperature).value) * 1e6,
    addG: gramsFromKilogram(solventMass),
  };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, x) => total + x, 0);

export const workingCuts = defineCalculation({
  name: "working-cuts",
  purpose: "Several working cuts from one stock in one plan, and whether the stock suffices",
  input: z.strictObject({
    stock: jar,
    cuts: z.array(wanted).min(1).max(50),
    with: solvent,
    temperatureC: z.number().optional(),
  }),
  output: z.object({
    cuts: z.array(
      z.object({
        toCutLbPerGal: z.number(),
        resultMl: z.number(),
        stockMl: z.number(),
        stockG: z.number(),
        addMl: z.number(),
        addG: z.number(),
      }),
    ),
    addMl: z.number(),
    addG: z.number(),
    stockNeededMl: z.number(),
    suffices: z.boolean(),
    /** Of the stock; below none, what is missing. */
    stockLeftMl: z.number(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const temperature = temperatureFromInput(given.temperatureC);
    const stock = jarFromInput(given.stock, "stock", temperature);
    const added = solventFromInput(given.with, "with");
    const portions = given.cuts.map((want) => portion(stock, want, added, temperature));
    const used = sum(portions.map((p) => p.share));
    const stockMl = millilitresFromCubicMetre(volumeOfSolution(stock, temperature));
    return {
      cuts: portions.map(({ share: _, ...rest }) => rest),
      addMl: sum(portions.map((p) => p.addMl)),
      addG: sum(portions.map((p) => p.addG)),
      stockNeededMl: used * stockMl,
      suffices: used <= 1 + 1e-9,
      stockLeftMl: (1 - used) * stockMl,
      flags: flagsAbout(densityOfSolvent(added, temperature).flags, "with"),
    };
  },
  sources: ["Conservation of mass", "OIML R 22 (1975) for ethanol with water"],
  example: {
    input: {
      stock: { solutionMl: 1000, cutLbPerGal: 3, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
      cuts: [
        { toCutLbPerGal: 1, resultMl: 1000 },
        { toCutLbPerGal: 1.5, resultMl: 800 },
      ],
      with: { alcohol: "ethanol", volumeFraction: 0.95 },
    },
    output: { suffices: true },
  },
});
