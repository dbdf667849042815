import { inRange } from "../../domain-error.ts";
import { rootOfIncreasing } from "../numeric/root.ts";
import { logRatioMinusDeviation, stirlingError, type Tails } from "./gamma.ts";

/** x^a y^b / B(a, b) with y = 1 − x, by its logarithm about the peak. */
function betaFront(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const log =
    a * logRatioMinusDeviation(x * n, a) +
    b * logRatioMinusDeviation(y * n, b) +
    stirlingError(n) -
    stirlingError(a) -
    stirlingError(b);
  return Math.sqrt(((a / n) * b) / (2 * Math.PI)) * Math.exp(log);
}

/** Continued fraction by the modified Lentz method; quick for x below the mean. */
function betaFraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let h = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + even * d || tiny);
    c = 1 + even / c || tiny;
    h *= c * d;
    d = 1 / (1 + odd * d || tiny);
    c = 1 + odd / c || tiny;
    const step = c * d;
    h *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return h;
}

/**
 * The regularised incomplete beta function, both tails.
 *
 *     lower = I_x(a, b) = 1/B(a, b) ∫₀ˣ t^(a−1) (1 − t)^(b−1) dt,   upper = I_(1−x)(b, a)
 *
 * @param x           scalar
 * @param a           scalar
 * @param b           scalar
 * @param complement  1 − x, given where it is known with more digits than the subtraction keeps
 * @returns           {lower, upper}
 * @throws DomainError for x outside [0, 1], a or b ≤ 0, and NaN
 *
 * Valid:    0 ≤ x ≤ 1, a > 0, b > 0
 * Accuracy: 1e-11 relative in the smaller tail for a, b up to 1e4
 * Source:   NIST Digital Library of Mathematical Functions, 8.17.22
 * @example
 * incompleteBeta(0.3, 2, 5).lower // => 0.579825
 */
export function incompleteBeta(x: number, a: number, b: number, complement = 1 - x): Tails {
  inRange("x", x, { min: 0, max: 1 });
  inRange("a", a, { min: Number.MIN_VALUE, max: 1e300 });
  inRange("b", b, { min: Number.MIN_VALUE, max: 1e300 });
  if (x === 0) return { lower: 0, upper: 1 };
  if (complement === 0) return { lower: 1, upper: 0 };
  const front = betaFront(x, complement, a, b);
  if (x < (a + 1) / (a + b + 2)) {
    const lower = (front * betaFraction(x, a, b)) / a;
    return { lower, upper: 1 - lower };
  }
  const upper = (front * betaFraction(complement, b, a)) / b;
  return { lower: 1 - upper, upper };
}

/** A place on [0, 1] with its complement, each to full digits. */
export interface Share {
  readonly x: number;
  readonly complement: number;
}

/**
 * The quantile of the beta distribution: x such that I_x(a, b) = p, or 1 − I_x(a, b) = p for the upper tail.
 * Solved in ln(x/(1 − x)) on the logarithm of the smaller tail, so that x near 0 or 1 keeps its digits.
 *
 * @param p     probability, scalar
 * @param a     scalar
 * @param b     scalar
 * @param tail  which tail holds p
 * @returns     {x, complement}
 * @throws DomainError for p outside (0, 1), a or b ≤ 0, and NaN
 *
 * Valid:    0 < p < 1
 * Accuracy: 1e-11 relative
 * Source:   NIST Digital Library of Mathematical Functions, 8.17
 * @example
 * betaQuantile(0.579825, 2, 5).x // => 0.3
 */
export function betaQuantile(p: number, a: number, b: number, tail: keyof Tails = "lower"): Share {
  inRange("p", p, { min: Number.MIN_VALUE, max: 1 - Number.EPSILON / 2 });
  const useLower = tail === "lower" ? p <= 0.5 : p > 0.5;
  const target = Math.log(p <= 0.5 ? p : 1 - p);
  const share = (w: number): Share => ({ x: 1 / (1 + Math.exp(-w)), complement: 1 / (1 + Math.exp(w)) });
  const distance = (w: number): number => {
    const { x, complement } = share(w);
    const tails = incompleteBeta(x, a, b, complement);
    return useLower ? Math.log(tails.lower) - target : target - Math.log(tails.upper);
  };
  return share(rootOfIncreasing(distance, Math.log(a / b), 1));
}
