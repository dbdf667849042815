import { DomainError, inRange } from "../../domain-error.ts";
import { meanOverScale } from "../distribution/chi-square.ts";
import { normalCdf } from "../distribution/normal.ts";
import { studentTTails, studentTUpperQuantile } from "../distribution/student-t.ts";

/** A difference as estimated. */
export interface EstimatedDifference {
  readonly difference: number;
  readonly standardError: number;
  readonly degreesOfFreedom: number;
}
/** Differences between `low` and `high` are too small to matter. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}
export interface Summary {
  readonly mean: number;
  readonly deviation: number;
  readonly count: number;
}

/**
 * Mean, standard deviation and count of readings.
 *
 * @param values  n ≥ 2
 * @returns       mean, deviation with n − 1, and n
 * @throws DomainError for fewer than two readings
 * @example
 * summaryOf([1, 2, 3, 4]) // => { mean: 2.5, deviation: 1.29099, count: 4 }
 */
export function summaryOf(values: readonly number[]): Summary {
  const count = values.length;
  if (count < 2)
    throw new DomainError({ code: "not-enough-data", field: "values", value: count, limits: { min: 2 } });
  const mean = values.reduce((sum, x) => sum + x, 0) / count;
  const squares = values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
  return { mean, deviation: Math.sqrt(squares / (count - 1)), count };
}

/**
 * The difference of two groups whose scatter may differ.
 *
 *     se² = s1²/n1 + s2²/n2,  ν = se⁴/((s1²/n1)²/(n1 − 1) + (s2²/n2)²/(n2 − 1))
 *
 * @param first   mean, deviation, count
 * @param second  mean, deviation, count
 * @returns       first minus second
 * @throws DomainError when neither group varies
 *
 * Valid:    independent readings, counts from 2
 * Accuracy: full digits
 * Source:   B. L. Welch, Biometrika 34 (1947) 28
 * @example
 * welchDifference({ mean: 5.25, deviation: 0.95, count: 95 }, { mean: 5.22, deviation: 0.83, count: 89 }) // => { standardError: 0.131303, degreesOfFreedom: 181.134 }
 */
export function welchDifference(first: Summary, second: Summary): EstimatedDifference {
  const [a, b] = [first.deviation ** 2 / first.count, second.deviation ** 2 / second.count];
  return estimated(
    first.mean - second.mean,
    Math.sqrt(a + b),
    (a + b) ** 2 / (a ** 2 / (first.count - 1) + b ** 2 / (second.count - 1)),
  );
}

/**
 * The difference of two groups that scatter alike.
 *
 *     s² = ((n1 − 1)s1² + (n2 − 1)s2²)/ν,  se² = s²(1/n1 + 1/n2),  ν = n1 + n2 − 2
 *
 * @param first   mean, deviation, count
 * @param second  mean, deviation, count
 * @returns       first minus second
 * @throws DomainError when neither group varies
 *
 * Valid:    independent readings of one scatter, counts from 2
 * Accuracy: full digits
 * Source:   Student's test of two samples, as NIST/SEMATECH e-Handbook 1.3.5.3
 * @example
 * pooledDifference({ mean: 3, deviation: 1, count: 10 }, { mean: 2, deviation: 1, count: 10 }) // => { difference: 1, standardError: 0.447214, degreesOfFreedom: 18 }
 */
export function pooledDifference(first: Summary, second: Summary): EstimatedDifference {
  const freedom = first.count + second.count - 2;
  const squares = (first.count - 1) * first.deviation ** 2 + (second.count - 1) * second.deviation ** 2;
  return estimated(
    first.mean - second.mean,
    Math.sqrt((squares / freedom) * (1 / first.count + 1 / second.count)),
    freedom,
  );
}

/**
 * The mean difference of pairs.
 *
 *     se = s/√n of first − second,  ν = n − 1
 *
 * @param first   n
 * @param second  n, paired with `first`
 * @returns       first minus second
 * @throws DomainError for lists of unequal length, for fewer than two pairs, and when the differences do not vary
 *
 * Valid:    independent pairs
 * Accuracy: full digits
 * Source:   Student, Biometrika 6 (1908) 1
 * @example
 * pairedDifference([3, 5, 4], [1, 2, 4]) // => { difference: 1.6667, standardError: 0.8819, degreesOfFreedom: 2 }
 */
export function pairedDifference(first: readonly number[], second: readonly number[]): EstimatedDifference {
  if (first.length !== second.length)
    throw new DomainError({
      code: "contradiction",
      field: "second",
      value: second.length,
      because: `There are ${first.length} of the first.`,
    });
  const { mean, deviation, count } = summaryOf(first.map((x, i) => x - (second[i] ?? Number.NaN)));
  return estimated(mean, deviation / Math.sqrt(count), count - 1);
}

