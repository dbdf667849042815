import { inRange } from "../../domain-error.ts";
import { rootOfIncreasing } from "../numeric/root.ts";
import { at } from "../numeric/vector.ts";
import { meanOverScale } from "./chi-square.ts";
import { normalCdf, normalDensity } from "./normal.ts";

const groupsRange = { min: 2, max: 200 } as const;
const freedomRange = { min: 1, max: Number.POSITIVE_INFINITY } as const;

/**
 * The places of the inner integral never change: what does not depend on the range is worked out once. The trapezoidal
 * rule on a normal density, beyond 8.5 less than 1e-16 of its peak.
 */
const step = 0.25;
const zs = Array.from({ length: 69 }, (_, i) => (i - 34) * step);
const shares = zs.map((z) => step * normalDensity(z));
const [below, above] = [zs.map((z) => normalCdf(z)), zs.map((z) => normalCdf(-z))];

/** Probability that the range of k independent standard normals is at most w. */
function rangeCdf(w: number, k: number): number {
  let total = 0;
  for (let i = 0; i < zs.length; i++) {
    const z = at(zs, i);
    // Φ(z) − Φ(z − w), from the side on which both are small
    const between = 2 * z > w ? normalCdf(w - z) - at(above, i) : at(below, i) - normalCdf(z - w);
    total += at(shares, i) * between ** (k - 1);
  }
  return k * total;
}

/**
 * The distribution of the studentized range: the range of k means over their estimated standard error.
 *
 *     P(q) = E[W(q·s; k)],   W(w; k) = k ∫ φ(z) [Φ(z) − Φ(z − w)]^(k−1) dz,   s = √(χ²/ν)
 *
 * @param q                 scalar
 * @param groups            k, scalar
 * @param degreesOfFreedom  ν, scalar; Infinity for a known standard error
 * @returns                 {lower, upper}, the upper as one minus the lower
 * @throws DomainError outside the valid range, and for NaN
 *
 * Valid:    2 ≤ k ≤ 200, ν ≥ 1
 * Accuracy: 1e-12 absolute to k = 30, 2e-10 to k = 50, 2e-7 to k = 200
 * Source:   H. L. Harter, Ann. Math. Statist. 31 (1960) 1122
 * @example
 * studentizedRangeCdf(3.958293, 4, 20) // => 0.95
 */
export function studentizedRangeCdf(q: number, groups: number, degreesOfFreedom: number): number {
  inRange("q", q, { min: 0, max: Number.POSITIVE_INFINITY });
  inRange("groups", groups, groupsRange);
  inRange("degreesOfFreedom", degreesOfFreedom, freedomRange);
  if (q === 0) return 0;
  return Math.min(
    1,
    meanOverScale((s) => rangeCdf(q * s, groups), degreesOfFreedom),
  );
}

/**
 * The quantile of the studentized range.
 *
 * @param probability       probability below, scalar
 * @param groups            k, scalar
 * @param degreesOfFreedom  ν, scalar
 * @returns                 q, scalar
 * @throws DomainError outside the valid range, and for NaN
 *
 * Valid:    0 < p < 1 − 1e-9, 2 ≤ k ≤ 200, ν ≥ 1
 * Accuracy: 1e-8 relative for p from 0.01 to 0.999
 * Source:   as `studentizedRangeCdf`
 * @example
 * studentizedRangeQuantile(0.95, 3, 10) // => 3.876777
 */
export function studentizedRangeQuantile(
  probability: number,
  groups: number,
  degreesOfFreedom: number,
): number {
  inRange("probability", probability, { min: Number.MIN_VALUE, max: 1 - 1e-9 });
  const distance = (w: number): number =>
    studentizedRangeCdf(Math.exp(w), groups, degreesOfFreedom) - probability;
  return Math.exp(rootOfIncreasing(distance, 1, 0.5));
}
