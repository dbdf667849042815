import { DomainError } from "../../domain-error.ts";
import { type Grouping, groupingOf } from "../model/mixed-equations.ts";
import { factorFrom, modelColumns } from "../model/model-matrix.ts";
import { type OrderedData, orderedData } from "../model/proportional-odds.ts";
import { fitProportionalOddsJudges, type JudgedOddsFit } from "../model/proportional-odds-judges.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import { pairsOf } from "../several/family-intervals.ts";
import type { Reading } from "./readings.ts";

export interface OddsPair {
  readonly a: string;
  readonly b: string;
  /** Odds of standing above any step, a against b. */
  readonly oddsRatio: number;
  /** Simultaneous, 95 %. */
  readonly interval: readonly [number, number];
  /** P(a above b) − P(b above a) in one block, as the model has it. */
  readonly effect: number;
}

export interface OddsBeside {
  readonly pairs: readonly OddsPair[];
  /** What is random in it: `board`, `judge`, `jar` … */
  readonly random: string;
  readonly deviation: number;
  readonly logLikelihood: number;
}

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** P(Y_a > Y_b) − P(Y_b > Y_a) for shifts β of two answers over the same thresholds. */
export function oddsEffect(thresholds: Vector, a: number, b: number): number {
  const upTo = (shift: number): number[] => [...Array.from(thresholds, (t) => logistic(t - shift)), 1];
  const [ofA, ofB] = [upTo(a), upTo(b)];
  const below = (cumulative: readonly number[], j: number): number => (j === 0 ? 0 : at(cumulative, j - 1));
  return sum(ofA.map((c, j) => (c - below(ofA, j)) * (below(ofB, j) - (1 - at(ofB, j)))));
}

function oddsPairs(
  fit: JudgedOddsFit,
  data: OrderedData,
  compare: string,
  levels: readonly string[],
  multiplier: number,
): OddsPair[] {
  const place = (level: string): number => fit.coefficients.findIndex((c) => c.term === `${compare}${level}`);
  const shift = (level: string): number => fit.coefficients[place(level)]?.estimate ?? 0;
  const covariance = (a: string, b: string): number => {
    const [i, j] = [place(a), place(b)];
    return i < 0 || j < 0 ? 0 : at(fit.covariance[i] as Vector, j); // the baseline varies with nothing
  };
  const thresholds = fit.coefficients.slice(0, data.steps - 1).map((c) => c.estimate);
  return pairsOf(levels).map(([a, b]) => {
    const log = shift(a) - shift(b);
    const reach = multiplier * Math.sqrt(covariance(a, a) + covariance(b, b) - 2 * covariance(a, b));
    return {
      a,
      b,
      oddsRatio: Math.exp(log),
      interval: [Math.exp(log - reach), Math.exp(log + reach)],
      effect: oddsEffect(thresholds, shift(a), shift(b)),
    };
  });
}

/**
 * The proportional-odds model beside the shares of an ordered response: blocks (or jars, where each level came out of
 * several) shift along the scale, the levels shift against each other.
 *
 * @param readings    n readings whose values are places on the scale
 * @param compare     the factor
 * @param levels      its levels in order
 * @param by          what is random: its name, and which one a reading belongs to
 * @param multiplier  of a standard error, for all pairs at once
 * @returns           odds ratios with intervals; null where one level stands above another in every answer, or the
 *                    answers fix no odds
 *
 * Valid:  two steps or more, two blocks or more
 * Source: P. McCullagh, J. R. Statist. Soc. B 42 (1980) 109
 */
export function oddsBeside(
  readings: readonly Reading[],
  compare: string,
  levels: readonly string[],
  by: { readonly name: string; readonly of: (r: Reading) => string | undefined },
  multiplier: number,
): OddsBeside | null {
  const steps = [...new Set(readings.map((r) => r.value))].sort((a, b) => a - b).map(String);
  const factors = { [compare]: { ...factorFrom(readings.map((r) => r.factors[compare] ?? "")), levels } };
  const columns = modelColumns([compare], { rows: readings.length, factors });
  const blocks: Grouping = groupingOf(
    by.name,
    readings.map((r) => by.of(r) ?? ""),
  );
  try {
    const data = orderedData(
      readings.map((r) => String(r.value)),
      steps,
      columns,
    );
    const fit = fitProportionalOddsJudges(data, blocks);
    return {
      pairs: oddsPairs(fit, data, compare, levels, multiplier),
      random: by.name,
      deviation: fit.judgeDeviation,
      logLikelihood: fit.logLikelihood,
    };
  } catch (error) {
    if (error instanceof DomainError && error.detail.code === "no-convergence") return null;
    throw error;
  }
}