function estimated(difference: number, standardError: number, degreesOfFreedom: number): EstimatedDifference {
  if (!(standardError > 0))
    throw new DomainError({ code: "no-variation", field: "values", value: standardError });
  return { difference, standardError, degreesOfFreedom };
}

export interface EquivalenceTest {
  readonly tLow: number;
  readonly tHigh: number;
  /** Against a difference at or below `low`, and at or above `high`. */
  readonly pLow: number;
  readonly pHigh: number;
  /** The larger of the two: both must be small. */
  readonly pValue: number;
  /** 1 − 2·alpha. */
  readonly level: number;
  readonly interval: readonly [number, number];
  readonly equivalent: boolean;
}

function checked({ low, high }: Bounds, alpha: number): void {
  inRange("alpha", alpha, { min: Number.MIN_VALUE, max: 0.5 });
  if (!(low < high))
    throw new DomainError({ code: "contradiction", field: "high", value: high, limits: { min: low } });
}

/**
 * Two one-sided tests: is the difference shown to lie between the bounds?
 *
 *     tL = (d − low)/se,  tH = (d − high)/se;  equivalent when P(T > tL) < α and P(T < tH) < α
 *
 * The same as asking whether the interval at level 1 − 2α lies inside the bounds.
 *
 * @param estimate  difference, standard error and degrees of freedom
 * @param bounds    low < high
 * @param alpha     of each test, scalar
 * @returns         both tests, the interval and the answer
 * @throws DomainError for low ≥ high, alpha outside (0, 0.5], and NaN
 *
 * Valid:    estimates with normal scatter
 * Accuracy: p-values 1e-12 relative
 * Source:   D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657
 * @example
 * twoOneSidedTests({ difference: 0.03, standardError: 0.131302891964, degreesOfFreedom: 181.134367161 }, { low: -0.383568677, high: 0.383568677 }, 0.05).pValue // => 0.00387552
 */
export function twoOneSidedTests(
  estimate: EstimatedDifference,
  bounds: Bounds,
  alpha: number,
): EquivalenceTest {
  checked(bounds, alpha);
  const { difference, standardError, degreesOfFreedom } = estimate;
  const tLow = (difference - bounds.low) / standardError;
  const tHigh = (difference - bounds.high) / standardError;
  const pLow = studentTTails(tLow, degreesOfFreedom).upper;
  const pHigh = studentTTails(tHigh, degreesOfFreedom).lower;
  const reach = studentTUpperQuantile(alpha, degreesOfFreedom) * standardError;
  return {
    tLow,
    tHigh,
    pLow,
    pHigh,
    pValue: Math.max(pLow, pHigh),
    level: 1 - 2 * alpha,
    interval: [difference - reach, difference + reach],
    equivalent: pLow < alpha && pHigh < alpha,
  };
}

/**
 * The chance that two one-sided tests will show equivalence.
 *
 *     E[Φ((high − δ)/se − t·S) − Φ((low − δ)/se + t·S)]⁺ over S² ~ χ²(ν)/ν,  t = t(1 − α; ν)
 *
 * The scatter is not known beforehand, so its estimate is averaged over; a normal approximation is too hopeful.
 *
 * @param plan    true difference δ, standard error and degrees of freedom that the trial will have
 * @param bounds  low < high
 * @param alpha   of each test, scalar
 * @returns       probability, scalar
 * @throws DomainError for low ≥ high, alpha outside (0, 0.5], and NaN
 *
 * Valid:    normal scatter
 * Accuracy: 1e-9 absolute from 2 degrees of freedom
 * Source:   K. F. Phillips, J. Pharmacokinet. Biopharm. 18 (1990) 137
 * @example
 * equivalencePower({ difference: 0, standardError: 0.2581989, degreesOfFreedom: 58 }, { low: -0.7, high: 0.7 }, 0.05) // => 0.699046
 */
export function equivalencePower(plan: EstimatedDifference, bounds: Bounds, alpha: number): number {
  checked(bounds, alpha);
  const t = studentTUpperQuantile(alpha, plan.degreesOfFreedom);
  const above = (bounds.high - plan.difference) / plan.standardError;
  const below = (bounds.low - plan.difference) / plan.standardError;
  const mostScatter = (above - below) / (2 * t); // beyond it no difference passes both tests
  const shown = (s: number) => normalCdf(above - t * s) - normalCdf(below + t * s);
  return meanOverScale(shown, plan.degreesOfFreedom, mostScatter);
}
