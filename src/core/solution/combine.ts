import { type Cut, cut as cutOf } from "../units.ts";

/** A cut and its standard uncertainty [kg/m³]. */
export interface UncertainCut {
  readonly cut: Cut;
  readonly standardUncertainty: number;
}

export interface CombinedCut extends UncertainCut {
  /** The two differ by more than both allow: twice the standard uncertainty of their difference. */
  readonly disagree: boolean;
  /** Their difference over its standard uncertainty. */
  readonly apart: number;
}

/**
 * A computed and a measured cut taken together.
 *
 *     c = (c1/u1² + c2/u2²)/(1/u1² + 1/u2²),   1/u² = 1/u1² + 1/u2²
 *
 * When they disagree, the mean still comes out, and is not to be trusted: something happened to the jar.
 *
 * @param one, other  independent cuts, each with a standard uncertainty above none
 * @returns           their weighted mean, and whether they disagree
 *
 * Valid:    independent errors
 * Accuracy: exact
 * Source:   inverse-variance weighting; the limit of 2 is JCGM 100:2008, 6.3.3 (about 95 %)
 * @example
 * combinedCut({ cut: cutFromPoundsPerUsGallon(2), standardUncertainty: 12 }, { cut: cutFromPoundsPerUsGallon(2.2), standardUncertainty: 12 }).apart // => 1.41
 */
export function combinedCut(one: UncertainCut, other: UncertainCut): CombinedCut {
  const [a, b] = [1 / one.standardUncertainty ** 2, 1 / other.standardUncertainty ** 2];
  const apart =
    Math.abs(one.cut - other.cut) / Math.hypot(one.standardUncertainty, other.standardUncertainty);
  return {
    cut: cutOf((a * one.cut + b * other.cut) / (a + b)),
    standardUncertainty: 1 / Math.sqrt(a + b),
    apart,
    disagree: apart > 2,
  };
}
