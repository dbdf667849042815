import { z } from "zod";
import { densityOfSolvent } from "../solution/density.ts";
import { solventAsPoured, uncertaintyOfPouring } from "../solution/pour-uncertainty.ts";
import type { Propagated } from "../solution/propagation.ts";
import { afterLoss } from "../solution/restore.ts";
import { cutOfSolution } from "../solution/solution.ts";
import { thinTo } from "../solution/thin.ts";
import { gramsFromKilogram, kilogramFromGrams } from "../units.ts";
import { contributions } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { poundsPerUsGallon } from "./cut-names.ts";
import { type Flag, flag, flagsAbout } from "./flag.ts";
import { jar, jarAsPoured, jarFromInput } from "./jar-input.ts";
import { describeJar, jarOutput } from "./jar-output.ts";
import { instrumentsFromInput, solventFromInput, temperatureFromInput } from "./solution-input.ts";
import { instruments, solvent } from "./solvent.ts";

const evenLoss = (liquids: number): Flag[] =>
  liquids < 3
    ? []
    : [
        {
          code: "even-loss",
          field: "jar.solvent",
          message:
            "What left is taken to be of the jar's own composition; of several liquids the fastest leaves first.",
        },
      ];

const sure = (found: Propagated) => ({
  cutStandardUncertainty: poundsPerUsGallon(found.standardUncertainty),
  contributions: [...found.contributions],
});

export const restore = defineCalculation({
  name: "restore",
  purpose: "A jar that lost solvent by weight: its cut now, and what brings it back",
  input: z.strictObject({
    /** As it was when it was closed. */
    jar,
    /** Weight then less weight now. */
    lostG: z.number().min(0).max(1e7),
    /** What it is topped up with; its own solvent unless told. */
    with: solvent.optional(),
    temperatureC: z.number().optional(),
    instruments: instruments.optional(),
  }),
  output: z.object({
    now: z.object({ ...jarOutput, cutStandardUncertainty: z.number(), contributions }),
    addG: z.number(),
    addMl: z.number(),
    restored: z.object({ ...jarOutput, cutStandardUncertainty: z.number(), contributions }),
    instrumentsAssumed: z.boolean(),
    flags: z.array(flag),
  }),
  run: (given) => {
    const temperature = temperatureFromInput(given.temperatureC);
    const before = jarFromInput(given.jar, "jar", temperature);
    const now = afterLoss(before, kilogramFromGrams(given.lostG));
    const added = given.with === undefined ? before.liquid.composition : solventFromInput(given.with, "with");
    const thinned = thinTo(now, cutOfSolution(before), added);
    const density = densityOfSolvent(added, temperature);
    const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
    const poured = [jarAsPoured(given.jar, "jar")];
    const back = solventAsPoured(added, thinned.added, "scale");
    const lost = kilogramFromGrams(given.lostG);
    return {
      now: {
        ...describeJar(now, temperature),
        ...sure(uncertaintyOfPouring(poured, temperature, told, { lost })),
      },
      addG: gramsFromKilogram(thinned.added),
      addMl: (thinned.added / density.value) * 1e6,
      restored: {
        ...describeJar(thinned.result, temperature),
        ...sure(uncertaintyOfPouring([...poured, back], temperature, told, { lost })),
      },
      instrumentsAssumed: assumed,
      flags: [
        ...flagsAbout(density.flags, "with"),
        ...evenLoss(Object.keys(before.liquid.composition).length),
      ],
    };
  },
  sources: ["Conservation of mass", "OIML R 22 (1975) for ethanol with water", "JCGM 100:2008 (GUM), 5.1"],
  example: {
    input: {
      jar: { solutionG: 500, cutLbPerGal: 2, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
      lostG: 38.6,
    },
    output: { now: { cutLbPerGal: 2.222 }, addG: 38.6 },
  },
});
