import { DomainError } from "../../core/domain-error.ts";
import { studentizedRangeCdf } from "../../core/statistics/distribution/studentized-range.ts";
import { type AnovaLine, fitLinearModel } from "../../core/statistics/model/linear-model.ts";
import { anovaInStrata } from "../../core/statistics/model/strata.ts";
import { mean, squaredDeviations } from "../../core/statistics/numeric/vector.ts";
import { dunnettCdf, dunnettQuantile } from "../../core/statistics/several/dunnett.ts";
import { tukeyDifference } from "../../core/statistics/several/tukey.ts";
import { type CaseModel, cell, modelDataOf, modelOf, responseOf, rowsOf } from "./model-rows.ts";
import { numberIn, perRow } from "./table.ts";
import { type Context, type Json, NotReadable, type Topic } from "./topic.ts";

const lineOf = (line: AnovaLine) => ({
  term: line.term,
  df: line.degreesOfFreedom,
  ss: line.sumOfSquares,
  ms: line.meanSquare,
  F: line.f,
  p: line.pValue,
});

interface Fitted {
  readonly model: CaseModel;
  readonly response: readonly number[];
  readonly rows: ReturnType<typeof rowsOf>;
  readonly fit: ReturnType<typeof fitLinearModel>;
}

function fitted(given: Json, context: Context): Fitted {
  const model = modelOf(given);
  const rows = rowsOf(given, model, context);
  const response = responseOf(rows, model);
  return { model, rows, response, fit: fitLinearModel(response, model.terms, modelDataOf(rows, model)) };
}

function anova(given: Json, context: Context) {
  const { fit, response } = fitted(given, context);
  return {
    table: fit.table.map(lineOf),
    grand_mean: mean(response),
    residual_sd: Math.sqrt(fit.residual.meanSquare),
  };
}

function strata(given: Json, context: Context) {
  const model = modelOf(given);
  const rows = rowsOf(given, model, context);
  const found = anovaInStrata(responseOf(rows, model), model.terms, model.strata, modelDataOf(rows, model));
  return { strata: Object.fromEntries(found.map(({ stratum, table }) => [stratum, table.map(lineOf)])) };
}

function certified(given: Json, context: Context) {
  const { fit, response } = fitted(given, context);
  const [between, within] = fit.table;
  if (between === undefined || within === undefined) throw new NotReadable("the model is not one way");
  return {
    df_between: between.degreesOfFreedom,
    df_within: within.degreesOfFreedom,
    ss_between: between.sumOfSquares,
    ss_within: within.sumOfSquares,
    F: between.f,
    r_squared: between.sumOfSquares / squaredDeviations(response),
    residual_sd: Math.sqrt(within.meanSquare),
  };
}

interface LevelMean {
  readonly level: string;
  readonly mean: number;
  readonly n: number;
}

function comparedMeans({ model, rows, response }: Fitted): LevelMean[] {
  const { compare } = model;
  const levels = compare === undefined ? undefined : model.factors[compare];
  if (compare === undefined || levels === undefined) throw new NotReadable("model.compare names no factor");
  return levels.map((level) => {
    const mine = response.filter((_, i) => cell(rows[i] ?? {}, compare) === level);
    if (mine.length === 0) throw new DomainError({ code: "not-enough-data", field: compare, value: level });
    return { level, mean: mean(mine), n: mine.length };
  });
}

function tukey(given: Json, context: Context) {
  const all = fitted(given, context);
  const levels = comparedMeans(all);
  const { meanSquare, degreesOfFreedom } = all.fit.residual;
  const pairs = levels.flatMap((earlier, i) =>
    levels.slice(i + 1).map((later) => {
      const error = Math.sqrt(meanSquare * (1 / earlier.n + 1 / later.n));
      const found = tukeyDifference(later.mean - earlier.mean, error, levels.length, degreesOfFreedom);
      return {
        ends: [earlier.level, later.level],
        pair: `${later.level}-${earlier.level}`,
        diff: found.estimate,
        lwr: found.interval[0],
        upr: found.interval[1],
        p_adj: found.pValue,
      };
    }),
  );
  return {
    means: Object.fromEntries(levels.map((l) => [l.level, l.mean])),
    n: Object.fromEntries(levels.map((l) => [l.level, l.n])),
    mse: meanSquare,
    df: degreesOfFreedom,
    pairs: pairs.map(({ ends: _, ...pair }) => pair),
    letters_share: levels.map(({ level }) => ({
      level,
      not_different_from: pairs
        .filter((p) => p.p_adj >= 0.05 && p.ends.includes(level))
        .map((p) => (p.ends[0] === level ? p.ends[1] : p.ends[0])),
    })),
  };
}

function dunnett(given: Json, context: Context) {
  const all = fitted(given, context);
  const means = comparedMeans(all);
  const control = means.find((m) => m.level === all.model.control);
  if (control === undefined) throw new NotReadable("model.control names no level");
  const others = means.filter((m) => m !== control);
  const { meanSquare, degreesOfFreedom } = all.fit.residual;
  const sizes = others.map((m) => m.n);
  return {
    df: degreesOfFreedom,
    critical_05: dunnettQuantile(0.95, sizes, control.n, degreesOfFreedom),
    comparisons: others.map((m) => {
      const se = Math.sqrt(meanSquare * (1 / m.n + 1 / control.n));
      const t = (m.mean - control.mean) / se;
      return {
        pair: `${m.level} - ${control.level}`,
        diff: m.mean - control.mean,
        se,
        t,
        p_adj: 1 - dunnettCdf(Math.abs(t), sizes, control.n, degreesOfFreedom),
      };
    }),
  };
}

export const topic: Topic = {
  kinds: { anova, "anova-strata": strata, "anova-certified": certified, tukey, dunnett },
  tables: {
    "studentized-range-cdf.csv": perRow({
      inputs: ["q", "k", "df"],
      expected: { cdf: ["abs", 1e-6] },
      compute: (row) => ({
        cdf: studentizedRangeCdf(numberIn(row, "q"), numberIn(row, "k"), freedomIn(row.df ?? "")),
      }),
    }),
  },
};

/** R writes an infinite number of degrees of freedom as `Inf`. */
const freedomIn = (text: string): number =>
  /^inf/i.test(text.trim()) ? Number.POSITIVE_INFINITY : Number(text);
