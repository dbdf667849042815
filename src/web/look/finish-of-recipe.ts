import type { Finish } from "../../core/colour/finish-colour.ts";
import { absorptionOfBlend, absorptionOfGrade } from "../../core/colour/resin-grades.ts";
import { volumeSolids } from "../../core/film/film.ts";
import { usualPartialDensity } from "../../core/solution/resin.ts";
import { cutFromPoundsPerUsGallon } from "../../core/units.ts";

/** Flakes by their grade and their share of the weight. */
export interface Bag {
  readonly grade: string | undefined;
  readonly share: number;
}

/** The finish that several flakes make together, for the colour of the page; undefined where no grade or no cut is known. */
export function finishOfBags(bags: readonly Bag[], lbPerGal: number | undefined): Finish | undefined {
  const parts = bags.flatMap(({ grade, share }) => {
    const absorption = grade === undefined ? undefined : absorptionOfGrade(grade);
    return absorption === undefined ? [] : [{ absorption, share }];
  });
  if (parts.length === 0 || lbPerGal === undefined) return undefined;
  return {
    absorption: absorptionOfBlend(parts),
    solids: volumeSolids(cutFromPoundsPerUsGallon(lbPerGal), usualPartialDensity),
  };
}

/** The finish that one lot of flakes makes. */
export const finishOfRecipe = (grade: string | undefined, lbPerGal: number | undefined): Finish | undefined =>
  finishOfBags([{ grade, share: 1 }], lbPerGal);
