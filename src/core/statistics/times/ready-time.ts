import { errorDistributions } from "../distribution/error-distribution.ts";
import { normalQuantile } from "../distribution/normal.ts";
import { factorFrom, modelColumns } from "../model/model-matrix.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import { type AcceleratedTimeFit, fitAcceleratedTime } from "./accelerated-time.ts";
import type { TimeSpan } from "./span-likelihood.ts";

export interface WatchedJar extends TimeSpan {
  readonly group: string;
}

export interface GroupTime {
  readonly group: string;
  /** Half of such jars are ready by then; null where the looks do not fix it. */
  readonly median: number | null;
  readonly interval: readonly [number, number] | null;
  /** One in ten is ready by then. */
  readonly tenth: number | null;
}

export interface TimeRatio {
  readonly of: string;
  readonly to: string;
  readonly ratio: number;
  readonly interval: readonly [number, number];
}

export interface ReadyTime {
  /** Null where no group's times are fixed. */
  readonly fit: AcceleratedTimeFit | null;
  readonly groups: readonly GroupTime[];
  readonly ratios: readonly TimeRatio[];
  readonly identifiable: boolean;
}

const z = normalQuantile(0.975);

/** A group is bounded on both sides when some jar was seen not ready and some jar was seen ready. */
const isBounded = (jars: readonly TimeSpan[]): boolean =>
  jars.some((j) => j.left > 0) && jars.some((j) => j.right !== null);

/** Whether one time in each group would suit every look: then any spread, down to none, suits, and none is fixed. */
const oneTimeSuitsAll = (groups: readonly (readonly TimeSpan[])[]): boolean =>
  groups.every(
    (jars) =>
      Math.max(...jars.map((j) => j.left)) <=
      Math.min(...jars.map((j) => j.right ?? Number.POSITIVE_INFINITY)),
  );

/** An estimate c·b with its standard error, both on the logarithmic scale. */
function combined(fit: AcceleratedTimeFit, weights: Vector): { log: number; error: number } {
  const log = sum(fit.coefficients.map((c, i) => at(weights, i) * c.estimate));
  const variance = sum(
    fit.covariance.flatMap((row, i) => Array.from(row, (v, j) => at(weights, i) * v * at(weights, j))),
  );
  return { log, error: Math.sqrt(variance) };
}

const limits = ({ log, error }: { log: number; error: number }): [number, number] => [
  Math.exp(log - z * error),
  Math.exp(log + z * error),
];

/**
 * The time to ready of jars that were looked at now and then, by group, on one scale of spread.
 *
 *     median = exp(β_group + σ W₀.₅),   ratio of two groups = exp(β_a − β_b)
 *
 * Intervals are 95 %, from the standard errors of the logarithms. The looks fix the times only where, in each group,
 * some jar was seen not ready and some seen ready, and no one time per group suits all looks (then the likelihood
 * rises for ever as the spread goes to nought). Groups that are not bounded are left out of the fit.
 *
 * @param jars   n jars with their looks, in one unit of time
 * @param model  weibull or lognormal
 * @returns      medians, tenths and ratios in the unit of time, and whether all was fixed
 * @throws DomainError for looks out of order
 *
 * Valid:    times > 0
 * Accuracy: as `fitAcceleratedTime`; intervals are approximate for few jars
 * Source:   J. D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time Data (2002), ch. 3
 */
export function readyTime(jars: readonly WatchedJar[], model: "weibull" | "lognormal"): ReadyTime {
  const names = factorFrom(jars.map((j) => j.group)).levels;
  const jarsOf = (group: string): WatchedJar[] => jars.filter((j) => j.group === group);
  const bounded = names.filter((group) => isBounded(jarsOf(group)));
  const fixed = bounded.length > 0 && !oneTimeSuitsAll(bounded.map(jarsOf));
  const used = fixed ? jars.filter((j) => bounded.includes(j.group)) : [];
  const fit = fixed ? fitGroups(used, bounded, model) : null;
  const groups = names.map((group) => {
    const place = bounded.indexOf(group);
    if (fit === null || place < 0) return { group, median: null, interval: null, tenth: null };
    return { group, ...timesOf(fit, place, bounded.length, model) };
  });
  return {
    fit,
    groups,
    ratios: fit === null ? [] : ratiosOf(fit, bounded),
    identifiable: fixed && bounded.length === names.length,
  };
}

function fitGroups(
  jars: readonly WatchedJar[],
  levels: readonly string[],
  model: "weibull" | "lognormal",
): AcceleratedTimeFit {
  const group = { levels, values: jars.map((j) => j.group) };
  const terms = levels.length > 1 ? ["group"] : [];
  return fitAcceleratedTime(jars, modelColumns(terms, { rows: jars.length, factors: { group } }), model);
}

/** Intercept, the group's own coefficient (none for the first), then the scale's. */
const groupWeights = (place: number, groups: number): number[] =>
  Array.from({ length: groups }, (_, i) => (i === 0 || i === place ? 1 : 0));

function timesOf(
  fit: AcceleratedTimeFit,
  place: number,
  groups: number,
  model: "weibull" | "lognormal",
): Omit<GroupTime, "group"> {
  const { quantile } = errorDistributions[model];
  const weights = groupWeights(place, groups);
  const shift = fit.scale * quantile(0.5);
  // The scale enters as its logarithm, along which σ W changes at σ W; its own value is added, not its coefficient.
  const { error } = combined(fit, [...weights, shift]);
  const centre = sum(weights.map((w, i) => w * (fit.coefficients[i]?.estimate ?? Number.NaN)));
  return {
    median: Math.exp(centre + shift),
    interval: limits({ log: centre + shift, error }),
    tenth: Math.exp(centre + fit.scale * quantile(0.1)),
  };
}

function ratiosOf(fit: AcceleratedTimeFit, groups: readonly string[]): TimeRatio[] {
  return groups.flatMap((to, i) =>
    groups.slice(i + 1).map((of, k) => {
      const j = i + 1 + k;
      const weights = groupWeights(j, groups.length).map((w, n) => w - at(groupWeights(i, groups.length), n));
      const found = combined(fit, [...weights, 0]);
      return { of, to, ratio: Math.exp(found.log), interval: limits(found) };
    }),
  );
}
