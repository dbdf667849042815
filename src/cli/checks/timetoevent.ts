import {
  errorDistributions,
  type TimeDistribution,
  timeDistributions,
} from "../../core/statistics/distribution/error-distribution.ts";
import { modelColumns } from "../../core/statistics/model/model-matrix.ts";
import { sum } from "../../core/statistics/numeric/vector.ts";
import { type AcceleratedTimeFit, fitAcceleratedTime } from "../../core/statistics/times/accelerated-time.ts";
import {
  hazardRatioEfron,
  kaplanMeierMedian,
  logRankTest,
  type WatchedTime,
} from "../../core/statistics/times/right-censored.ts";
import type { TimeSpan } from "../../core/statistics/times/span-likelihood.ts";
import { turnbull } from "../../core/statistics/times/turnbull.ts";
import { type CaseModel, cell, modelDataOf, modelOf, numberCell, rowsOf } from "./model-rows.ts";
import { type Context, type Json, NotReadable, type Row, type Topic } from "./topic.ts";

const isEmpty = (text: string): boolean => text === "" || text === "NA";

/** `left` and `right` of a look, or `time` with whether it happened then. */
function spanOf(row: Row, model: CaseModel): TimeSpan {
  const weight = model.weights === null ? 1 : numberCell(row, model.weights);
  const { left, right, time, event } = model.time;
  if (left !== undefined && right !== undefined)
    return {
      left: isEmpty(cell(row, left)) ? 0 : numberCell(row, left),
      right: isEmpty(cell(row, right)) ? null : numberCell(row, right),
      weight,
    };
  if (time === undefined || event === undefined) throw new NotReadable("model.time names no columns");
  const seen = numberCell(row, time);
  return { left: seen, right: happened(row, event) ? seen : null, weight };
}

function happened(row: Row, column: string): boolean {
  const text = cell(row, column);
  if (!["0", "1", "TRUE", "FALSE", "true", "false"].includes(text))
    throw new NotReadable(`${column} holds "${text}", not whether it happened`);
  return text === "1" || text.toLowerCase() === "true";
}

function distributionOf(given: Json): TimeDistribution {
  const name = String((given.model as Json).distribution ?? given.dist);
  const found = timeDistributions.find((d) => d === name);
  if (found === undefined) throw new NotReadable(`model.distribution ${name} is not known`);
  return found;
}

/** With no terms there is one curve, and its own figures. */
function curveOf(fit: AcceleratedTimeFit, distribution: TimeDistribution): Json {
  const { quantile } = errorDistributions[distribution];
  const location = fit.coefficients[0]?.estimate ?? Number.NaN;
  const timeAt = (p: number): number => Math.exp(location + fit.scale * quantile(p));
  return {
    shape: 1 / fit.scale,
    weibull_scale: Math.exp(location),
    median: timeAt(0.5),
    p10: timeAt(0.1),
  };
}

function acceleratedTime(given: Json, context: Context): Json {
  const model = modelOf(given);
  const rows = rowsOf(given, model, context);
  const spans = rows.map((row) => spanOf(row, model));
  const distribution = distributionOf(given);
  const data = modelDataOf(rows, model);
  const fit = fitAcceleratedTime(spans, modelColumns(model.terms, data), distribution);
  const nothing = fitAcceleratedTime(spans, modelColumns([], data), distribution);
  return {
    coefficients: fit.coefficients.map(({ term, estimate, standardError }) => ({
      term,
      estimate,
      se: standardError,
    })),
    scale: fit.scale,
    loglik: fit.logLikelihood,
    loglik_null: nothing.logLikelihood,
    n: sum(spans.map((s) => s.weight ?? 1)),
    ...(model.terms.length === 0 ? curveOf(fit, distribution) : {}),
  };
}

function npmle(given: Json, context: Context): Json {
  const model = modelOf(given);
  const found = turnbull(rowsOf(given, model, context).map((row) => spanOf(row, model)));
  return { intervals: found.intervals, loglik: found.logLikelihood };
}

function watchedTimes(rows: readonly Row[], model: CaseModel, term: string): WatchedTime[] {
  const { time, event } = model.time;
  if (time === undefined || event === undefined) throw new NotReadable("model.time names no columns");
  return rows.map((row) => ({
    time: numberCell(row, time),
    event: happened(row, event),
    group: cell(row, term),
  }));
}

function rightCensored(given: Json, context: Context): Json {
  const model = modelOf(given);
  const [term] = model.terms;
  const levels = term === undefined ? undefined : model.factors[term];
  if (term === undefined || levels?.length !== 2 || model.weights !== null)
    throw new NotReadable("the model is not one factor of two levels without weights");
  const times = watchedTimes(rowsOf(given, model, context), model, term);
  const test = logRankTest(times, levels);
  const ratio = hazardRatioEfron(times, levels[1] ?? "");
  return {
    medians: levels.map((level) => {
      const found = kaplanMeierMedian(times.filter((t) => t.group === level));
      return {
        group: `${term}=${level}`,
        n: found.count,
        events: found.events,
        median: found.median,
        lower95: found.lower,
        upper95: found.upper,
      };
    }),
    logrank: {
      chisq: test.statistic,
      df: test.degreesOfFreedom,
      p: test.pValue,
      observed: test.observed,
      expected: test.expected,
    },
    cox_efron: { coef: ratio.coefficient, se: ratio.standardError, loglik: ratio.logLikelihood },
  };
}

export const topic: Topic = {
  kinds: { aft: acceleratedTime, turnbull: npmle, "right-censored": rightCensored },
};
