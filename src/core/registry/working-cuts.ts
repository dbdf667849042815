import { z } from "zod";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import type { Instruments } from "../solution/instruments.ts";
import { type Poured, solventAsPoured, uncertaintyOfPouring } from "../solution/pour-uncertainty.ts";
import { massOfSolution, type Solution, volumeOfSolution } from "../solution/solution.ts";
import { simpleRatio, thinTo } from "../solution/thin.ts";
import {
  cutFromPoundsPerUsGallon,
  gramsFromKilogram,
  type Kelvin,
  kilogram,
  millilitresFromCubicMetre,
  poundsPerUsGallonFromCut,
} from "../units.ts";
import { amountMl, cutLbPerGal } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { poundsPerUsGallon } from "./cut-names.ts";
import { flag, flagsAbout } from "./flag.ts";
import { jar, jarAsPoured, jarFromInput } from "./jar-input.ts";
import { instrumentsFromInput, solventFromInput, temperatureFromInput } from "./solution-input.ts";
import { instruments, solvent } from "./solvent.ts";

const wanted = z.strictObject({ toCutLbPerGal: cutLbPerGal, resultMl: amountMl });

/** What every portion is made from and measured with. */
interface Plan {
  readonly stock: Solution;
  readonly stockAsPoured: Poured;
  readonly added: Composition;
  readonly temperature: Kelvin;
  readonly told: Instruments;
}

/** How sure a portion is: its part of the stock and its solvent are each measured out. */
function sure({ stockAsPoured, added, temperature, told }: Plan, share: number, solventMl: number) {
  const poured = [
    { ...stockAsPoured, amount: stockAsPoured.amount * share },
    solventAsPoured(added, solventMl / 1e6, "jug"),
  ];
  const found = uncertaintyOfPouring(poured, temperature, told);
  return { cutStandardUncertainty: poundsPerUsGallon(found.standardUncertainty) };
}

/** One working cut: how much of the stock and how much solvent, since amounts scale. */
function portion(plan: Plan, want: z.output<typeof wanted>) {
  const { stock, added, temperature } = plan;
  const target = cutFromPoundsPerUsGallon(want.toCutLbPerGal, "toCutLbPerGal");
  const whole = thinTo(stock, target, added);
  const share = want.resultMl / millilitresFromCubicMetre(volumeOfSolution(whole.result, temperature));
  const solventMass = kilogram(whole.added * share);
  const addMl = (solventMass / densityOfSolvent(added, temperature).value) * 1e6;
  const simple = simpleRatio(stock, target, added, temperature);
  return {
    share,
    toCutLbPerGal: want.toCutLbPerGal,
    resultMl: want.resultMl,
    stockMl: millilitresFromCubicMetre(volumeOfSolution(stock, temperature)) * share,
    stockG: gramsFromKilogram(massOfSolution(stock)) * share,
    addMl,
    addG: gramsFromKilogram(solventMass),
    /** To the same part of the stock. */
    simpleRatioWouldGive: {
      addMl: millilitresFromCubicMetre(simple.addedVolume) * share,
      cutLbPerGal: poundsPerUsGallonFromCut(simple.cut),
    },
    ...sure(plan, share, addMl),
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
    instruments: instruments.optional(),
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
        simpleRatioWouldGive: z.object({ addMl: z.number(), cutLbPerGal: z.number() }),
        cutStandardUncertainty: z.number(),
      }),
    ),
    addMl: z.number(),
    addG: z.number(),
    stockNeededMl: z.number(),
    suffices: z.boolean(),
    /** Of the stock; below none, what is missing. */
    stockLeftMl: z.number(),
    instrumentsAssumed: z.boolean(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const temperature = temperatureFromInput(given.temperatureC);
    const stock = jarFromInput(given.stock, "stock", temperature);
    const added = solventFromInput(given.with, "with");
    const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
    const plan = { stock, stockAsPoured: jarAsPoured(given.stock, "stock"), added, temperature, told };
    const portions = given.cuts.map((want) => portion(plan, want));
    const used = sum(portions.map((p) => p.share));
    const stockMl = millilitresFromCubicMetre(volumeOfSolution(stock, temperature));
    return {
      cuts: portions.map(({ share: _, ...rest }) => rest),
      addMl: sum(portions.map((p) => p.addMl)),
      addG: sum(portions.map((p) => p.addG)),
      stockNeededMl: used * stockMl,
      suffices: used <= 1 + 1e-9,
      stockLeftMl: (1 - used) * stockMl,
      instrumentsAssumed: assumed,
      flags: flagsAbout(densityOfSolvent(added, temperature).flags, "with"),
    };
  },
  sources: ["Conservation of mass", "OIML R 22 (1975) for ethanol with water", "JCGM 100:2008 (GUM), 5.1"],
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
