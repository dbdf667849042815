import { z } from "zod";
import { densityOfSolvent } from "../solution/density.ts";
import { type Mixed, mixFrom } from "../solution/mix.ts";
import { volumeFractionOfResin } from "../solution/solution.ts";
import {
  cubicMetreFromMillilitres,
  cutFromPoundsPerUsGallon,
  gramsFromKilogram,
  type VolumeFraction,
} from "../units.ts";
import { resinsFromInput, solventFromInput, temperatureFromInput } from "./solution-input.ts";
import type { resins, solvent } from "./solvent.ts";

/** One jar's worth of one cut. */
export const mixOutput = z.object({
  cutLbPerGal: z.number(),
  coats: z.number(),
  solutionMl: z.number(),
  resinG: z.number(),
  solventMl: z.number(),
  solventG: z.number(),
});

/** What any cut of a plan's flakes and alcohol is. */
export interface CutsMixed {
  readonly density: ReturnType<typeof densityOfSolvent>;
  readonly litreOf: (cutLbPerGal: number) => Mixed;
  readonly solids: (cutLbPerGal: number) => VolumeFraction;
}

/** The flakes and the alcohol that a plan is mixed from, whatever the cut. */
export function recipeOf(given: {
  readonly resins?: z.output<typeof resins> | undefined;
  readonly solvent: z.output<typeof solvent>;
  readonly temperatureC?: number | undefined;
}): CutsMixed {
  const recipe = {
    resin: resinsFromInput(given.resins),
    solvent: solventFromInput(given.solvent),
    temperature: temperatureFromInput(given.temperatureC),
  };
  const litreOf = (lbPerGal: number): Mixed =>
    mixFrom(recipe, {
      cut: cutFromPoundsPerUsGallon(lbPerGal),
      solutionVolume: cubicMetreFromMillilitres(1000),
    });
  return {
    density: densityOfSolvent(recipe.solvent, recipe.temperature),
    litreOf,
    solids: (lbPerGal) => volumeFractionOfResin(litreOf(lbPerGal).solution, recipe.temperature),
  };
}

interface Coat {
  /** Its number; a coat of several surfaces stands there once for each. */
  readonly coat: number | null;
  readonly cutLbPerGal: number | null;
  readonly solutionMl: number;
}

/** What to mix of each cut, in the order in which they are needed; `spared` times what is reckoned to be used. */
export function mixesOf(
  recipe: CutsMixed,
  steps: readonly Coat[],
  spared: number,
): z.output<typeof mixOutput>[] {
  const cuts = [...new Set(steps.flatMap(({ cutLbPerGal }) => cutLbPerGal ?? []))];
  return cuts.map((cutLbPerGal) => {
    const coats = steps.filter((step) => step.cutLbPerGal === cutLbPerGal);
    const solutionMl = coats.reduce((sum, step) => sum + step.solutionMl, 0) * spared;
    const litre = recipe.litreOf(cutLbPerGal);
    const litres = solutionMl / 1000;
    return {
      cutLbPerGal,
      coats: new Set(coats.map(({ coat }) => coat)).size,
      solutionMl,
      resinG: gramsFromKilogram(litre.resin) * litres,
      solventG: gramsFromKilogram(litre.solvent) * litres,
      solventMl: (litre.solvent / recipe.density.value) * 1e6 * litres,
    };
  });
}
