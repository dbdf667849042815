import { DomainError, inRange } from "../../domain-error.ts";
import { fUpperQuantile, noncentralFTails } from "../distribution/f-distribution.ts";
import { noncentralTTails } from "../distribution/noncentral-t.ts";
import { rootBetween } from "../numeric/root.ts";
import { tukeyMultiplier } from "./tukey.ts";

/**
 * The power of an F test.
 *
 *     P(F′(ν₁, ν₂; λ) > F(1 − α; ν₁, ν₂))
 *
 * @param noncentrality  λ, scalar
 * @param numerator      ν₁, scalar
 * @param denominator    ν₂, scalar
 * @param alpha          scalar
 * @returns              probability, scalar
 * @throws DomainError as `noncentralFTails`
 *
 * Valid:    0 ≤ λ ≤ 1e5
 * Accuracy: 1e-10 absolute
 * Source:   J. Cohen, Statistical Power Analysis for the Behavioral Sciences (1988), ch. 8
 * @example
 * fTestPower(5, 3, 16, 0.05) // => 0.3535594237
 */
export const fTestPower = (
  noncentrality: number,
  numerator: number,
  denominator: number,
  alpha: number,
): number =>
  noncentralFTails(fUpperQuantile(alpha, numerator, denominator), numerator, denominator, noncentrality)
    .upper;

/** How one factor stands in a layout: what is mixed, cut or coated apart, and how many patches each of those gives. */
export interface ComparisonPlan {
  /** Levels of the factor. */
  readonly levels: number;
  /** Jars, planks or patches made apart from each other for each level. */
  readonly unitsPerLevel: number;
  /** Patches that each of them gives; 1 when the patch is the unit. */
  readonly patchesPerUnit: number;
  /** Standard deviation from unit to unit, over what the patches add; 0 when the patch is the unit. */
  readonly unitDeviation: number;
  /** Standard deviation from patch to patch. */
  readonly patchDeviation: number;
  /** Of the error that the factor is held against; levels·(units − 1) unless told. */
  readonly degreesOfFreedom?: number;
}

/** Standard error of the difference of two levels: √(2 (σ_u² + σ_p²/p)/u). */
export const standardErrorOfPlan = (plan: ComparisonPlan): number =>
  Math.sqrt(
    (2 * (plan.unitDeviation ** 2 + plan.patchDeviation ** 2 / plan.patchesPerUnit)) / plan.unitsPerLevel,
  );

/**
 * The smallest true difference between two levels that a layout would show, with the given power, by an interval
 * for all pairs that leaves out 0.
 *
 *     P(T′(ν; δ) > q/√2) = power,   smallest = δ √(2 (σ_u² + σ_p²/p)/u)
 *
 * @param plan   {levels, unitsPerLevel, patchesPerUnit, unitDeviation, patchDeviation}, deviations in the response's unit
 * @param power  scalar
 * @returns      in the response's unit, scalar
 * @throws DomainError without a degree of freedom for the error, and for power outside (0.05, 0.999)
 *
 * Valid:    degrees of freedom ≥ 1
 * Accuracy: 1e-8 relative
 * Source:   D. C. Montgomery, Design and Analysis of Experiments (2013), 3.7, with the pairwise multiplier of Tukey
 * @example
 * smallestDifference({ levels: 2, unitsPerLevel: 20, patchesPerUnit: 1, unitDeviation: 0, patchDeviation: 1 }) // => 0.9091301
 */
export function smallestDifference(plan: ComparisonPlan, power = 0.8): number {
  inRange("power", power, { min: 0.05, max: 0.999 });
  const freedom = plan.degreesOfFreedom ?? plan.levels * (plan.unitsPerLevel - 1);
  if (!(freedom >= 1)) {
    throw new DomainError({ code: "not-enough-data", field: "unitsPerLevel", value: plan.unitsPerLevel });
  }
  const critical = tukeyMultiplier(plan.levels, freedom);
  const short = (delta: number): number => noncentralTTails(critical, freedom, delta).upper - power;
  let high = critical + 2;
  while (short(high) < 0) high *= 2;
  return rootBetween(short, 0, high) * standardErrorOfPlan(plan);
}
