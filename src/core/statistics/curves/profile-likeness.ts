import { DomainError } from "../../domain-error.ts";
import { at, mean, squaredDeviations, sum, type Vector } from "../numeric/vector.ts";

/** Two courses over the same times are called alike from here on: convention of the sources. */
export const alikeFrom = 50;

export interface ProfileLikeness {
  /** f1: the mean distance in percent of the reference; 0 where both are the same. */
  readonly difference: number;
  /** f2: 100 where both are the same, about 50 where they lie 10 points apart throughout. */
  readonly similarity: number;
}

function paired(reference: Vector, other: Vector): void {
  if (reference.length === 0 || reference.length !== other.length)
    throw new DomainError({
      code: "contradiction",
      field: "other",
      value: other.length,
      limits: { min: Math.max(1, reference.length), max: Math.max(1, reference.length) },
      because: "Both are read at the same times.",
    });
}

const similarityOf = (meanSquare: number): number => 50 * Math.log10(100 / Math.sqrt(1 + meanSquare));

/**
 * How far apart two courses lie: the percent dissolved in two jars, say, at the same times.
 *
 *     f1 = 100·Σ|R − T|/ΣR,   f2 = 50·log₁₀(100/√(1 + mean (R − T)²))
 *
 * @param reference  R, percent at each time, n numbers
 * @param other      T, percent at the same times, paired with R
 * @returns          difference f1 [%] and similarity f2, scalar
 * @throws DomainError for lists of different lengths, and for none
 *
 * Valid:    percent of a whole, 0–100; times before both are at their end, or likeness is overstated
 * Accuracy: exact
 * Source:   J. W. Moore and H. H. Flanner, Pharmaceutical Technology 20 (1996) 64; V. P. Shah et al., Pharmaceutical Research 15 (1998) 889
 * @example
 * profileLikeness([20, 40, 60, 80], [10, 30, 50, 70]).similarity // => 49.89
 */
export function profileLikeness(reference: Vector, other: Vector): ProfileLikeness {
  paired(reference, other);
  const distances = Array.from(reference, (r, i) => r - at(other, i));
  return {
    difference: (100 * sum(distances.map(Math.abs))) / sum(reference),
    similarity: similarityOf(mean(distances.map((d) => d * d))),
  };
}

/** The variance of a mean of several jars. */
const varianceOfMean = (units: Vector): number =>
  squaredDeviations(units) / (units.length - 1) / units.length;

/**
 * The similarity f2 of two courses, less what the scatter of the jars alone takes from it.
 *
 *     100 − 25·log₁₀(1 + (Σ(R̄ − T̄)² − Σ(s²_R/n_R + s²_T/n_T))/P)
 *
 * @param reference  the readings of several jars at each of P times, each list n_R numbers
 * @param other      the same of the others, each list n_T numbers
 * @returns          scalar; null where the scatter is so large that no distance is left to tell
 * @throws DomainError for a different number of times, and for a time with fewer than two readings
 *
 * Valid:    two jars or more of each
 * Accuracy: exact
 * Source:   V. P. Shah, Y. Tsong, P. Sathe and J.-P. Liu, Pharmaceutical Research 15 (1998) 889
 * @example
 * similarityLessScatter([[10, 14], [30, 34]], [[20, 24], [40, 44]]) // => 50.79
 */
export function similarityLessScatter(reference: readonly Vector[], other: readonly Vector[]): number | null {
  paired(reference.map(mean), other.map(mean));
  const few = [...reference, ...other].find((units) => units.length < 2);
  if (few !== undefined)
    throw new DomainError({
      code: "not-enough-data",
      field: "reference",
      value: few.length,
      limits: { min: 2 },
      because: "Scatter shows from two jars on.",
    });
  const squares = sum(
    reference.map((units, i) => {
      const others = other[i] as Vector; // as many, held above
      return (mean(units) - mean(others)) ** 2 - varianceOfMean(units) - varianceOfMean(others);
    }),
  );
  const inside = 1 + squares / reference.length;
  return inside > 0 ? 100 - 25 * Math.log10(inside) : null;
}
