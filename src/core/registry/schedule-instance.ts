import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import type { Lag, Project } from "../schedule/project.ts";

const count = z.int().min(0).max(1_000_000);
const demands = z.array(z.array(count));
/** What a published instance says of itself; nothing of it is read. */
const labels = {
  name: z.string().optional(),
  optimum: z.number().nullish(),
  lower_bound: z.number().nullish(),
  best_known: z.number().nullish(),
  critical_path: z.number().nullish(),
  energy_bound: z.number().nullish(),
  feasible: z.boolean().nullish(),
};

const rcpsp = z.strictObject({
  format: z.literal("rcpsp/1"),
  capacity: z.array(count),
  duration: z.array(count).min(2).max(3000),
  demand: demands,
  /** Finish to start, by job. */
  successors: z.array(z.array(count)),
  ...labels,
});

const rcpspMax = z.strictObject({
  format: z.literal("rcpsp-max/1"),
  capacity: z.array(count),
  resources: z.array(z.string()).optional(),
  duration: z.array(count).min(2).max(3000),
  demand: demands,
  /** [i, j, w]: start[j] ≥ start[i] + w. */
  lags: z.array(z.tuple([count, count, z.int().min(-1_000_000).max(1_000_000)])),
  jobs: z.array(z.string()).optional(),
  ...labels,
});

const jobshop = z.strictObject({
  format: z.literal("jobshop/1"),
  machines: count,
  /** By job: [machine, duration] in order. */
  jobs: z
    .array(z.array(z.tuple([count, count])))
    .min(1)
    .max(200),
  ...labels,
});

export const instance = z.discriminatedUnion("format", [rcpsp, rcpspMax, jobshop]);
type Instance = z.output<typeof instance>;
type Network = Extract<Instance, { duration: number[] }>;

export interface NamedProject {
  readonly project: Project;
  /** The name of each task that an answer gives a start for. */
  readonly names: readonly (string | null)[];
}

const wrong = (field: string, value: unknown, because: string): DomainError =>
  new DomainError({ code: "contradiction", field, value, because });

function checkShape(given: Network): void {
  const n = given.duration.length;
  if (given.demand.length !== n)
    throw wrong("instance.demand", given.demand.length, `It must have a row for each of the ${n} jobs.`);
  given.demand.forEach((row, i) => {
    if (row.length !== given.capacity.length)
      throw wrong(
        `instance.demand[${i}]`,
        row,
        `It must have a number for each of the ${given.capacity.length} resources.`,
      );
  });
}

function known(job: number, n: number, field: string): number {
  if (job >= n) throw wrong(field, job, `There are jobs 0 to ${n - 1}.`);
  return job;
}

function lagsOf(given: Network): Lag[] {
  const n = given.duration.length;
  if (given.format === "rcpsp-max/1")
    return given.lags.map(([from, to, least], k) => ({
      from: known(from, n, `instance.lags[${k}][0]`),
      to: known(to, n, `instance.lags[${k}][1]`),
      least,
    }));
  if (given.successors.length !== n)
    throw wrong(
      "instance.successors",
      given.successors.length,
      `It must have a list for each of the ${n} jobs.`,
    );
  const follow = given.successors.flatMap((list, from) =>
    list.map((to, k) => ({
      from,
      to: known(to, n, `instance.successors[${from}][${k}]`),
      least: given.duration[from] as number,
    })),
  );
  // the end comes after everything, said or not
  const ends = given.duration.map((least, from) => ({ from, to: n - 1, least })).slice(0, n - 1);
  return [...follow, ...ends];
}

/** The steps of all jobs one after another, between a start and an end. */
function projectOfShop(given: Extract<Instance, { format: "jobshop/1" }>): NamedProject {
  const steps = given.jobs.flatMap((job, j) =>
    job.map(([machine, duration], k) => ({ j, k, machine, duration })),
  );
  const end = steps.length + 1;
  const lags = steps.map(({ j, k, duration }, i): Lag => {
    const isLast = k === (given.jobs[j]?.length ?? 0) - 1;
    return { from: i + 1, to: isLast ? end : i + 2, least: duration };
  });
  const none = Array.from({ length: given.machines }, () => 0);
  const demandOf = (machine: number, field: string): number[] => {
    if (machine >= given.machines)
      throw wrong(field, machine, `There are machines 0 to ${given.machines - 1}.`);
    return none.with(machine, 1);
  };
  return {
    names: [null, ...steps.map(({ j, k }) => `${j}.${k}`), null],
    project: {
      durations: [0, ...steps.map((s) => s.duration), 0],
      lags: [...lags, { from: 0, to: end, least: 0 }],
      capacities: none.map(() => 1),
      demands: [none, ...steps.map((s) => demandOf(s.machine, `instance.jobs[${s.j}][${s.k}][0]`)), none],
    },
  };
}

/** A published instance as a project of the planner. */
export function projectOfInstance(given: Instance): NamedProject {
  if (given.format === "jobshop/1") return projectOfShop(given);
  checkShape(given);
  return {
    names: given.duration.map((_, i) => String(i)),
    project: {
      durations: given.duration,
      lags: lagsOf(given),
      capacities: given.capacity,
      demands: given.demand,
    },
  };
}
