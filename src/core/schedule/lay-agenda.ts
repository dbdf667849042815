import { DomainError } from "../domain-error.ts";
import { type Agenda, type AgendaTask, handsNeeded, placeOf, startsWithin, wrong } from "./agenda.ts";
import { checkRounds, checkWaits, longestWindow, roundsOf } from "./agenda-refusals.ts";
import { type Changes, changesOf } from "./changes.ts";
import { energyBound } from "./energy-bound.ts";
import { type Shape, shapeOf } from "./generate.ts";
import { longestPaths } from "./longest-paths.ts";
import type { Lag, Project } from "./project.ts";

/** An agenda as a project: task k of the agenda is task k + 1 of the project. */
export interface Laid {
  readonly shape: Shape;
  readonly distance: readonly Int32Array[];
  readonly lower: number;
}

/** From the start of one task to the start of another, where the second is `least` to `most` after the end of the first. */
function lagsBetween(from: number, to: number, minutes: number, least: number, most: number | null): Lag[] {
  const after: Lag = { from: from + 1, to: to + 1, least: minutes + least };
  return most === null ? [after] : [after, { from: to + 1, to: from + 1, least: -(minutes + most) }];
}

function lagsOf(agenda: Agenda): Lag[] {
  const end = agenda.tasks.length + 1;
  const minutesOf = (k: number): number => agenda.tasks[k]?.minutes ?? 0;
  const around = agenda.tasks.flatMap(({ minutes, notBefore }, k): Lag[] => [
    { from: 0, to: k + 1, least: notBefore },
    { from: k + 1, to: end, least: minutes },
  ]);
  const waits = agenda.waits.flatMap((wait, w): Lag[] => {
    const from = placeOf(agenda, wait.from, `waits[${w}].from`);
    const to = placeOf(agenda, wait.to, `waits[${w}].to`);
    return lagsBetween(from, to, minutesOf(from), wait.leastMinutes, wait.mostMinutes);
  });
  const rounds = [...roundsOf(agenda).values()].flatMap((places) =>
    places.slice(1).flatMap((to, i): Lag[] => {
      const from = places[i] as number;
      return lagsBetween(from, to, minutesOf(from), 0, 0);
    }),
  );
  return [...around, { from: 0, to: end, least: 0 }, ...waits, ...rounds];
}

function projectOf(agenda: Agenda): Project {
  const resources = Object.keys(agenda.capacity);
  const none = resources.map(() => 0);
  const demand = (task: AgendaTask, k: number): number[] => {
    for (const name of Object.keys(task.needs))
      if (!resources.includes(name))
        throw new DomainError({
          code: "unknown-name",
          field: `tasks[${k}].needs.${name}`,
          value: name,
          limits: { allowed: resources },
        });
    return resources.map((name) => (name === "person" ? handsNeeded(task) : (task.needs[name] ?? 0)));
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

/** When all the hands-on minutes could be done at the earliest, with every person busy in every window. */
function earliestEndOfHands(agenda: Agenda): number {
  const people = agenda.capacity.person ?? 1;
  let left = agenda.tasks.reduce((sum, t) => sum + (t.hands ? t.minutes * handsNeeded(t) : 0), 0);
  for (const [from, until] of agenda.windows) {
    if (left <= (until - from) * people) return left === 0 ? 0 : from + Math.ceil(left / people);
    left -= (until - from) * people;
  }
  return Number.POSITIVE_INFINITY;
}

/** Minutes to change between two tasks of the project; −1 where they need not follow each other. */
const changeIn =
  ({ kitOf, minutes }: Changes) =>
  (i: number, j: number): number => {
    const from = kitOf[i - 1] ?? -1;
    const to = kitOf[j - 1] ?? -1;
    return from < 0 || to < 0 ? 0 : (minutes[from]?.[to] ?? 0);
  };

/**
 * Lays an agenda out for the planner, and refuses what cannot be meant.
 *
 * @param agenda  tasks, waits, capacity, windows, set-ups and rounds; whole minutes from the first window
 * @returns       the project with its open times, longest paths and a first lower bound [min]
 * @throws DomainError for unknown names, waits that contradict each other (the cycle is named), a most-wait that no window
 *         can meet (with the nearest that can), a task or a round longer than every window, more work than the windows hold,
 *         and set-ups that `changesOf` refuses
 *
 * Valid:  up to about 400 tasks
 * Source: K. Neumann, C. Schwindt and J. Zimmermann, "Project scheduling with time windows and scarce resources" (2003), 1.4 (calendars)
 */
export function layAgenda(agenda: Agenda): Laid {
  const starts = agenda.tasks.map((task, k) => {
    if (!task.hands) return undefined;
    const open = startsWithin(agenda.windows, task);
    if (open.length === 0)
      throw wrong(
        `tasks[${k}].minutes`,
        task.minutes,
        `No window holds ${task.task}; the longest is ${longestWindow(agenda)} minutes.`,
      );
    return open;
  });
  const project = projectOf(agenda);
  checkWaits(agenda, starts);
  checkRounds(agenda);
  const changes = changesOf(agenda);
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
  const shape: Shape = {
    ...shapeOf(project, distance, lastEnd + after + waits, [undefined, ...starts, undefined]),
    ...(changes === undefined ? {} : { change: changeIn(changes) }),
  };
  return { shape, distance, lower: Math.max(lower, energyBound(project, distance)) };
}
