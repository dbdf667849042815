import { groupingOf } from "../../core/statistics/model/mixed-equations.ts";
import { fitMixedModel } from "../../core/statistics/model/mixed-model.ts";
import { modelColumns } from "../../core/statistics/model/model-matrix.ts";
import { cell, modelDataOf, modelOf, responseOf, rowsOf } from "./model-rows.ts";
import { type Context, type Json, NotReadable, type Topic } from "./topic.ts";

const methods: Readonly<Record<string, "reml" | "ml">> = { REML: "reml", ML: "ml" };

function methodOf(given: Json): "reml" | "ml" {
  const { method = "REML" } = (given.model ?? {}) as Json;
  const found = methods[String(method)];
  if (found === undefined) throw new NotReadable(`model.method ${String(method)} is not known`);
  return found;
}

const randomOf = (given: Json): string[] => {
  const { random } = (given.model ?? {}) as Json;
  if (!Array.isArray(random) || !random.every((r) => typeof r === "string" && !r.includes("|")))
    throw new NotReadable("model.random does not list columns");
  return random as string[];
};

function mixed(given: Json, context: Context): Json {
  const model = modelOf(given);
  const rows = rowsOf(given, model, context);
  const groupings = randomOf(given).map((name) => {
    const columns = name.split(":");
    return groupingOf(
      name,
      rows.map((row) => JSON.stringify(columns.map((column) => cell(row, column)))),
    );
  });
  const columns = modelColumns(model.terms, modelDataOf(rows, model));
  const fit = fitMixedModel(responseOf(rows, model), columns, groupings, methodOf(given));
  const variances = [...fit.variances, { group: "Residual", variance: fit.residualVariance }];
  return {
    fixed: fit.fixed.map(({ term, estimate, standardError }) => ({ term, estimate, se: standardError })),
    variances: variances.map(({ group, variance }) => ({ group, variance, sd: Math.sqrt(variance) })),
    criterion: fit.criterion,
    loglik: -fit.criterion / 2,
  };
}

export const topic: Topic = { kinds: { mixed } };
