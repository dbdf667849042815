import type { ErrorDistribution } from "./error-distribution.ts";

/** ln P(left < W ≤ right), with first and second derivatives in those ends that are closed. */
export interface IntervalLog {
  readonly log: number;
  readonly slopes: readonly number[];
  readonly curves: readonly (readonly number[])[];
}

/** log(e^a − e^b) for a ≥ b. */
const logDifference = (a: number, b: number): number => a + Math.log1p(-Math.exp(b - a));

/** From one side only: `sign` is 1 for "up to there" and −1 for "beyond". */
function oneSided(d: ErrorDistribution, w: number, sign: 1 | -1): IntervalLog {
  const log = sign === 1 ? d.logLower(w) : d.logUpper(w);
  const share = Math.exp(d.logDensity(w) - log);
  return { log, slopes: [sign * share], curves: [[sign * share * d.slope(w) - share * share]] };
}

function between(d: ErrorDistribution, left: number, right: number): IntervalLog {
  const log =
    left > 0
      ? logDifference(d.logUpper(left), d.logUpper(right))
      : logDifference(d.logLower(right), d.logLower(left));
  const [l, r] = [Math.exp(d.logDensity(left) - log), Math.exp(d.logDensity(right) - log)];
  return {
    log,
    slopes: [-l, r],
    curves: [
      [-l * d.slope(left) - l * l, l * r],
      [l * r, r * d.slope(right) - r * r],
    ],
  };
}

/**
 * The logarithm of the probability of an interval, without loss in far tails.
 *
 * @param d      distribution of W
 * @param left   scalar, null for −∞
 * @param right  scalar above `left`, null for ∞
 */
export function intervalLog(d: ErrorDistribution, left: number | null, right: number | null): IntervalLog {
  if (left !== null && right !== null) return between(d, left, right);
  if (right !== null) return oneSided(d, right, 1);
  return left === null ? { log: 0, slopes: [], curves: [] } : oneSided(d, left, -1);
}
