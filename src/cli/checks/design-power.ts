import { noncentralTTails } from "../../core/statistics/distribution/noncentral-t.ts";
import { studentTUpperQuantile } from "../../core/statistics/distribution/student-t.ts";
import { rootBetween } from "../../core/statistics/numeric/root.ts";
import { fTestPower } from "../../core/statistics/several/power.ts";
import { type Json, NotReadable, type Topic } from "./topic.ts";

function number(input: Json, key: string): number {
  const value = input[key];
  if (typeof value !== "number") throw new NotReadable(`input.${key} is not a number`);
  return value;
}

const sumOfSquares = (input: Json, key: string): number => {
  const value = input[key];
  if (!Array.isArray(value)) throw new NotReadable(`input.${key} is not a list`);
  return value.reduce((sum: number, x: number) => sum + x * x, 0);
};

/** λ for n readings a group, in whichever of its three forms the effect is told. */
function noncentrality(input: Json, n: number): number {
  const groups = number(input, "groups");
  if (input.f !== undefined) return groups * n * number(input, "f") ** 2;
  if (input.tau !== undefined) return (n * sumOfSquares(input, "tau")) / number(input, "sigma") ** 2;
  return ((groups - 1) * n * number(input, "between_var")) / number(input, "within_var");
}

function anovaPower(input: Json) {
  const groups = number(input, "groups");
  const alpha = number(input, "alpha");
  const powerAt = (n: number) => fTestPower(noncentrality(input, n), groups - 1, groups * (n - 1), alpha);
  if (input.power === undefined) return { power: powerAt(number(input, "n")) };
  const n = rootBetween((x) => powerAt(x) - number(input, "power"), 2, 1000);
  return { n, n_integer: Math.ceil(n) };
}

/** Two-sided, far tail only; `n` a group, or `n` pairs. */
function tPower(input: Json) {
  const n = number(input, "n");
  const paired = input.paired === true;
  const df = paired ? n - 1 : 2 * n - 2;
  const spread = paired ? number(input, "sd_of_differences") : number(input, "sd") * Math.SQRT2;
  const shift = (number(input, "delta") / spread) * Math.sqrt(n);
  const critical = studentTUpperQuantile(number(input, "alpha") / 2, df);
  return { power: noncentralTTails(critical, df, shift).upper };
}

function blockedPower(input: Json) {
  const treatments = number(input, "treatments");
  const blocks = number(input, "blocks");
  const lambda = (blocks * sumOfSquares(input, "tau")) / number(input, "sigma") ** 2;
  const error = (treatments - 1) * (blocks - 1);
  return { lambda, power: fTestPower(lambda, treatments - 1, error, number(input, "alpha")) };
}

/** The power of what is planned. */
export const topic: Topic = {
  kinds: {
    "anova-power": (given) => anovaPower(given.input as Json),
    "t-power": (given) => tPower(given.input as Json),
    "rcbd-power": (given) => blockedPower(given.input as Json),
  },
};
