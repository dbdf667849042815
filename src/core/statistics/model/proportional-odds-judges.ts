import type { ErrorDistribution } from "../distribution/error-distribution.ts";
import { intervalLog } from "../distribution/interval-log.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { dot } from "../numeric/lower-triangle.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import type { Grouping } from "./mixed-equations.ts";
import {
  fitProportionalOdds,
  type Link,
  linkDistributions,
  namesOf,
  notFixed,
  type OrderedData,
  type ProportionalOddsFit,
} from "./proportional-odds.ts";

export interface JudgedOddsFit extends ProportionalOddsFit {
  /** Standard deviation of the judges' own shifts; 0 where the answers show none. */
  readonly judgeDeviation: number;
}

interface Row {
  readonly from: number | null;
  readonly to: number | null;
  readonly weight: number;
}

/** One judge's share of the likelihood, his shift b = τu integrated out by Laplace's approximation about its peak. */
function judgeShare(rows: readonly Row[], d: ErrorDistribution, deviation: number): number {
  let u = 0;
  let curve = 1;
  let log = 0;
  for (let pass = 0; pass < 100; pass++) {
    let slope = -u;
    [curve, log] = [1, -0.5 * u * u];
    for (const { from, to, weight } of rows) {
      const shift = deviation * u;
      const piece = intervalLog(d, from === null ? null : from - shift, to === null ? null : to - shift);
      log += weight * piece.log;
      for (const s of piece.slopes) slope -= deviation * weight * s;
      for (const c of piece.curves.flat()) curve -= deviation ** 2 * weight * c;
    }
    const step = slope / curve;
    if (Math.abs(step) < 1e-11) break;
    u += Math.max(-2, Math.min(2, step));
  }
  return log - 0.5 * Math.log(curve);
}

/** The ends of each answer under the fixed part, by judge. */
function rowsOf(data: OrderedData, judges: Grouping, x: Vector): Row[][] {
  const cuts = data.steps - 1;
  const perJudge = Array.from({ length: judges.groups }, (): Row[] => []);
  data.answers.forEach((answer, i) => {
    const predictor = data.columns.reduce((total, c, k) => total + at(c.values, i) * at(x, cuts + k), 0);
    perJudge[at(judges.of, i)]?.push({
      from: answer > 0 ? at(x, answer - 1) - predictor : null,
      to: answer < cuts ? at(x, answer) - predictor : null,
      weight: at(data.weights, i),
    });
  });
  return perJudge;
}

/** ln L of thresholds, coefficients and ln τ. */
function judgedLog(data: OrderedData, judges: Grouping, d: ErrorDistribution, x: Vector): number {
  for (let j = 1; j < data.steps - 1; j++) if (!(at(x, j) > at(x, j - 1))) return Number.NEGATIVE_INFINITY;
  const deviation = Math.exp(at(x, x.length - 1));
  return rowsOf(data, judges, x).reduce((total, rows) => total + judgeShare(rows, d, deviation), 0);
}

/** Whether a little shift of judges would raise the likelihood: its slope in τ² at 0, ½ Σ [(Σ s)² + Σ s′]. */
function shiftsHelp(data: OrderedData, judges: Grouping, d: ErrorDistribution, x: Vector): boolean {
  const sums = Array.from({ length: judges.groups }, () => [0, 0] as [number, number]);
  rowsOf(data, judges, x).forEach((rows, j) => {
    for (const { from, to, weight } of rows) {
      const piece = intervalLog(d, from, to);
      const mine = sums[j] as [number, number]; // one a judge
      mine[0] += weight * sum(piece.slopes);
      mine[1] += weight * sum(piece.curves.flat());
    }
  });
  return sum(sums.map(([slope, curve]) => slope ** 2 + curve)) > 0;
}

/** Central differences of the logarithm. */
function gradientOf(log: (x: Float64Array) => number, x: Float64Array): Float64Array {
  return x.map((_, i) => (moved(log, x, [i, 1]) - moved(log, x, [i, -1])) / (2 * nudge));
}

const nudge = 1e-3;

function moved(
  log: (x: Float64Array) => number,
  x: Float64Array,
  ...steps: readonly (readonly [number, number])[]
): number {
  const next = x.slice();
  for (const [i, by] of steps) next[i] = at(next, i) + by * nudge;
  return log(next);
}

