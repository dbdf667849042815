import { calibrationLine, correctionAt } from "../../core/uncertainty/calibration-line.ts";
import { dayToDay } from "../../core/uncertainty/day-to-day.ts";
import { type Json, NotReadable, type Topic } from "./topic.ts";

const isNumbers = (x: unknown): x is readonly number[] =>
  Array.isArray(x) && x.length > 0 && x.every((one) => typeof one === "number");

/** Where a case keeps its figures: `model`, `input` or `inputs`, whichever it has. */
const modelOf = (given: Json): Json => ({
  ...((given.inputs ?? {}) as Json),
  ...((given.input ?? {}) as Json),
  ...((given.model ?? {}) as Json),
});

function numberOf(model: Json, name: string): number {
  const value = model[name];
  if (typeof value !== "number") throw new NotReadable(`model.${name} is not a number`);
  return value;
}

function listOf(model: Json, names: readonly string[]): readonly number[] {
  const found = names.map((name) => model[name]).find(isNumbers);
  if (found === undefined)
    throw new NotReadable(`model holds no list of numbers called ${names.join(" or ")}`);
  return found;
}

/** The other list beside `t`, whatever it is of. */
function readingsOf(model: Json): readonly number[] {
  const lists = Object.entries(model).filter(([name, x]) => name !== "t" && isNumbers(x));
  const [only] = lists;
  if (only === undefined || lists.length > 1) throw new NotReadable("model holds not just one list beside t");
  return only[1] as readonly number[];
}

/** Each figure with its uncertainty under the names that go before it in this topic and in the sources. */
const withUncertainty = (name: string, value: number, u: number): Json => ({
  [name]: value,
  [`u_${name}`]: u,
  [`s_${name}`]: u,
});

/** A key that is not among what was computed is one that cannot be read, not a wrong result. */
function onlyKnown(given: Json, computed: Json): Json {
  const unknown = Object.keys((given.expected ?? {}) as Json).find((key) => !Object.hasOwn(computed, key));
  if (unknown !== undefined) throw new NotReadable(`what ${unknown} is, is not known`);
  return computed;
}

function line(given: Json): Json {
  const model = modelOf(given);
  const t0 = numberOf(model, "t0");
  const found = calibrationLine(listOf(model, ["t"]), readingsOf(model), t0);
  const at = typeof model.at === "number" ? correctionAt(found, model.at - t0) : undefined;
  const values = ["value", "at", "b_at", "value_at", "y_at"];
  return onlyKnown(given, {
    ...withUncertainty("y1", found.intercept, found.interceptUncertainty),
    ...withUncertainty("y2", found.slope, found.slopeUncertainty),
    r: found.correlation,
    r_y1_y2: found.correlation,
    s: found.residual,
    dof: found.degreesOfFreedom,
    ...(at === undefined
      ? {}
      : Object.assign({}, ...values.map((name) => withUncertainty(name, at.value, at.standardUncertainty)))),
    ...(at === undefined ? {} : { u: at.standardUncertainty, u_at: at.standardUncertainty }),
  });
}

function typeA(given: Json): Json {
  const model = modelOf(given);
  const found = dayToDay(
    listOf(model, ["means", "daily_means", "mean"]),
    listOf(model, ["sds", "sd", "daily_sds", "s"]),
    numberOf(model, "per_day"),
  );
  const [between, within] = found.degreesOfFreedom;
  return onlyKnown(given, {
    ...withUncertainty("mean", found.mean, found.meanUncertainty),
    u: found.meanUncertainty,
    s_means: found.betweenMeans,
    sd_means: found.betweenMeans,
    sd_of_means: found.betweenMeans,
    s_pooled: found.within,
    sd_pooled: found.within,
    pooled_sd: found.within,
    F: found.statistic,
    p: found.pValue,
    df1: between,
    df2: within,
    dof: [between, within],
  });
}

export const topic: Topic = { kinds: { "calibration-line": line, "anova-type-a": typeA } };
