import { inRange } from "../../domain-error.ts";
import { betaQuantile, incompleteBeta } from "./beta.ts";
import { logGamma, type Tails } from "./gamma.ts";

const positive = { min: Number.MIN_VALUE, max: 1e300 };

/**
 * The F distribution, both tails.
 *
 *     P(F ≤ f) = I_{d₁f/(d₁f + d₂)}(d₁/2, d₂/2)
 *
 * @param f  scalar
 * @param numerator    degrees of freedom, scalar
 * @param denominator  degrees of freedom, scalar
 * @returns            {lower, upper}
 * @throws DomainError for f < 0, degrees of freedom ≤ 0, and NaN
 *
 * Valid:    f ≥ 0
 * Accuracy: as `incompleteBeta`
 * Source:   Abramowitz and Stegun 26.6.2
 * @example
 * fTails(14.4375, 3, 9).upper // => 0.000871272071
 */
export function fTails(f: number, numerator: number, denominator: number): Tails {
  inRange("f", f, { min: 0, max: Number.POSITIVE_INFINITY });
  if (f === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const whole = numerator * f + denominator;
  return incompleteBeta((numerator * f) / whole, numerator / 2, denominator / 2, denominator / whole);
}

/** The F that is exceeded with probability `p`. */
export function fUpperQuantile(p: number, numerator: number, denominator: number): number {
  const { x, complement } = betaQuantile(p, numerator / 2, denominator / 2, "upper");
  return (denominator * x) / (numerator * complement);
}

/**
 * The noncentral F distribution, both tails: beta integrals weighted by Poisson shares, summed from the largest
 * share outward so that a large noncentrality starts where the weight is.
 *
 *     P(F ≤ f) = Σⱼ e^(−λ/2) (λ/2)^j / j! · I_{d₁f/(d₁f + d₂)}(d₁/2 + j, d₂/2)
 *
 * @param f              scalar
 * @param numerator      degrees of freedom, scalar
 * @param denominator    degrees of freedom, scalar
 * @param noncentrality  λ, scalar
 * @returns              {lower, upper}
 * @throws DomainError for f or λ < 0, λ > 1e5, degrees of freedom ≤ 0, and NaN
 *
 * Valid:    0 ≤ λ ≤ 1e5
 * Accuracy: 1e-12 absolute
 * Source:   Abramowitz and Stegun 26.6.20
 * @example
 * noncentralFTails(3.2388715174535, 3, 16, 5).upper // => 0.353559424
 */
export function noncentralFTails(
  f: number,
  numerator: number,
  denominator: number,
  noncentrality: number,
): Tails {
  inRange("numerator", numerator, positive);
  inRange("denominator", denominator, positive);
  const mean = inRange("noncentrality", noncentrality, { min: 0, max: 1e5 }) / 2;
  if (mean === 0) return fTails(f, numerator, denominator);
  const whole = numerator * f + denominator;
  const [x, complement] = [(numerator * f) / whole, denominator / whole];
  let [lower, upper] = [0, 0];
  const add = (j: number): boolean => {
    const weight = Math.exp(j * Math.log(mean) - mean - logGamma(j + 1));
    const tails = incompleteBeta(x, numerator / 2 + j, denominator / 2, complement);
    lower += weight * tails.lower;
    upper += weight * tails.upper;
    return weight > 1e-18;
  };
  const mode = Math.floor(mean);
  for (let j = mode; j >= 0 && add(j); j--);
  for (let j = mode + 1; add(j); j++);
  return { lower, upper };
}
