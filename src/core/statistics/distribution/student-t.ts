import { betaQuantile, incompleteBeta } from "./beta.ts";
import type { Tails } from "./gamma.ts";
import { normalCdf, normalQuantile } from "./normal.ts";

/**
 * Student's t distribution, both tails.
 *
 *     P(|T| > |t|) = I_{ν/(ν + t²)}(ν/2, ½)
 *
 * @param t                 scalar
 * @param degreesOfFreedom  scalar, Infinity for the normal distribution
 * @returns                 {lower, upper}
 * @throws DomainError for degrees of freedom ≤ 0, and NaN
 *
 * Valid:    any t
 * Accuracy: as `incompleteBeta`
 * Source:   NIST Digital Library of Mathematical Functions, 8.17; Abramowitz and Stegun 26.7
 * @example
 * studentTTails(2, 10).upper // => 0.036694017
 */
export function studentTTails(t: number, degreesOfFreedom: number): Tails {
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return { lower: normalCdf(t), upper: normalCdf(-t) };
  const squared = t * t;
  const x = degreesOfFreedom / (degreesOfFreedom + squared);
  const beyond =
    incompleteBeta(x, degreesOfFreedom / 2, 0.5, squared / (degreesOfFreedom + squared)).lower / 2;
  return t > 0 ? { lower: 1 - beyond, upper: beyond } : { lower: beyond, upper: 1 - beyond };
}

/**
 * The t that is exceeded with probability `p`.
 *
 * @param p                 probability, scalar
 * @param degreesOfFreedom  scalar, Infinity for the normal distribution
 * @returns                 scalar
 * @throws DomainError for p outside (0, 1), degrees of freedom ≤ 0, and NaN
 *
 * Valid:    0 < p < 1
 * Accuracy: 1e-11 relative
 * Source:   Abramowitz and Stegun 26.7
 * @example
 * studentTUpperQuantile(0.025, 10) // => 2.228138852
 */
export function studentTUpperQuantile(p: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return -normalQuantile(p);
  if (p > 0.5) return -studentTUpperQuantile(1 - p, degreesOfFreedom);
  if (p === 0.5) return 0;
  const { x, complement } = betaQuantile(2 * p, degreesOfFreedom / 2, 0.5);
  return Math.sqrt((degreesOfFreedom * complement) / x);
}
