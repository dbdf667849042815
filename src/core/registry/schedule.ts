import { z } from "zod";
import { provenGoals } from "../schedule/plan-agenda.ts";
import { solveProject } from "../schedule/solve.ts";
import { agendaFields } from "./agenda-fields.ts";
import { defineCalculation } from "./calculation.ts";
import { scheduleAgenda } from "./schedule-agenda.ts";
import { instance, projectOfInstance } from "./schedule-instance.ts";

const limitMs = z.number().min(1).max(3_600_000).optional();
const instanceInput = z.strictObject({ instance, limitMs });
const agendaInput = z.strictObject({ ...agendaFields, limitMs });
const input = z.union([instanceInput, agendaInput]);

const whyNot = z.object({
  code: z.enum(["waits contradict each other", "nothing fits", "not found in the time given"]),
  message: z.string(),
  tasks: z.array(z.string()),
});

const moment = z.union([z.number(), z.string()]);
const output = z.object({
  feasible: z.boolean().nullable().describe("null when the time given ran out before it was known"),
  starts: z
    .record(z.string(), moment)
    .nullable()
    .describe("units of time for an instance, clock times for tasks in windows"),
  finish: moment.nullable(),
  lowerBound: moment.nullable().describe("no plan ends sooner"),
  provenBest: z
    .enum(provenGoals)
    .nullable()
    .describe("the goals for which no plan is better: the finish, then the sessions, then the idle minutes"),
  whyNot: whyNot.nullable(),
  sessions: z.number().nullable().optional().describe("windows in which somebody works"),
  idleMinutes: z
    .number()
    .nullable()
    .optional()
    .describe(
      "all people are at the bench from the first start of each session to its last end: what of their time is no work; time to change is among it",
    ),
  who: z
    .record(z.string(), z.number())
    .optional()
    .describe("by hands-on task, from 1: for several people with set-ups"),
  moved: z
    .array(z.string())
    .optional()
    .describe("hands-on tasks that start at another time than in the old plan"),
  isFewestMoved: z.boolean().optional().describe("no plan that ends as soon moves fewer"),
});
type Output = z.output<typeof output>;

const defaultLimitMs = 10_000;

function scheduleInstance(given: z.output<typeof instanceInput>): Output {
  const { project, names } = projectOfInstance(given.instance);
  const limit = 1000 * (given.limitMs ?? defaultLimitMs);
  const solved = solveProject(project, { mustStop: (steps) => steps > limit });
  const nothing = { starts: null, finish: null, provenBest: null };
  if (solved.starts !== null) {
    const starts = Object.fromEntries(
      names.flatMap((name, i) => (name === null ? [] : [[name, solved.starts?.[i] ?? 0] as const])),
    );
    const proven = solved.proven ? ("all goals" as const) : null;
    return {
      feasible: true,
      starts,
      finish: solved.length,
      lowerBound: solved.lowerBound,
      provenBest: proven,
      whyNot: null,
    };
  }
  if (!solved.proven) return { ...nothing, feasible: null, lowerBound: solved.lowerBound, whyNot: notFound };
  const cycle = solved.cycle?.map((i) => names[i] ?? String(i)) ?? [];
  return { ...nothing, feasible: false, lowerBound: null, whyNot: whyNone(cycle) };
}

const notFound = {
  code: "not found in the time given" as const,
  message: "No schedule was found in the time given, nor that there is none.",
  tasks: [],
};

const defaultAgendaMs = 2000;
/** Who asks for a plan again stands at the bench. */
const defaultReplanMs = 200;

function scheduleTasks(given: z.output<typeof agendaInput>): Output {
  const { limitMs: asked, ...agenda } = given;
  const { plan, lowerBound, provenBest } = scheduleAgenda(agenda, {
    steps: 1000 * (asked ?? (agenda.replan === undefined ? defaultAgendaMs : defaultReplanMs)),
  });
  if (plan !== null) return { feasible: true, ...plan, lowerBound, provenBest, whyNot: null };
  const none = { starts: null, finish: null, provenBest: null, sessions: null, idleMinutes: null };
  if (lowerBound !== null) return { ...none, feasible: null, lowerBound, whyNot: notFound };
  return { ...none, feasible: false, lowerBound: null, whyNot: whyNone([]) };
}

const whyNone = (cycle: readonly string[]): Output["whyNot"] =>
  cycle.length > 0
    ? {
        code: "waits contradict each other",
        message: `Each of these waits for the next, and the last for the first: ${cycle.join(", ")}.`,
        tasks: [...cycle],
      }
    : { code: "nothing fits", message: "No schedule holds all waits and shares all resources.", tasks: [] };

export const schedule = defineCalculation({
  name: "schedule",
  purpose: "When to do what: tasks with least and most waits that share hands and drying places",
  input,
  output,
  run: (given) => ("instance" in given ? scheduleInstance(given) : scheduleTasks(given)),
  sources: [
    "Search with learned clauses: A. Schutt et al., Constraints 16 (2011) 250; J. Scheduling 16 (2013) 273",
    "Priorities and justification: V. Valls et al., Eur. J. Oper. Res. 165 (2005) 375",
    "Set-ups that depend on the order: A. Allahverdi, Eur. J. Oper. Res. 246 (2015) 345",
    "Plans changed as little as can be: H. H. El Sakkout and M. G. Wallace, Constraints 5 (2000) 359",
  ],
  example: {
    input: {
      instance: {
        format: "rcpsp-max/1",
        capacity: [1],
        duration: [0, 2, 1, 3, 0],
        demand: [[0], [1], [1], [1], [0]],
        lags: [
          [0, 1, 0],
          [1, 2, 6],
          [2, 1, -8],
          [2, 4, 1],
          [3, 4, 3],
        ],
      },
    },
    output: { feasible: true, finish: 7, lowerBound: 7, provenBest: "all goals" },
  },
});
