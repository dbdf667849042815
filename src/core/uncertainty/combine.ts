import { DomainError, inRange } from "../domain-error.ts";
import { studentTUpperQuantile } from "../statistics/distribution/student-t.ts";

/** What one source adds to the uncertainty of a result: sensitivity times standard uncertainty. */
export interface Contribution {
  readonly source: string;
  readonly size: number;
  /** Infinity where the standard uncertainty is taken as known. */
  readonly degreesOfFreedom: number;
}
export interface CombinedUncertainty {
  readonly standardUncertainty: number;
  /** Welch–Satterthwaite; Infinity when every contribution is taken as known. */
  readonly degreesOfFreedom: number;
  /** The part of the variance that each source makes, largest first. */
  readonly shares: readonly { readonly source: string; readonly share: number }[];
}

/**
 * The combined standard uncertainty of a result from sources that are independent.
 *
 *     u² = Σ (cᵢ·uᵢ)²,  ν = u⁴/Σ (cᵢ·uᵢ)⁴/νᵢ
 *
 * @param contributions  n ≥ 1
 * @returns              standard uncertainty, effective degrees of freedom, shares of the variance
 * @throws DomainError for no contribution, degrees of freedom of 0 or fewer, and NaN
 *
 * Valid:    a result near enough to linear in its sources over their uncertainty: else see `propagate`
 * Accuracy: full digits
 * Source:   JCGM 100:2008, eq. 10 and G.2b
 * @example
 * combinedUncertainty([{ source: "a", size: 3, degreesOfFreedom: Infinity }, { source: "b", size: 4, degreesOfFreedom: 8 }]) // => { standardUncertainty: 5, degreesOfFreedom: 19.53 }
 */
export function combinedUncertainty(contributions: readonly Contribution[]): CombinedUncertainty {
  const [first] = contributions;
  if (first === undefined)
    throw new DomainError({ code: "not-enough-data", field: "contributions", value: 0, limits: { min: 1 } });
  let [variance, perFreedom] = [0, 0];
  for (const { source, size, degreesOfFreedom } of contributions) {
    const squared = inRange(source, size, { min: -Number.MAX_VALUE, max: Number.MAX_VALUE }) ** 2;
    inRange(`${source}.degreesOfFreedom`, degreesOfFreedom, {
      min: Number.MIN_VALUE,
      max: Number.POSITIVE_INFINITY,
    });
    variance += squared;
    perFreedom += squared ** 2 / degreesOfFreedom;
  }
  return {
    standardUncertainty: Math.sqrt(variance),
    degreesOfFreedom: perFreedom === 0 ? Number.POSITIVE_INFINITY : variance ** 2 / perFreedom,
    shares: contributions
      .map(({ source, size }) => ({ source, share: variance === 0 ? 0 : size ** 2 / variance }))
      .sort((a, b) => b.share - a.share),
  };
}

/**
 * The factor by which a standard uncertainty is widened to an interval of a given level.
 *
 *     k = t((1 + level)/2; ν cut to a whole number)
 *
 * @param level             0–1, scalar
 * @param degreesOfFreedom  effective, 1 or more, scalar; Infinity for the normal distribution
 * @returns                 k and the degrees of freedom used
 * @throws DomainError for a level outside (0, 1), fewer than 1 degree of freedom, and NaN
 *
 * Valid:    0 < level < 1
 * Accuracy: 1e-11 relative
 * Source:   JCGM 100:2008, G.4 and table G.2
 * @example
 * coverageFactor(0.99, 16.76) // => { factor: 2.921, degreesOfFreedomUsed: 16 }
 */
export function coverageFactor(
  level: number,
  degreesOfFreedom: number,
): { readonly factor: number; readonly degreesOfFreedomUsed: number } {
  inRange("level", level, { min: Number.MIN_VALUE, max: 1 - Number.EPSILON });
  const used = Math.floor(
    inRange("degreesOfFreedom", degreesOfFreedom, { min: 1, max: Number.POSITIVE_INFINITY }),
  );
  return { factor: studentTUpperQuantile((1 - level) / 2, used), degreesOfFreedomUsed: used };
}
