import { randomFromSeed } from "../../core/random.ts";
import { combinedUncertainty, coverageFactor } from "../../core/uncertainty/combine.ts";
import { type Distribution, standardDeviationOf } from "../../core/uncertainty/distribution.ts";
import { readExpression } from "../../core/uncertainty/expression.ts";
import { firstOrder, type Inputs, propagate } from "../../core/uncertainty/propagate.ts";
import { correlatedResults, correlationsOf, meansOfRepeated } from "../../core/uncertainty/repeated.ts";
import { type Json, NotReadable, type Topic } from "./topic.ts";

const draws = 4_000_000;

/** A source without degrees of freedom, or with none that is finite, is taken as known. */
const freedomOf = (dof: unknown): number => (typeof dof === "number" ? dof : Number.POSITIVE_INFINITY);

function gum(model: Json): Json {
  const dof = (model.dof ?? {}) as Json;
  const combined = combinedUncertainty(
    Object.entries(model.contributions as Record<string, number>).map(([source, size]) => ({
      source,
      size,
      degreesOfFreedom: freedomOf(dof[source]),
    })),
  );
  const result = { uc: combined.standardUncertainty, nu_eff: combined.degreesOfFreedom };
  if (typeof model.level !== "number") return result;
  const { factor, degreesOfFreedomUsed } = coverageFactor(model.level, combined.degreesOfFreedom);
  return {
    ...result,
    nu_eff_used: degreesOfFreedomUsed,
    k: factor,
    U: factor * combined.standardUncertainty,
  };
}

/** `r_A_B` for each two names, the earlier first. */
const pairwise = (names: readonly string[], r: readonly (readonly number[])[]): Json =>
  Object.fromEntries(
    names.flatMap((a, i) => names.slice(i + 1).map((b, j) => [`r_${a}_${b}`, r[i]?.[i + 1 + j]])),
  );
const named = (names: readonly string[], values: readonly number[], prefix = ""): Json =>
  Object.fromEntries(names.map((name, i) => [`${prefix}${name}`, values[i]]));

function gumCorrelated(model: Json): Json {
  const readings = meansOfRepeated(model.inputs as Record<string, readonly number[]>);
  const formulas = model.outputs as Record<string, string>;
  const outputs = Object.keys(formulas);
  const results = correlatedResults(readings, Object.values(formulas).map(readExpression));
  return {
    means: named(readings.names, readings.means),
    u_means: named(readings.names, readings.uncertainties),
    ...pairwise(readings.names, correlationsOf(readings.covariances)),
    ...named(outputs, results.values),
    ...named(outputs, results.uncertainties, "u_"),
    ...pairwise(outputs, results.correlations),
  };
}

const shapes = ["normal", "rectangular", "triangular", "arcsine", "trapezoid", "curvilinear-trapezoid", "t"];

function distribution(given: unknown): Distribution {
  const { dist } = given as Json;
  if (!shapes.includes(String(dist))) throw new NotReadable(`the distribution ${String(dist)} is not known`);
  return given as Distribution;
}
const distributions = (given: unknown): Inputs =>
  Object.fromEntries(Object.entries(given as Json).map(([name, d]) => [name, distribution(d)]));

function monteCarlo(model: Json): Json {
  const formula = readExpression(String(model.expression));
  const inputs = distributions(model.inputs);
  const level = Number(model.level);
  const drawn = propagate(formula, inputs, { level, draws, random: randomFromSeed("outside checks") });
  const { value, standardUncertainty } = firstOrder(formula, inputs);
  const reach = coverageFactor(level, Number.POSITIVE_INFINITY).factor * standardUncertainty;
  return {
    mean: drawn.mean,
    u: drawn.standardUncertainty,
    symmetric: drawn.symmetric,
    shortest: drawn.shortest,
    gum_first_order_u: standardUncertainty,
    gum_interval: [value - reach, value + reach],
  };
}

export const topic: Topic = {
  kinds: {
    gum: (given) => gum(given.model as Json),
    "gum-correlated": (given) => gumCorrelated(given.model as Json),
    "monte-carlo": (given) => monteCarlo(given.model as Json),
    "type-b": (given) => {
      const entries = Object.entries((given.model as Json).shapes as Json);
      return Object.fromEntries(entries.map(([name, d]) => [name, standardDeviationOf(distribution(d))]));
    },
  },
};
