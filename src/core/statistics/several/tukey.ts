import { inRange } from "../../domain-error.ts";
import { studentizedRangeCdf, studentizedRangeQuantile } from "../distribution/studentized-range.ts";

export interface SimultaneousDifference {
  readonly estimate: number;
  readonly interval: readonly [number, number];
  /** Probability of a studentized range as large as this difference's, all pairs allowed for. */
  readonly pValue: number;
}

/** A multiplier takes thousands of normal integrals, and verdicts ask for the same few again and again. */
const known = new Map<string, number>();
const mostKnown = 1000;

/** The multiplier of a standard error of a difference that covers all pairs of `groups` at once: q/√2. */
export function tukeyMultiplier(groups: number, degreesOfFreedom: number, confidence = 0.95): number {
  const key = `${groups} ${degreesOfFreedom} ${confidence}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const multiplier = studentizedRangeQuantile(confidence, groups, degreesOfFreedom) / Math.SQRT2;
  if (known.size >= mostKnown) known.clear();
  known.set(key, multiplier);
  return multiplier;
}

/**
 * One difference between two of several means, with an interval that holds for all pairs at once. With unequal
 * standard errors this is Tukey–Kramer, which covers at least as often as it says.
 *
 *     d ± q(1 − α; k, ν)/√2 · se(d)
 *
 * @param estimate          d, scalar
 * @param standardError     of d, scalar
 * @param groups            k, scalar
 * @param degreesOfFreedom  ν, scalar
 * @param multiplier        q/√2, where the caller has it for several pairs
 * @returns                 {estimate, interval, pValue}
 * @throws DomainError for a standard error that is not above 0, and as the studentized range
 *
 * Valid:    k ≥ 2, ν ≥ 1
 * Accuracy: as `studentizedRangeCdf`
 * Source:   NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.1; A. J. Hayter, Ann. Statist. 12 (1984) 61
 * @example
 * tukeyDifference(0.5, 0.0667, 4, 9).pValue // => 0.000177
 */
export function tukeyDifference(
  estimate: number,
  standardError: number,
  groups: number,
  degreesOfFreedom: number,
  multiplier = tukeyMultiplier(groups, degreesOfFreedom),
): SimultaneousDifference {
  inRange("standardError", standardError, { min: Number.MIN_VALUE, max: Number.MAX_VALUE });
  const reach = multiplier * standardError;
  const q = (Math.abs(estimate) / standardError) * Math.SQRT2;
  return {
    estimate,
    interval: [estimate - reach, estimate + reach],
    pValue: 1 - studentizedRangeCdf(q, groups, degreesOfFreedom),
  };
}
