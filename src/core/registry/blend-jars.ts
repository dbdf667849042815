import { z } from "zod";
import { densityOfSolvent } from "../solution/density.ts";
import { uncertaintyOfPouring } from "../solution/pour-uncertainty.ts";
import { blendOfSolutions, cutOfSolution, volumeOfSolution } from "../solution/solution.ts";
import { poundsPerUsGallonFromCut } from "../units.ts";
import { amountMl } from "./amount.ts";
import { defineCalculation } from "./calculation.ts";
import { flag, flagsAbout } from "./flag.ts";
import { jar, jarAsPoured, jarFromInput } from "./jar-input.ts";
import { describeJar, jarOutput } from "./jar-output.ts";
import { instrumentsFromInput, temperatureFromInput } from "./solution-input.ts";
import { instruments } from "./solvent.ts";
import { sureness, surenessOf } from "./sureness.ts";

export const blendJars = defineCalculation({
  name: "blend-jars",
  purpose: "Jars poured together: the cut, the liquid and the volume that come of it",
  input: z.strictObject({
    jars: z.array(jar).min(2).max(20),
    vesselMl: amountMl.optional(),
    temperatureC: z.number().optional(),
    instruments: instruments.optional(),
  }),
  output: z.object({
    ...jarOutput,
    contractionMl: z.number(),
    fitsVessel: z.boolean().nullable(),
    /** The mean of the cuts by volume of solution, which is usually reckoned. */
    simpleRatioWouldGive: z.object({ cutLbPerGal: z.number() }),
    ...sureness,
    flags: z.array(flag),
  }),
  run: (given) => {
    const temperature = temperatureFromInput(given.temperatureC);
    const jars = given.jars.map((j, i) => jarFromInput(j, `jars[${i}]`, temperature));
    const blend = blendOfSolutions(jars);
    const described = describeJar(blend, temperature);
    const before = jars.reduce((sum, j) => sum + volumeOfSolution(j, temperature) * 1e6, 0);
    const byVolume = jars.reduce(
      (sum, j) => sum + volumeOfSolution(j, temperature) * 1e6 * poundsPerUsGallonFromCut(cutOfSolution(j)),
      0,
    );
    const poured = given.jars.map((j, i) => jarAsPoured(j, `jars[${i}]`));
    const { instruments: told, assumed } = instrumentsFromInput(given.instruments);
    return {
      ...described,
      contractionMl: before - described.solutionMl,
      fitsVessel: given.vesselMl === undefined ? null : described.solutionMl <= given.vesselMl,
      simpleRatioWouldGive: { cutLbPerGal: byVolume / before },
      ...surenessOf(uncertaintyOfPouring(poured, temperature, told), assumed),
      flags: flagsAbout(densityOfSolvent(blend.liquid.composition, temperature).flags, "jars"),
    };
  },
  sources: ["Conservation of mass", "OIML R 22 (1975) for ethanol with water", "JCGM 100:2008 (GUM), 5.1"],
  example: {
    input: {
      jars: [
        { solutionG: 400, cutLbPerGal: 3, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
        { solutionG: 200, cutLbPerGal: 1, solvent: { alcohol: "ethanol", volumeFraction: 0.95 } },
      ],
    },
    output: { cutLbPerGal: 2.228, massFractionResin: 0.24757 },
  },
});
