import { cholesky } from "./cholesky.ts";
import { climb, type Surface } from "./climb.ts";
import type { ErrorDistribution } from "./error-distribution.ts";
import { intervalLog } from "./interval-log.ts";
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
import { at, type Vector } from "./vector.ts";

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

/** ln L of thresholds, coefficients and ln τ. */
function judgedLog(data: OrderedData, judges: Grouping, d: ErrorDistribution, x: Vector): number {
  const cuts = data.steps - 1;
  for (let j = 1; j < cuts; j++) if (!(at(x, j) > at(x, j - 1))) return Number.NEGATIVE_INFINITY;
  const perJudge = Array.from({ length: judges.groups }, (): Row[] => []);
  data.answers.forEach((answer, i) => {
    const predictor = data.columns.reduce((total, c, k) => total + at(c.values, i) * at(x, cuts + k), 0);
    perJudge[at(judges.of, i)]?.push({
      from: answer > 0 ? at(x, answer - 1) - predictor : null,
      to: answer < cuts ? at(x, answer) - predictor : null,
      weight: at(data.weights, i),
    });
  });
  const deviation = Math.exp(at(x, x.length - 1));
  return perJudge.reduce((total, rows) => total + judgeShare(rows, d, deviation), 0);
}

/** A log-likelihood with differences for its derivatives, damped until a top lies ahead. */
function numericSurface(log: (x: Float64Array) => number, x: Float64Array): Surface {
  const nudge = 1e-3;
  const moved = (...steps: readonly (readonly [number, number])[]): number => {
    const next = x.slice();
    for (const [i, by] of steps) next[i] = at(next, i) + by * nudge;
    return log(next);
  };
  const here = log(x);
  const ups = Array.from(x, (_, i) => moved([i, 1]));
  const downs = Array.from(x, (_, i) => moved([i, -1]));
  const second = (i: number, j: number): number =>
    i === j
      ? (2 * here - at(ups, i) - at(downs, i)) / nudge ** 2
      : (moved([i, 1], [j, -1]) + moved([i, -1], [j, 1]) - moved([i, 1], [j, 1]) - moved([i, -1], [j, -1])) /
        (4 * nudge ** 2);
  const information = Array.from(x, () => new Float64Array(x.length));
  information.forEach((row, i) => {
    for (let j = 0; j <= i; j++) {
      row[j] = second(i, j);
      (information[j] as Float64Array)[i] = at(row, j); // square
    }
  });
  const gradient = Float64Array.from(x, (_, i) => (at(ups, i) - at(downs, i)) / (2 * nudge));
  for (let damping = 0; cholesky(information) === undefined && damping < 60; damping++) {
    information.forEach((row, i) => {
      row[i] = Math.abs(at(row, i)) + 2 ** damping * 1e-3;
    });
  }
  return { log: here, gradient, information };
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
  const start = [...plain.coefficients.map((c) => c.estimate), Math.log(0.5)];
  const log = (x: Float64Array): number =>
    at(x, x.length - 1) > 5 ? Number.NEGATIVE_INFINITY : judgedLog(data, judges, d, x);
  const found = climb(Float64Array.from(start), (x) => numericSurface(log, x));
  if (found === "endless") throw notFixed();
  const deviation = found === "flat" ? 0 : Math.exp(at(found.x, found.x.length - 1));
  if (found === "flat" || deviation < noShift) return { ...plain, judgeDeviation: 0 };
  const covariance = cholesky(found.top.information)?.inverse();
  if (covariance === undefined) throw notFixed();
  return {
    coefficients: namesOf(data).map((term, i) => ({
      term,
      estimate: at(found.x, i),
      standardError: Math.sqrt(at(covariance[i] as Vector, i)), // one row a parameter
    })),
    logLikelihood: found.top.log,
    count: plain.count,
    covariance,
    judgeDeviation: deviation,
  };
}
