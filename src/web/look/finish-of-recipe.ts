import type { Finish } from "../../core/colour/finish-colour.ts";
import { absorptionOfGrade } from "../../core/colour/resin-grades.ts";
import { volumeSolids } from "../../core/film/film.ts";
import { usualPartialDensity } from "../../core/solution/resin.ts";
import { cutFromPoundsPerUsGallon } from "../../core/units.ts";

/** The finish that a recipe makes, for the colour of the page; undefined where grade or cut are not known. */
export function finishOfRecipe(grade: string | undefined, lbPerGal: number | undefined): Finish | undefined {
  const absorption = grade === undefined ? undefined : absorptionOfGrade(grade);
  if (absorption === undefined || lbPerGal === undefined) return undefined;
  return { absorption, solids: volumeSolids(cutFromPoundsPerUsGallon(lbPerGal), usualPartialDensity) };
}
