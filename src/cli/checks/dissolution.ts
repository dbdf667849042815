import { profileLikeness, similarityLessScatter } from "../../core/statistics/curves/profile-likeness.ts";
import { certifiedCurve, curveFit } from "./curves.ts";
import { type CaseModel, cell, modelOf, numberCell, rowsOf } from "./model-rows.ts";
import { type Context, type Json, NotReadable, type Row, type Topic } from "./topic.ts";

function numbers(given: Json, key: string): readonly number[] {
  const list = given[key];
  if (!Array.isArray(list) || !list.every((x) => typeof x === "number"))
    throw new NotReadable(`${key} is not a list of numbers`);
  return list;
}

/** The readings of a group's units at each of the case's times. */
function unitsOf(rows: readonly Row[], model: CaseModel, wanted: unknown, times: readonly number[]) {
  const { response } = model;
  if (response === undefined || typeof wanted !== "object" || wanted === null)
    throw new NotReadable("the model does not say which rows are whose");
  const own = rows.filter((row) =>
    Object.entries(wanted).every(([column, value]) => cell(row, column) === String(value)),
  );
  return times.map((time) =>
    own.filter((row) => numberCell(row, "time") === time).map((row) => numberCell(row, response)),
  );
}

function likeness(given: Json, context: Context): Json {
  const { difference, similarity } = profileLikeness(numbers(given, "reference"), numbers(given, "test"));
  const means = { f1: difference, f2: similarity };
  if (given.data === undefined) return means;
  const model = modelOf(given);
  const { reference_rows, test_rows } = given.model as Json;
  const rows = rowsOf(given, model, context);
  const times = numbers(given, "time");
  const [reference, other] = [reference_rows, test_rows].map((wanted) => unitsOf(rows, model, wanted, times));
  return { ...means, f2_bias_corrected: similarityLessScatter(reference ?? [], other ?? []) };
}

export const topic: Topic = {
  kinds: { "f1-f2": likeness, "curve-fit": curveFit, "nist-nonlinear": certifiedCurve },
};
