import { DomainError } from "../../core/domain-error.ts";
import { curveOfExpression } from "../../core/statistics/curves/expression-curve.ts";
import { type CurveFit, fitLeastSquares } from "../../core/statistics/curves/least-squares.ts";
import { readExpression } from "../../core/uncertainty/expression.ts";
import { modelOf, numberCell, responseOf, rowsOf } from "./model-rows.ts";
import { type Context, type Json, NotReadable } from "./topic.ts";

function startOf(given: Json, key: string): Readonly<Record<string, number>> {
  const start = given[key];
  if (typeof start !== "object" || start === null || Object.values(start).some((x) => typeof x !== "number"))
    throw new NotReadable(`${key} does not hold a number for each parameter`);
  return start as Record<string, number>;
}

/** The fit of a case's formula from one of its starts, and the names of its parameters. */
function fitFrom(
  given: Json,
  context: Context,
  key: string,
): { readonly names: readonly string[]; readonly fit: CurveFit } {
  const { expression } = (given.model ?? {}) as Json;
  if (typeof expression !== "string") throw new NotReadable("model.expression is missing");
  const model = modelOf(given);
  const rows = rowsOf(given, model, context);
  const start = startOf(given, key);
  const names = Object.keys(start);
  const formula = readExpression(expression);
  const columns = Object.fromEntries(
    formula.names
      .filter((name) => !names.includes(name))
      .map((name) => [name, rows.map((row) => numberCell(row, name))]),
  );
  const curve = curveOfExpression(formula, names, columns);
  return { names, fit: fitLeastSquares(responseOf(rows, model), curve, Object.values(start)) };
}

/** As a case asks for it; `error` is what it calls a standard error. */
const told = (
  { names, fit }: { readonly names: readonly string[]; readonly fit: CurveFit },
  error: "se" | "sd",
): Json => ({
  parameters: names.map((name, j) => ({ name, estimate: fit.parameters[j], [error]: fit.standardErrors[j] })),
  rss: fit.residualSumOfSquares,
  residual_sd: fit.residualDeviation,
  df: fit.degreesOfFreedom,
});

export const curveFit = (given: Json, context: Context): Json => told(fitFrom(given, context, "start"), "se");

/** From the far start a refusal will do; an answer that lies above the bottom is told, and fails. */
export function certifiedCurve(given: Json, context: Context): Json {
  const near = fitFrom(given, context, "start2");
  if (given.start1 === undefined) return told(near, "sd");
  const far = fitUnlessRefused(given, context);
  const worse = far !== undefined && far.fit.residualSumOfSquares > near.fit.residualSumOfSquares;
  return told(worse ? far : near, "sd");
}

function fitUnlessRefused(given: Json, context: Context) {
  try {
    return fitFrom(given, context, "start1");
  } catch (error) {
    if (error instanceof DomainError && error.detail.code === "no-convergence") return undefined;
    throw error;
  }
}
