import { type Compared, fitPreferences, type Preferences } from "../../core/statistics/pairs/preferences.ts";
import { cell, modelOf, numberCell, rowsOf } from "./model-rows.ts";
import { type Context, type Json, NotReadable, type Row, type Topic } from "./topic.ts";

const optional = (row: Row, column: string): number =>
  row[column] === undefined ? 0 : numberCell(row, column);

const comparedIn = (given: Json, context: Context): readonly Compared[] =>
  rowsOf(given, modelOf(given), context).map((row) => ({
    a: cell(row, "a"),
    b: cell(row, "b"),
    aPreferred: numberCell(row, "wins_a"),
    bPreferred: numberCell(row, "wins_b"),
    ties: optional(row, "ties"),
    order: optional(row, "home_a"),
  }));

function baselineOf(given: Json): string {
  const baseline = (given.model as Json | undefined)?.baseline ?? given.baseline;
  if (baseline === undefined) throw new NotReadable("model.baseline is missing");
  return String(baseline);
}

const byName = (fit: Preferences, of: (item: Preferences["items"][number]) => number): Json =>
  Object.fromEntries(fit.items.map((item) => [item.name, of(item)]));

function bradleyTerry(given: Json, context: Context): Json {
  const order = (given.model as Json | undefined)?.home === true;
  const fit = fitPreferences(comparedIn(given, context), { baseline: baselineOf(given), ties: false, order });
  return {
    ability: byName(fit, (item) => item.logWorth),
    se: {
      ...byName(fit, (item) => item.standardError),
      ...(fit.order === null ? {} : { home: fit.order.standardError }),
    },
    home: fit.order?.value ?? null,
    worth_sum_to_1: byName(fit, (item) => item.worth),
    loglik_kernel: fit.logLikelihood,
    deviance: fit.deviance,
    df: fit.degreesOfFreedom,
  };
}

function davidsonTies(given: Json, context: Context): Json {
  const fit = fitPreferences(comparedIn(given, context), {
    baseline: baselineOf(given),
    ties: true,
    order: false,
  });
  return {
    worth_sum_to_1: byName(fit, (item) => item.worth),
    log_worth: byName(fit, (item) => item.logWorth),
    se_log_worth: byName(fit, (item) => item.standardError),
    nu: fit.tieFactor,
    loglik: fit.logLikelihood,
  };
}

export const topic: Topic = { kinds: { "bradley-terry": bradleyTerry, "davidson-ties": davidsonTies } };
