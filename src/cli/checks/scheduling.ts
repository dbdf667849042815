import { type ProjectRules, projectFaults } from "../../core/plan-check/project-faults.ts";
import { calculationNamed } from "../../core/registry/all.ts";
import { calculate } from "../../core/registry/calculation.ts";
import { type CheckCase, type Json, NotReadable, type Topic } from "./topic.ts";

/** Small ones are searched until they are proven; large ones for about this long, when the machine is not busy. */
const largeLimitMs = 45_000;
const smallLimitMs = 300_000;
const small = 45;

interface Answer {
  readonly feasible: boolean | null;
  readonly starts: Readonly<Record<string, number>> | null;
  readonly finish: number | null;
  readonly lowerBound: number | null;
  readonly provenBest: string | null;
}

type Triple = readonly [number, number, number];
const numbers = (x: unknown, what: string): readonly number[] => {
  if (!Array.isArray(x) || !x.every((v) => typeof v === "number"))
    throw new NotReadable(`${what} is not a list of numbers`);
  return x;
};
const lists = (x: unknown, what: string): readonly (readonly number[])[] => {
  if (!Array.isArray(x)) throw new NotReadable(`${what} is not a list`);
  return x.map((row) => numbers(row, what));
};

/** The rules of a network of jobs, read from the file and not through the planner. */
function networkRules(given: Json): ProjectRules {
  const durations = numbers(given.duration, "duration");
  const lags =
    given.successors === undefined
      ? (lists(given.lags, "lags") as unknown as readonly Triple[])
      : lists(given.successors, "successors").flatMap((after, from) =>
          after.map((to): Triple => [from, to, durations[from] as number]),
        );
  return {
    durations,
    lags,
    capacities: numbers(given.capacity, "capacity"),
    demands: lists(given.demand, "demand"),
  };
}

function shopRules(given: Json): { readonly rules: ProjectRules; readonly names: readonly string[] } {
  if (!Array.isArray(given.jobs) || typeof given.machines !== "number")
    throw new NotReadable("jobs and machines are needed");
  const machines = given.machines;
  const steps = given.jobs.flatMap((job, j) =>
    lists(job, "jobs").map(([machine = -1, duration = -1], k) => ({ j, k, machine, duration })),
  );
  return {
    names: steps.map(({ j, k }) => `${j}.${k}`),
    rules: {
      durations: steps.map((s) => s.duration),
      lags: steps.flatMap(({ k, duration }, i): Triple[] =>
        steps[i + 1]?.k === k + 1 ? [[i, i + 1, duration]] : [],
      ),
      capacities: Array.from({ length: machines }, () => 1),
      demands: steps.map((s) => Array.from({ length: machines }, (_, m) => (m === s.machine ? 1 : 0))),
    },
  };
}

function planned(format: string, given: Json, tasks: number): Answer {
  const calculation = calculationNamed("schedule");
  if (calculation === undefined) throw new NotReadable("the calculation schedule is not known");
  const limitMs = tasks <= small || format === "jobshop/1" ? smallLimitMs : largeLimitMs;
  const result = calculate(calculation, { instance: { format, ...given }, limitMs });
  if (!result.ok) throw new Error(result.error.message);
  return result.value as Answer;
}

/** The length, once our checker has found nothing wrong and the claims fit the schedule. */
function judged(format: string, given: Json): Json {
  const isShop = format === "jobshop/1";
  const { rules, names } = isShop
    ? shopRules(given)
    : { rules: networkRules(given), names: numbers(given.duration, "duration").map((_, i) => String(i)) };
  const answer = planned(format, given, rules.durations.length);
  if (answer.starts === null) return { feasible: answer.feasible };
  const starts = names.map((name) => answer.starts?.[name] ?? Number.NaN);
  const length = isShop
    ? Math.max(...starts.map((start, i) => start + (rules.durations[i] as number)))
    : (starts.at(-1) as number);
  return {
    feasible: true,
    faults: projectFaults(rules, starts),
    finishAsClaimed: answer.finish === length,
    length,
    lowerBound: answer.lowerBound,
  };
}

function notReadable(why: string): never {
  throw new NotReadable(why);
}

function caseOf(format: string, given: Json): CheckCase {
  const { optimum, best_known: known } = given;
  const right = { feasible: true, faults: [], finishAsClaimed: true };
  const compute = () => judged(format, given);
  const id = typeof given.name === "string" ? given.name : format;
  if (given.feasible === false) return { id, expected: { feasible: false }, tol: {}, compute };
  if (typeof optimum === "number")
    return {
      id,
      expected: { ...right, length: optimum, lowerBound: [0, optimum] },
      tol: { length: ["exact", 0], lowerBound: ["inside", 0] },
      compute,
    };
  if (typeof known !== "number") return { id, expected: right, tol: {}, compute: () => notReadable(neither) };
  return {
    id,
    expected: { ...right, lowerBound: [0, known], isAbove: false },
    tol: { lowerBound: ["inside", 0] },
    compute: () => againstBest(compute(), known),
  };
}

const neither = "neither optimum nor best_known is given";

/** A length that is no more than the best known. A sound schedule that is longer is no mistake, and is not counted as right either. */
function againstBest(found: Json, known: number): Json {
  const { length, ...rest } = found;
  const isAbove = !(typeof length === "number" && length <= known);
  const isSound = Array.isArray(rest.faults) && rest.faults.length === 0 && rest.finishAsClaimed === true;
  if (isAbove && isSound)
    throw new NotReadable(
      `no optimum is proven for it; ${known} is the best known, and the planner comes to ${length}`,
    );
  return { ...rest, isAbove };
}

export const topic: Topic = {
  instances: Object.fromEntries(
    ["rcpsp/1", "rcpsp-max/1", "jobshop/1"].map((format) => [format, (given: Json) => caseOf(format, given)]),
  ),
};
