import { groupingOf } from "../../core/statistics/model/mixed-equations.ts";
import { modelColumns } from "../../core/statistics/model/model-matrix.ts";
import {
  fitProportionalOdds,
  type Link,
  links,
  type OrderedData,
  orderedData,
  type ProportionalOddsFit,
} from "../../core/statistics/model/proportional-odds.ts";
import { fitProportionalOddsJudges } from "../../core/statistics/model/proportional-odds-judges.ts";
import { type CaseModel, cell, modelDataOf, modelOf, numberCell, rowsOf } from "./model-rows.ts";
import { type Context, type Json, NotReadable, type Row, type Topic } from "./topic.ts";

function linkOf(given: Json): Link {
  const name = String((given.model as Json | undefined)?.link ?? given.link ?? "logit");
  const found = links.find((link) => link === name);
  if (found === undefined) throw new NotReadable(`model.link ${name} is not known`);
  return found;
}

function levelsOf(given: Json, model: CaseModel): readonly string[] {
  const levels = (given.model as Json).levels ?? given.levels ?? model.factors[model.response ?? ""];
  if (!Array.isArray(levels)) throw new NotReadable("model.levels is missing");
  return levels.map(String);
}

interface Ordered {
  readonly data: OrderedData;
  readonly rows: readonly Row[];
}

function orderedOf(given: Json, context: Context): Ordered {
  const model = modelOf(given);
  if (model.response === undefined) throw new NotReadable("model.response is missing");
  const { response, weights: column } = model;
  const all = rowsOf(given, model, context);
  const rows = column === null ? all : all.filter((row) => numberCell(row, column) > 0);
  const columns = modelColumns(model.terms, modelDataOf(rows, model));
  const answers = rows.map((row) => cell(row, response));
  const weights = rows.map((row) => (column === null ? 1 : numberCell(row, column)));
  return { rows, data: orderedData(answers, levelsOf(given, model), columns, weights) };
}

const figuresOf = (fit: ProportionalOddsFit) => ({
  coefficients: fit.coefficients.map(({ term, estimate, standardError }) => ({
    term,
    estimate,
    se: standardError,
  })),
  loglik: fit.logLikelihood,
  deviance: -2 * fit.logLikelihood,
  parameters: fit.coefficients.length,
  n: fit.count,
});

const proportionalOdds = (given: Json, context: Context): Json =>
  figuresOf(fitProportionalOdds(orderedOf(given, context).data, linkOf(given)));

function randomJudge(given: Json, context: Context): Json {
  const { random } = given.model as Json;
  const [name, ...more] = (Array.isArray(random) ? random : [random]).map(String);
  if (name === undefined || more.length > 0) throw new NotReadable("model.random does not name one column");
  const { data, rows } = orderedOf(given, context);
  const judges = groupingOf(
    name,
    rows.map((row) => cell(row, name)),
  );
  const fit = fitProportionalOddsJudges(data, judges, linkOf(given));
  return { ...figuresOf(fit), parameters: fit.coefficients.length + 1, random_sd: fit.judgeDeviation };
}

export const topic: Topic = {
  kinds: { "proportional-odds": proportionalOdds, "proportional-odds-random-judge": randomJudge },
};
