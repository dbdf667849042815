import { DomainError } from "../../domain-error.ts";
import {
  type ErrorDistribution,
  errorDistributions,
  type TimeDistribution,
} from "../distribution/error-distribution.ts";
import type { Column } from "../model/model-matrix.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { climb, type Surface, type Top } from "../numeric/climb.ts";
import { at, mean, squaredDeviations, sum, type Vector } from "../numeric/vector.ts";
import { spanLikelihood, type TimeSpan } from "./span-likelihood.ts";

export interface Estimate {
  readonly term: string;
  readonly estimate: number;
  readonly standardError: number;
}

export interface AcceleratedTimeFit {
  /** Those of the columns, then `Log(scale)` where it is estimated. */
  readonly coefficients: readonly Estimate[];
  readonly scale: number;
  readonly logLikelihood: number;
  /** Of the coefficients, in their order. */
  readonly covariance: readonly Vector[];
}

const notReached = (because: string): DomainError =>
  new DomainError({ code: "no-convergence", field: "times", value: null, because });

function checkSpan({ left, right }: TimeSpan, i: number): void {
  if (!(left >= 0) || left === Number.POSITIVE_INFINITY)
    throw new DomainError({
      code: "out-of-range",
      field: `times[${i}].left`,
      value: left,
      limits: { min: 0 },
    });
  if (right !== null && !(right >= left && right > 0))
    throw new DomainError({
      code: "out-of-range",
      field: `times[${i}].right`,
      value: right,
      limits: { min: left },
    });
}

/** A first guess: the middle of the times on their logarithmic scale, and their spread. */
function start(spans: readonly TimeSpan[], columns: number, d: ErrorDistribution): Float64Array {
  const middles = spans.map(({ left, right }) =>
    Math.log(left === 0 ? (right ?? 1) / 2 : right === null ? left : Math.sqrt(left * right)),
  );
  const spread = Math.sqrt(squaredDeviations(middles) / middles.length) || 1;
  const gamma = d.fixedScale ? 1 : 1 / spread;
  return Float64Array.from({ length: columns + (d.fixedScale ? 0 : 1) }, (_, i) =>
    i === 0 ? gamma * mean(middles) : i === columns ? gamma : 0,
  );
}

/** The top, or why there is none. */
function topOf(start: Float64Array, see: (x: Float64Array) => Surface): Top {
  const found = climb(start, see);
  if (found === "flat") throw notReached("The data do not fix all of the coefficients.");
  if (found === "endless") throw notReached("The likelihood has no top here.");
  return found;
}

/**
 * An accelerated failure time model of times known to lie between two looks, by maximum likelihood.
 *
 *     ln T = Xβ + σW,   L = Π [F(w_right) − F(w_left)],   w = (ln t − xβ)/σ
 *
 * A time seen exactly counts with its density for T itself; one not yet seen with its upper tail. Standard errors are
 * from the observed information of (β, ln σ).
 *
 * @param spans         n spans of time, in one unit
 * @param columns       columns of n numbers, the intercept first
 * @param distribution  weibull, lognormal, loglogistic or exponential (σ = 1)
 * @returns             coefficients with standard errors, scale, log-likelihood
 * @throws DomainError for looks out of order, and when the data do not fix the coefficients
 *
 * Valid:    times > 0
 * Accuracy: estimates 1e-7, standard errors 1e-6 relative
 * Source:   J. D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time Data (2002), ch. 3
 */
export function fitAcceleratedTime(
  spans: readonly TimeSpan[],
  columns: readonly Column[],
  distribution: TimeDistribution,
): AcceleratedTimeFit {
  spans.forEach(checkSpan);
  const d = errorDistributions[distribution];
  const rows = spans.map((_, i) => Float64Array.from(columns, (c) => at(c.values, i)));
  const surface = spanLikelihood(spans, rows, d);
  const see = (x: Float64Array): Surface =>
    !d.fixedScale && !(at(x, x.length - 1) > 0)
      ? { log: Number.NEGATIVE_INFINITY, gradient: x, information: [] }
      : surface(x);
  const { x, top } = topOf(start(spans, columns.length, d), see);
  const gamma = d.fixedScale ? 1 : at(x, x.length - 1);
  const names = [...columns.map((c) => c.name), ...(d.fixedScale ? [] : ["Log(scale)"])];
  const estimates = names.map((_, i) => (i < columns.length ? at(x, i) / gamma : -Math.log(gamma)));
  const covariance = covarianceOf(top, estimates, gamma, columns.length);
  return {
    coefficients: names.map((term, i) => ({
      term,
      estimate: at(estimates, i),
      standardError: Math.sqrt(at(covariance[i] as Vector, i)), // one row a name
    })),
    scale: 1 / gamma,
    logLikelihood: top.log,
    covariance,
  };
}

/** Carries the information from (θ, γ) to (β, ln σ), θ = γβ and γ = e^−ln σ; the slope is nought, so this is exact. */
function covarianceOf(
  top: Surface,
  estimates: readonly number[],
  gamma: number,
  columns: number,
): Float64Array[] {
  const jacobian = (i: number, j: number): number => {
    if (j < columns) return i === j ? gamma : 0;
    return i < columns ? -gamma * at(estimates, i) : -gamma;
  };
  const all = estimates.map((_, i) => i);
  const information = all.map((a) =>
    all.map((b) =>
      sum(
        all.flatMap((i) =>
          all.map((j) => jacobian(i, a) * at(top.information[i] as Vector, j) * jacobian(j, b)),
        ),
      ),
    ),
  );
  const solver = cholesky(information);
  if (solver === undefined) throw notReached("The data do not fix all of the coefficients.");
  return solver.inverse();
}
