import {
  type EstimatedDifference,
  equivalencePower,
  pairedDifference,
  pooledDifference,
  type Summary,
  summaryOf,
  twoOneSidedTests,
  welchDifference,
} from "../../core/statistics/several/equivalence.ts";
import { type Json, NotReadable, type Topic } from "./topic.ts";

function number(input: Json, key: string): number {
  const value = input[key];
  if (typeof value !== "number") throw new NotReadable(`input.${key} is not a number`);
  return value;
}

function numbers(input: Json, key: string): readonly number[] {
  const value = input[key];
  if (!Array.isArray(value) || !value.every((x) => typeof x === "number"))
    throw new NotReadable(`input.${key} is not a list of numbers`);
  return value;
}

/** A group by its readings (`x`, `y`) or by what is told of them (`m1`, `sd1`, `n1`). */
const group = (input: Json, readings: string, which: 1 | 2): Summary =>
  input[readings] === undefined
    ? {
        mean: number(input, `m${which}`),
        deviation: number(input, `sd${which}`),
        count: number(input, `n${which}`),
      }
    : summaryOf(numbers(input, readings));

function difference(input: Json): EstimatedDifference {
  if (input.paired === true) return pairedDifference(numbers(input, "x"), numbers(input, "y"));
  const [first, second] = [group(input, "x", 1), group(input, "y", 2)];
  return input.welch === true ? welchDifference(first, second) : pooledDifference(first, second);
}

function tost(input: Json) {
  const estimate = difference(input);
  const bounds = { low: number(input, "low"), high: number(input, "high") };
  const test = twoOneSidedTests(estimate, bounds, number(input, "alpha"));
  return {
    difference: estimate.difference,
    se: estimate.standardError,
    df: estimate.degreesOfFreedom,
    t_lower: test.tLow,
    t_upper: test.tHigh,
    p_lower: test.pLow,
    p_upper: test.pHigh,
    p: test.pValue,
    ci_level: test.level,
    ci: test.interval,
    equivalent: test.equivalent,
  };
}

/** Two-way crossover on the log scale. */
function crossoverPower(input: Json): number {
  const n = number(input, "n");
  const standardError = Math.sqrt(2 / n) * Math.sqrt(Math.log1p(number(input, "cv") ** 2));
  const degreesOfFreedom = input.df === undefined ? n - 2 : number(input, "df");
  const bounds = { low: Math.log(number(input, "low")), high: Math.log(number(input, "high")) };
  const plan = { difference: Math.log(number(input, "ratio")), standardError, degreesOfFreedom };
  return equivalencePower(plan, bounds, number(input, "alpha"));
}

function groupsPower(input: Json): readonly number[] {
  const [n1, n2] = [number(input, "n1"), number(input, "n2")];
  const standardError = number(input, "sd") * Math.sqrt(1 / n1 + 1 / n2);
  const bounds = { low: number(input, "low"), high: number(input, "high") };
  return numbers(input, "true_differences").map((true_) =>
    equivalencePower(
      { difference: true_, standardError, degreesOfFreedom: n1 + n2 - 2 },
      bounds,
      number(input, "alpha"),
    ),
  );
}

export const topic: Topic = {
  kinds: {
    tost: (given) => tost(given.input as Json),
    "tost-power": (given) => {
      const input = given.input as Json;
      return { power: input.cv === undefined ? groupsPower(input) : crossoverPower(input) };
    },
  },
};
