import { DomainError } from "../../domain-error.ts";
import { type ErrorDistribution, errorDistributions } from "../distribution/error-distribution.ts";
import { intervalLog } from "../distribution/interval-log.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { climb, type Surface } from "../numeric/climb.ts";
import { householderQr } from "../numeric/qr.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import { type Column, interceptTerm } from "./model-matrix.ts";

/** How a linear predictor becomes a probability: F of P(Y ≤ j) = F(θⱼ − xβ). */
export const links = ["logit", "probit", "cloglog"] as const;
export type Link = (typeof links)[number];

export const linkDistributions: Readonly<Record<Link, ErrorDistribution>> = {
  logit: errorDistributions.loglogistic,
  probit: errorDistributions.lognormal,
  cloglog: errorDistributions.weibull,
};

export interface OrderedEstimate {
  readonly term: string;
  readonly estimate: number;
  readonly standardError: number;
}

/** Ordered answers, ready to be fitted. */
export interface OrderedData {
  /** n places among the steps, 0 the least; every step up to `steps` occurs. */
  readonly answers: readonly number[];
  readonly steps: number;
  /** Columns without an intercept, none a combination of the others. */
  readonly columns: readonly Column[];
  readonly weights: readonly number[];
  /** Of each threshold: the steps below and above it. */
  readonly thresholds: readonly string[];
}

export interface ProportionalOddsFit {
  /** Thresholds first, then the columns kept. */
  readonly coefficients: readonly OrderedEstimate[];
  readonly logLikelihood: number;
  /** Σ of the weights. */
  readonly count: number;
  /** Of the coefficients, in their order. */
  readonly covariance: readonly Vector[];
}

/**
 * Puts ordered answers in order: steps that nobody gave are left out, columns that say nothing new (the intercept
 * among them, which the thresholds stand for) and rows of no weight as well.
 */
export function orderedData(
  answers: readonly string[],
  levels: readonly string[],
  columns: readonly Column[],
  weights: readonly number[] = answers.map(() => 1),
): OrderedData {
  const strange = answers.findIndex((a) => !levels.includes(a));
  if (strange >= 0)
    throw new DomainError({
      code: "unknown-name",
      field: `rows[${strange}].value`,
      value: answers[strange],
      limits: { allowed: levels },
    });
  const rows = answers.flatMap((_, i) => (at(weights, i) > 0 ? [i] : []));
  const given = levels.filter((level) => rows.some((i) => answers[i] === level));
  if (given.length < 2)
    throw new DomainError({ code: "no-variation", field: "rows.value", value: given[0] ?? null });
  const cut = columns.map((c) => ({ ...c, values: rows.map((i) => at(c.values, i)) }));
  const constant = rows.map(() => 1);
  const { kept } = householderQr([constant, ...cut.map((c) => c.values)]);
  return {
    answers: rows.map((i) => given.indexOf(answers[i] ?? "")),
    steps: given.length,
    columns: cut.filter((c, j) => kept.includes(j + 1) && c.term !== interceptTerm),
    weights: rows.map((i) => at(weights, i)),
    thresholds: given.slice(1).map((above, j) => `${given[j]}|${above}`),
  };
}

/** Thresholds at the shares seen, coefficients at 0. */
export function orderedStart(data: OrderedData, d: ErrorDistribution): Float64Array {
  const total = sum(data.weights);
  const below = (j: number): number => sum(data.weights.filter((_, i) => at(data.answers, i) <= j));
  return Float64Array.from({ length: data.steps - 1 + data.columns.length }, (_, j) =>
    j < data.steps - 1 ? d.quantile(below(j) / total) : 0,
  );
}

/** ln L in (θ, β), where it is concave; −∞ where thresholds are out of order. `shift` is added to each row's xβ. */
export function orderedLikelihood(
  data: OrderedData,
  d: ErrorDistribution,
  x: Vector,
  shift: (row: number) => number = () => 0,
): Surface {
  const { answers, steps, columns, weights } = data;
  const p = x.length;
  const cuts = steps - 1;
  for (let j = 1; j < cuts; j++)
    if (!(at(x, j) > at(x, j - 1)))
      return { log: Number.NEGATIVE_INFINITY, gradient: new Float64Array(p), information: [] };
  const gradient = new Float64Array(p);
  const information = Array.from({ length: p }, () => new Float64Array(p));
  let log = 0;
  answers.forEach((answer, i) => {
    let predictor = shift(i);
    columns.forEach((c, k) => {
      predictor += at(c.values, i) * at(x, cuts + k);
    });
    const ends = [answer - 1, answer].filter((j) => j >= 0 && j < cuts);
    const place = (j: number): number | null => (ends.includes(j) ? at(x, j) - predictor : null);
    const piece = intervalLog(d, place(answer - 1), place(answer));
    const weight = at(weights, i);
    const along = (e: number, k: number): number =>
      k < cuts ? (ends[e] === k ? 1 : 0) : -at((columns[k - cuts] as Column).values, i);
    log += weight * piece.log;
    piece.slopes.forEach((slope, e) => {
      for (let k = 0; k < p; k++) gradient[k] = at(gradient, k) + weight * slope * along(e, k);
      piece.curves[e]?.forEach((curve, f) => {
        if (curve === 0) return;
        information.forEach((row, k) => {
          const mine = weight * curve * along(e, k);
          if (mine !== 0) for (let l = 0; l < p; l++) row[l] = at(row, l) - mine * along(f, l);
        });
      });
    });
  });
  return { log, gradient, information };
}

/** Why there is no largest likelihood. */
export const notFixed = (): DomainError =>
  new DomainError({
    code: "no-convergence",
    field: "rows",
    value: null,
    because: "One level stands above another in every answer, so that the odds between them have no end.",
  });

/** Names of thresholds and coefficients, in the order of the parameters. */
export const namesOf = (data: OrderedData): string[] => [
  ...data.thresholds,
  ...data.columns.map((c) => c.name),
];

/**
 * The proportional-odds model of ordered answers by maximum likelihood.
 *
 *     P(Y ≤ j) = F(θⱼ − xβ)
 *
 * A coefficient above 0 moves answers up the scale. Standard errors are from the observed information.
 *
 * @param data  as `orderedData` makes it
 * @param link  `logit` (proportional odds), `probit` or `cloglog`
 * @returns     thresholds and coefficients with standard errors, log-likelihood
 * @throws DomainError when answers are separated by a column, so that there is no largest likelihood
 *
 * Valid:    2 steps or more
 * Accuracy: 1e-7 absolute in coefficients
 * Source:   P. McCullagh, J. R. Statist. Soc. B 42 (1980) 109
 */
export function fitProportionalOdds(data: OrderedData, link: Link = "logit"): ProportionalOddsFit {
  const d = linkDistributions[link];
  const found = climb(orderedStart(data, d), (x) => orderedLikelihood(data, d, x));
  if (found === "flat" || found === "endless") throw notFixed();
  const covariance = cholesky(found.top.information)?.inverse();
  const errors = covariance?.map((row, i) => Math.sqrt(at(row, i)));
  // An odds ratio beyond e¹⁵ is a likelihood that still climbs, too slowly to see.
  if (covariance === undefined || errors === undefined || errors.some((e) => !(e < 100))) throw notFixed();
  return {
    coefficients: namesOf(data).map((term, i) => ({
      term,
      estimate: at(found.x, i),
      standardError: at(errors, i),
    })),
    logLikelihood: found.top.log,
    count: sum(data.weights),
    covariance,
  };
}
