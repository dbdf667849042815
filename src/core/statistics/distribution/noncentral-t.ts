import { inRange } from "../../domain-error.ts";
import { meanOverScale } from "./chi-square.ts";
import type { Tails } from "./gamma.ts";
import { normalCdf } from "./normal.ts";

/**
 * The noncentral t distribution, both tails: the normal result averaged over the estimated scale.
 *
 *     P(T ≤ t) = E[Φ(t·s − δ)],   s = √(χ²/ν)
 *
 * @param t                 scalar
 * @param degreesOfFreedom  scalar
 * @param noncentrality     δ, scalar
 * @returns                 {lower, upper}
 * @throws DomainError for degrees of freedom < 1, and NaN
 *
 * Valid:    degrees of freedom ≥ 1
 * Accuracy: 1e-11 absolute
 * Source:   Johnson, Kotz and Balakrishnan, Continuous Univariate Distributions 2 (1995), ch. 31
 * @example
 * noncentralTTails(2.0243941645751367, 38, Math.sqrt(10)).upper // => 0.868952802
 */
export function noncentralTTails(t: number, degreesOfFreedom: number, noncentrality: number): Tails {
  inRange("degreesOfFreedom", degreesOfFreedom, { min: 1, max: Number.POSITIVE_INFINITY });
  return {
    lower: meanOverScale((s) => normalCdf(t * s - noncentrality), degreesOfFreedom),
    upper: meanOverScale((s) => normalCdf(noncentrality - t * s), degreesOfFreedom),
  };
}
