import { DomainError } from "../domain-error.ts";
import { energyBound } from "./energy-bound.ts";
import type { Open } from "./engine/openings.ts";
import { type Shape, shapeOf } from "./generate.ts";
import { longestPaths } from "./longest-paths.ts";
import type { Lag, Project } from "./project.ts";

/** Minutes from the first window; a task with hands runs within one window. */
export interface AgendaTask {
  readonly task: string;
  readonly minutes: number;
  readonly hands: boolean;
  readonly needs: Readonly<Record<string, number>>;
  readonly notBefore: number;
}

/** From the end of one task to the start of another. */
export interface AgendaWait {
  readonly from: string;
  readonly to: string;
  readonly leastMinutes: number;
  readonly mostMinutes: number | null;
}

export interface Agenda {
  readonly tasks: readonly AgendaTask[];
  readonly waits: readonly AgendaWait[];
  readonly capacity: Readonly<Record<string, number>>;
  /** In order of time, none overlapping. */
  readonly windows: readonly (readonly [from: number, until: number])[];
}

/** An agenda as a project: task k of the agenda is task k + 1 of the project. */
export interface Laid {
  readonly shape: Shape;
  readonly distance: readonly Int32Array[];
  readonly lower: number;
}

const wrong = (field: string, value: unknown, because: string, min?: number): DomainError =>
  new DomainError({
    code: "contradiction",
    field,
    value,
    because,
    ...(min === undefined ? {} : { limits: { min } }),
  });

/** Starts that keep a task of so many minutes within one window. */
const startsWithin = (agenda: Agenda, task: AgendaTask): Open[] =>
  agenda.windows
    .map(([from, until]): Open => [Math.max(from, task.notBefore), until - task.minutes])
    .filter(([first, last]) => last >= first);

/**
 * The shortest wait of at least `least` minutes between the end of a task and the start of another that their windows allow.
 *
 * @param from     allowed starts of the first task [min], in order
 * @param minutes  how long it takes [min], scalar
 * @param to       allowed starts of the second [min], in order
 * @param least    shortest wait wanted [min], scalar
 * @returns        minutes; infinite where no window comes late enough
 * @throws DomainError never
 *
 * Valid:  whole minutes
 * Source: the definition; of two windows the waits form an interval from b₀ − a₁ to b₁ − a₀
 * @example
 * shortestWait([[0, 60]], 30, [[1440, 1500]], 120) // => 1350
 */
export function shortestWait(
  from: readonly Open[],
  minutes: number,
  to: readonly Open[],
  least: number,
): number {
  let best = Number.POSITIVE_INFINITY;
  for (const [a0, a1] of from)
    for (const [b0, b1] of to) {
      const wait = Math.max(least, b0 - a1 - minutes);
      if (wait <= b1 - a0 - minutes) best = Math.min(best, wait);
    }
  return best;
}

function placeOf(agenda: Agenda, name: string, field: string): number {
  const at = agenda.tasks.findIndex((t) => t.task === name);
  if (at >= 0) return at;
  throw new DomainError({
    code: "unknown-name",
    field,
    value: name,
    limits: { allowed: agenda.tasks.slice(0, 12).map((t) => t.task) },
  });
}

function lagsOf(agenda: Agenda): Lag[] {
  const end = agenda.tasks.length + 1;
  const around = agenda.tasks.flatMap(({ minutes, notBefore }, k): Lag[] => [
    { from: 0, to: k + 1, least: notBefore },
    { from: k + 1, to: end, least: minutes },
  ]);
  const waits = agenda.waits.flatMap((wait, w): Lag[] => {
    const from = placeOf(agenda, wait.from, `waits[${w}].from`);
    const to = placeOf(agenda, wait.to, `waits[${w}].to`);
    const minutes = agenda.tasks[from]?.minutes ?? 0;
    const least: Lag = { from: from + 1, to: to + 1, least: minutes + wait.leastMinutes };
    if (wait.mostMinutes === null) return [least];
    return [least, { from: to + 1, to: from + 1, least: -(minutes + wait.mostMinutes) }];
  });
  return [...around, { from: 0, to: end, least: 0 }, ...waits];
}

