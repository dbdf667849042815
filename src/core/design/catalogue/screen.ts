import { bestGenerators, type Fraction, fractionOf, fractionRuns } from "./fraction.ts";
import { screenOf, screenRunsFor, type TwoLevels } from "./plackett-burman.ts";

/** How many things at two levels are screened in so many patches. */
export interface Screen {
  readonly runs: TwoLevels;
  /** Null for a screen that is no fraction: there every pair is spread thinly over the others. */
  readonly fraction: Fraction | null;
  readonly generators: readonly string[];
}

/**
 * The screen for so many things that fits into so many patches and lays least upon each other: the largest fraction
 * when no single thing lies upon a pair in it; else the largest of fraction and screen.
 *
 * @param factors  2–25, scalar
 * @param patches  scalar
 * @returns        null where not even the smallest screen fits
 *
 * Source: G. E. P. Box, J. S. Hunter and W. G. Hunter, Statistics for Experimenters (2005), ch. 6 and 7
 */
export function screenFor(factors: number, patches: number): Screen | null {
  const least = screenRunsFor(factors);
  const power = 2 ** Math.min(factors, 8, Math.floor(Math.log2(Math.max(1, patches))));
  const fraction = power >= 4 && power > factors ? { generators: bestGenerators(factors, power) } : null;
  const told = fraction === null ? null : fractionOf(factors, fraction.generators);
  const clear = told !== null && (told.resolution === null || told.resolution > 3);
  if (
    fraction !== null &&
    told !== null &&
    (clear || power >= least + 4 || least > patches || power === least)
  )
    return {
      runs: fractionRuns(factors, fraction.generators),
      fraction: told,
      generators: fraction.generators,
    };
  if (least > patches) return null;
  return { runs: screenOf(least).map((row) => row.slice(0, factors)), fraction: null, generators: [] };
}
