import { z } from "zod";
import {
  cutOfSolution,
  massFractionOfResin,
  massOfSolution,
  type Solution,
  volumeFractionOfResin,
  volumeOfSolution,
} from "../solution/solution.ts";
import { gramsFromKilogram, type Kelvin, millilitresFromCubicMetre } from "../units.ts";
import { allCutNames, cutInAllNames } from "./cut-names.ts";

/** What a jar comes to, whichever way it came about. */
export const jarOutput = {
  solutionMl: z.number(),
  solutionG: z.number(),
  ...allCutNames,
  massFractionResin: z.number(),
  volumeFractionResin: z.number(),
  /** Of the liquid. */
  waterMassFraction: z.number(),
};

export const describeJar = (s: Solution, temperature: Kelvin) => ({
  solutionMl: millilitresFromCubicMetre(volumeOfSolution(s, temperature)),
  solutionG: gramsFromKilogram(massOfSolution(s)),
  ...cutInAllNames(cutOfSolution(s)),
  massFractionResin: massFractionOfResin(s),
  volumeFractionResin: volumeFractionOfResin(s, temperature),
  waterMassFraction: s.liquid.composition.water ?? 0,
});