function projectOf(agenda: Agenda): Project {
  const resources = Object.keys(agenda.capacity);
  const none = resources.map(() => 0);
  const demand = ({ hands, needs }: AgendaTask, k: number): number[] => {
    for (const name of Object.keys(needs))
      if (!resources.includes(name))
        throw new DomainError({
          code: "unknown-name",
          field: `tasks[${k}].needs.${name}`,
          value: name,
          limits: { allowed: resources },
        });
    return resources.map((name) => needs[name] ?? (name === "person" && hands ? 1 : 0));
  };
  const demands = agenda.tasks.map(demand);
  demands.forEach((row, k) => {
    row.forEach((used, r) => {
      const name = resources[r] as string;
      const there = agenda.capacity[name] as number;
      if (used > there)
        throw wrong(`tasks[${k}].needs.${name}`, used, `There ${there === 1 ? "is" : "are"} only ${there}.`);
    });
  });
  return {
    durations: [0, ...agenda.tasks.map((t) => t.minutes), 0],
    lags: lagsOf(agenda),
    capacities: Object.values(agenda.capacity),
    demands: [none, ...demands, none],
  };
}

function checkWaits(agenda: Agenda, starts: readonly (readonly Open[] | undefined)[]): void {
  agenda.waits.forEach((wait, w) => {
    const { leastMinutes: least, mostMinutes: most } = wait;
    if (most === null) return;
    const field = `waits[${w}].mostMinutes`;
    if (most < least) throw wrong(field, most, "It is shorter than the least wait.", least);
    const from = placeOf(agenda, wait.from, `waits[${w}].from`);
    const to = placeOf(agenda, wait.to, `waits[${w}].to`);
    const first = starts[from];
    const second = starts[to];
    if (first === undefined || second === undefined) return;
    const nearest = shortestWait(first, agenda.tasks[from]?.minutes ?? 0, second, least);
    if (nearest > most)
      throw wrong(
        field,
        most,
        Number.isFinite(nearest)
          ? `No window comes so soon after ${wait.from}; the nearest that can be met is ${nearest} minutes.`
          : `No window comes after ${wait.from} at all.`,
        Number.isFinite(nearest) ? nearest : undefined,
      );
  });
}

/** When all the hands-on minutes could be done at the earliest, with every person busy in every window. */
function earliestEndOfHands(agenda: Agenda): number {
  const people = agenda.capacity.person ?? 1;
  let left = agenda.tasks.reduce((sum, t) => sum + (t.hands ? t.minutes * (t.needs.person ?? 1) : 0), 0);
  for (const [from, until] of agenda.windows) {
    if (left <= (until - from) * people) return left === 0 ? 0 : from + Math.ceil(left / people);
    left -= (until - from) * people;
  }
  return Number.POSITIVE_INFINITY;
}

/**
 * Lays an agenda out for the planner, and refuses what cannot be meant.
 *
 * @param agenda  tasks, waits, capacity and windows; whole minutes from the first window
 * @returns       the project with its open times, longest paths and a first lower bound [min]
 * @throws DomainError for unknown names, waits that contradict each other (the cycle is named), a most-wait that no window
 *         can meet (with the nearest that can), a task longer than every window, and more work than the windows hold
 *
 * Valid:  up to about 400 tasks
 * Source: K. Neumann, C. Schwindt and J. Zimmermann, "Project scheduling with time windows and scarce resources" (2003), 1.4 (calendars)
 */
export function layAgenda(agenda: Agenda): Laid {
  const starts = agenda.tasks.map((task, k) => {
    if (!task.hands) return undefined;
    const open = startsWithin(agenda, task);
    const longest = Math.max(0, ...agenda.windows.map(([from, until]) => until - from));
    if (open.length === 0)
      throw wrong(
        `tasks[${k}].minutes`,
        task.minutes,
        `No window holds ${task.task}; the longest is ${longest} minutes.`,
      );
    return open;
  });
  const project = projectOf(agenda);
  checkWaits(agenda, starts);
  const { distance, cycle } = longestPaths(project);
  if (cycle !== undefined) {
    const names = cycle.map((i) => agenda.tasks[i - 1]?.task).filter((name) => name !== undefined);
    throw wrong("waits", names, `These waits contradict each other, in a ring: ${names.join(", ")}.`);
  }
  const lower = earliestEndOfHands(agenda);
  const lastEnd = agenda.windows.at(-1)?.[1] ?? 0;
  if (!Number.isFinite(lower))
    throw wrong("windows", agenda.windows.length, "They hold less time than the tasks take.");
  const after = agenda.tasks.reduce((sum, t) => sum + (t.hands ? 0 : t.minutes), 0);
  const waits = agenda.waits.reduce((sum, w) => sum + Math.max(0, w.leastMinutes), 0);
  const shape = shapeOf(project, distance, lastEnd + after + waits, [undefined, ...starts, undefined]);
  return { shape, distance, lower: Math.max(lower, energyBound(project, distance)) };
}
