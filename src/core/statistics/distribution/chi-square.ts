import { inRange } from "../../domain-error.ts";
import { integral } from "../numeric/gauss-legendre.ts";
import { rootOfIncreasing } from "../numeric/root.ts";
import { incompleteGamma, stirlingError, type Tails } from "./gamma.ts";

/**
 * The chi-square distribution, both tails.
 *
 * @param x                 scalar
 * @param degreesOfFreedom  scalar
 * @returns                 {lower, upper}
 * @throws DomainError for x < 0, degrees of freedom ≤ 0, and NaN
 *
 * Valid:    x ≥ 0
 * Accuracy: as `incompleteGamma`
 * Source:   NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.6.6
 * @example
 * chiSquareTails(3.841458821, 1).upper // => 0.05
 */
export const chiSquareTails = (x: number, degreesOfFreedom: number): Tails =>
  incompleteGamma(degreesOfFreedom / 2, x / 2);

/** The value that a chi-square variable exceeds with probability `p`. */
export function chiSquareUpperQuantile(p: number, degreesOfFreedom: number): number {
  inRange("p", p, { min: Number.MIN_VALUE, max: 1 - Number.EPSILON / 2 });
  const distance = (w: number): number => {
    const tails = chiSquareTails(Math.exp(w), degreesOfFreedom);
    return p <= 0.5 ? Math.log(p) - Math.log(tails.upper) : Math.log(tails.lower) - Math.log1p(-p);
  };
  return Math.exp(rootOfIncreasing(distance, Math.log(degreesOfFreedom), 0.5));
}

/**
 * The mean of g(s) where s² is a mean square over its expectation: s = √(χ²/ν). This is what turns a result for a
 * known standard deviation into one for an estimated one.
 *
 *     E[g] = ∫ g(e^v) 2 a^a/Γ(a) e^{ν(v − e^{2v}/2)} dv,   a = ν/2
 *
 * In the logarithm of s the weight is smooth and dies away on both sides, where the trapezoidal rule gains digits with
 * each point: a step of half its width leaves 1e-15 (L. N. Trefethen and J. A. C. Weideman, SIAM Rev. 56 (2014) 385).
 * A g that is smooth up to some s and 0 beyond it is told by `upTo`: across a kink that rule would lose half its
 * digits, and Gauss–Legendre up to there does not.
 *
 * Valid:  ν > 0, and a g that does not grow faster than the weight dies away
 * Source: the density of χ², from memory
 */
export function meanOverScale(
  g: (s: number) => number,
  degreesOfFreedom: number,
  upTo = Number.POSITIVE_INFINITY,
): number {
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return upTo > 1 ? g(1) : 0;
  const nu = degreesOfFreedom;
  const negligible = 40; // e^−40 = 4e-18
  const fall = (v: number): number => nu * (0.5 + v - 0.5 * Math.exp(2 * v)) + negligible;
  const high = rootOfIncreasing((v) => -fall(v), 0, 0.1);
  const low = rootOfIncreasing(fall, 0, 0.1);
  const peak = 2 * Math.sqrt(nu / (4 * Math.PI)) * Math.exp(-stirlingError(nu / 2));
  const weighted = (v: number): number => peak * Math.exp(fall(v) - negligible) * g(Math.exp(v));
  const end = Math.log(upTo);
  if (end <= low) return 0;
  if (end >= high) return trapezoid(weighted, low, high, Math.min(1 / 8, 0.35 / Math.sqrt(nu)));
  const shoulder = Math.min(Math.max(low, -3), end);
  const tail = low < shoulder ? integral(weighted, low, shoulder, 5) : 0;
  return tail + integral(weighted, shoulder, end, 6);
}

/** Halves the step until two results in a row agree to half the digits wanted: each halving at least doubles those. */
function trapezoid(f: (v: number) => number, low: number, high: number, firstStep: number): number {
  const sumAt = (step: number, every: number, from: number): number => {
    let total = 0;
    for (let i = Math.floor(low / step / every) * every + from; i * step < high; i += every)
      if (i * step > low) total += f(i * step);
    return total;
  };
  let step = 2 * firstStep;
  let total = sumAt(step, 1, 0);
  for (let halving = 0; halving < 8; halving++) {
    const finer = total + sumAt(step / 2, 2, 1);
    const moved = Math.abs((finer * step) / 2 - total * step);
    [step, total] = [step / 2, finer];
    if (moved < 1e-7) break;
  }
  return step * total;
}
