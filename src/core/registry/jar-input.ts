import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import type { Poured } from "../solution/pour-uncertainty.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import { type Solution, solutionOfCut } from "../solution/solution.ts";
import {
  type Cut,
  cubicMetreFromMillilitres,
  cutFromPoundsPerUsGallon,
  type Kelvin,
  kilogramFromGrams,
  kilogramPerCubicMetre,
} from "../units.ts";
import { amountG, amountMl } from "./amount.ts";
import { cutFromInput, cutNames } from "./cut-names.ts";
import { solventFromInput } from "./solution-input.ts";
import { solvent } from "./solvent.ts";

/** A jar of a known cut. The solvent is what its liquid is made of now. */
export const jar = z.strictObject({
  solutionMl: amountMl.optional(),
  solutionG: amountG.optional(),
  ...cutNames,
  /** In lb per US gallon, from how the jar was mixed or dried down. */
  cutStandardUncertainty: z.number().min(0).optional(),
  solvent,
  partialDensityKgM3: z.number().min(500).max(3000).optional(),
});
export type JarInput = z.output<typeof jar>;

function jarCut(input: JarInput, field: string): Cut {
  const cut = cutFromInput(input, `${field}.`);
  if (cut === undefined)
    throw new DomainError({ code: "missing", field: `${field}.cutLbPerGal`, value: undefined });
  return cut;
}

/** The jar as it is poured out, for how sure the result is. */
export function jarAsPoured(input: JarInput, field: string): Poured {
  const weighed = input.solutionG !== undefined;
  return {
    cut: jarCut(input, field),
    cutUncertainty: cutFromPoundsPerUsGallon(input.cutStandardUncertainty ?? 0),
    solvent: solventFromInput(input.solvent, `${field}.solvent`),
    partialDensity: kilogramPerCubicMetre(input.partialDensityKgM3 ?? usualPartialDensity),
    amount: weighed ? (input.solutionG ?? 0) / 1e3 : (input.solutionMl ?? 0) / 1e6,
    by: weighed ? "scale" : "jug",
  };
}

/** The masses in a jar, from its volume or its weight. */
export function jarFromInput(input: JarInput, field: string, temperature: Kelvin): Solution {
  const { solutionMl, solutionG } = input;
  if (solutionMl !== undefined && solutionG !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: `${field}.solutionG`,
      value: solutionG,
      because: "solutionMl says the amount already; give one of them.",
    });
  if (solutionMl === undefined && solutionG === undefined)
    throw new DomainError({ code: "missing", field: `${field}.solutionMl`, value: undefined });
  return solutionOfCut(
    jarCut(input, field),
    solventFromInput(input.solvent, `${field}.solvent`),
    solutionMl === undefined
      ? { mass: kilogramFromGrams(solutionG ?? 0) }
      : { volume: cubicMetreFromMillilitres(solutionMl), temperature },
    kilogramPerCubicMetre(input.partialDensityKgM3 ?? usualPartialDensity),
  );
}