function informationOf(log: (x: Float64Array) => number, x: Float64Array): Float64Array[] {
  const information = Array.from(x, () => new Float64Array(x.length));
  const signs = [
    [1, -1],
    [-1, 1],
    [1, 1],
    [-1, -1],
  ] as const;
  information.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      const second = sum(signs.map(([s, t]) => s * t * moved(log, x, [i, s], [j, t])));
      row[j] = -second / (4 * nudge ** 2);
      (information[j] as Float64Array)[i] = at(row, j); // square
    }
  });
  return information;
}

/** Climbs by a quasi-Newton method (BFGS) from a place whose covariance is about known; null where it does not end. */
function quasiNewton(
  log: (x: Float64Array) => number,
  start: Float64Array,
  covariance: readonly Float64Array[],
): Float64Array | null {
  const n = start.length;
  const inverse = covariance.map((row) => row.slice());
  let [x, here, slope] = [start, log(start), gradientOf(log, start)];
  for (let pass = 0; pass < 100; pass++) {
    const step = Float64Array.from(inverse, (row) => dot(row, slope, n));
    if (dot(step, slope, n) < 1e-11) return x;
    let share = 1;
    let next = x;
    for (; share > 1e-8; share /= 2) {
      next = x.map((v, i) => v + share * at(step, i));
      if (log(next) >= here) break;
    }
    if (share <= 1e-8) return x;
    const nextSlope = gradientOf(log, next);
    const [s, y] = [next.map((v, i) => v - at(x, i)), slope.map((v, i) => v - at(nextSlope, i))];
    updateInverse(inverse, s, y);
    [x, here, slope] = [next, log(next), nextSlope];
  }
  return null;
}

/** The BFGS update of an inverse curvature by a step s and the fall y of the slope along it. */
function updateInverse(inverse: readonly Float64Array[], s: Float64Array, y: Float64Array): void {
  const n = s.length;
  const along = dot(s, y, n);
  if (!(along > 1e-14)) return;
  const carried = Float64Array.from(inverse, (row) => dot(row, y, n));
  const factor = (1 + dot(y, carried, n) / along) / along;
  inverse.forEach((row, i) => {
    for (let j = 0; j < n; j++)
      row[j] =
        at(row, j) +
        factor * at(s, i) * at(s, j) -
        (at(carried, i) * at(s, j) + at(s, i) * at(carried, j)) / along;
  });
}

/** Below this many steps of the logit scale, a judge's shift counts as none. */
const noShift = 1e-3;

/**
 * The proportional-odds model with a shift of each judge's own along the scale, normal, by Laplace's approximation.
 *
 *     P(Y ≤ j) = F(θⱼ − xβ − b),   b ~ N(0, τ²)
 *
 * @param data    as `orderedData` makes it
 * @param judges  paired with its answers
 * @param link    `logit`, `probit` or `cloglog`
 * @returns       thresholds, coefficients and τ
 * @throws DomainError when answers are separated, so that there is no largest likelihood
 *
 * Valid:    2 judges or more; few judges say little of τ
 * Accuracy: 1e-5 in coefficients against the same approximation elsewhere
 * Source:   R. H. B. Christensen, Cumulative link models for ordinal regression (2018), section 4; Laplace's method with the exact second
 *           derivative
 */
export function fitProportionalOddsJudges(
  data: OrderedData,
  judges: Grouping,
  link: Link = "logit",
): JudgedOddsFit {
  const d = linkDistributions[link];
  const plain = fitProportionalOdds(data, link);
  const fixed = plain.coefficients.map((c) => c.estimate);
  if (!shiftsHelp(data, judges, d, fixed)) return { ...plain, judgeDeviation: 0 };
  const log = (x: Float64Array): number =>
    at(x, x.length - 1) > 5 ? Number.NEGATIVE_INFINITY : judgedLog(data, judges, d, x);
  const about = [
    ...plain.covariance.map((row) => Float64Array.from([...Array.from(row), 0])),
    new Float64Array(fixed.length + 1),
  ];
  (about[fixed.length] as Float64Array)[fixed.length] = 0.25;
  const top = quasiNewton(log, Float64Array.from([...fixed, Math.log(0.5)]), about);
  if (top === null) throw notFixed();
  const deviation = Math.exp(at(top, fixed.length));
  if (deviation < noShift) return { ...plain, judgeDeviation: 0 };
  const covariance = cholesky(informationOf(log, top))?.inverse();
  if (covariance === undefined) throw notFixed();
  return {
    coefficients: namesOf(data).map((term, i) => ({
      term,
      estimate: at(top, i),
      standardError: Math.sqrt(at(covariance[i] as Vector, i)), // one row a parameter
    })),
    logLikelihood: log(top),
    count: plain.count,
    covariance,
    judgeDeviation: deviation,
  };
}
