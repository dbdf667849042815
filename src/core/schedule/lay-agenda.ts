import { DomainError } from "../domain-error.ts";
import { type Agenda, type AgendaTask, handsNeeded, placeOf, startsWithin, wrong } from "./agenda.ts";
import { checkRounds, checkWaits, longestWindow, roundsOf } from "./agenda-refusals.ts";
import { type Changes, changesOf } from "./changes.ts";
import type { Open } from "./engine/openings.ts";
import type { Model } from "./exact.ts";
import { earliestStarts, ringOf, tailsOf } from "./heads.ts";
import { arcsBothWays, type Net } from "./net.ts";
import { finishBound, sessionBound } from "./plan-bounds.ts";
import type { Lag, Project } from "./project.ts";

/** An agenda as a project: task k of the agenda is task k + 1 of the project, but task k of the net. */
export interface Laid {
  readonly agenda: Agenda;
  readonly model: Model;
  readonly net: Net;
  /** No plan ends sooner; infinite when there is none at all. */
  readonly lower: number;
  /** No plan has fewer sessions. */
  readonly fewest: number;
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
  agenda.tasks.forEach((task, k) => {
    if (task.hands && handsNeeded(task) === 0)
      throw wrong(`tasks[${k}].needs.person`, 0, "A hands-on task takes one pair of hands or more.", 1);
  });
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

/** What is near each task, for planning by lists. */
function netOf(
  agenda: Agenda,
  project: Project,
  open: Net["open"],
  changes: Changes | undefined,
  horizon: number,
): Net {
  const n = agenda.tasks.length;
  const names = Object.keys(agenda.capacity);
  const oneHand = agenda.capacity.person === 1 ? names.indexOf("person") : -1;
  const lags = project.lags
    .filter(({ from, to }) => from > 0 && to <= n)
    .map(({ from, to, least }) => ({ from: from - 1, to: to - 1, least }));
  return {
    ...arcsBothWays(n, lags),
    minutes: Int32Array.from(agenda.tasks, (t) => t.minutes),
    open,
    kitOf:
      changes?.kitOf ??
      Int32Array.from(agenda.tasks, (t) => (oneHand >= 0 && handsNeeded(t) > 0 && t.minutes > 0 ? 0 : -1)),
    change: changes?.minutes ?? [new Int32Array(1)],
    needs: agenda.tasks.map((t, k) =>
      (project.demands[k + 1] ?? []).flatMap((demand, r): [number, number][] =>
        demand > 0 && r !== oneHand && t.minutes > 0 ? [[r, demand]] : [],
      ),
    ),
    capacities: project.capacities,
    horizon,
  };
}

/** Minutes to change between two tasks of the project; none where one of them takes no hands. */
const changeIn =
  ({ kitOf, minutes }: Changes) =>
  (i: number, j: number): number => {
    const from = kitOf[i - 1] ?? -1;
    const to = kitOf[j - 1] ?? -1;
    return from < 0 || to < 0 ? 0 : (minutes[from]?.[to] ?? 0);
  };

/** Hands-on tasks lie within a window, others anywhere after their date. */
function openTimes(agenda: Agenda, horizon: number): Open[][] {
  return agenda.tasks.map((task, k) => {
    if (!task.hands) return [[task.notBefore, horizon - task.minutes]];
    const open = startsWithin(agenda.windows, task);
    if (open.length === 0)
      throw wrong(
        `tasks[${k}].minutes`,
        task.minutes,
        `No window holds ${task.task}; the longest is ${longestWindow(agenda)} minutes.`,
      );
    return open;
  });
}

/** After the last window only what needs no hands goes on, one after another at worst. */
function horizonFor({ tasks, waits, windows }: Agenda): number {
  const isHands = new Map(tasks.map((t) => [t.task, t.hands]));
  const after = tasks.reduce((sum, t) => sum + (t.hands ? 0 : t.minutes), 0);
  const waited = waits.reduce((sum, w) => sum + (isHands.get(w.to) === true ? 0 : w.leastMinutes), 0);
  return Math.max(windows.at(-1)?.[1] ?? 0, ...tasks.map((t) => t.notBefore)) + after + waited;
}

function checkRing(agenda: Agenda, net: Net): void {
  const names = ringOf(net)?.map((i) => agenda.tasks[i]?.task);
  if (names !== undefined)
    throw wrong("waits", names, `These waits contradict each other, in a ring: ${names.join(", ")}.`);
}

/**
 * Lays an agenda out for the planner, and refuses what cannot be meant.
 *
 * @param agenda  tasks, waits, capacity, windows, set-ups and rounds; whole minutes from the first window
 * @returns       the project, the same by neighbours, and what no plan can beat: a finish [min] and a count of sessions
 * @throws DomainError for unknown names, waits that contradict each other (the cycle is named), a most-wait that no window
 *         can meet (with the nearest that can), a task or a round longer than every window, more work than the windows hold,
 *         and set-ups that `changesOf` refuses
 *
 * Valid:  any number of tasks; thousands take a second
 * Source: K. Neumann, C. Schwindt and J. Zimmermann, "Project scheduling with time windows and scarce resources" (2003), 1.4 (calendars)
 */
export function layAgenda(agenda: Agenda): Laid {
  const horizon = horizonFor(agenda);
  const open = openTimes(agenda, horizon);
  const project = projectOf(agenda);
  checkWaits(
    agenda,
    open.map((times, k) => (agenda.tasks[k]?.hands ? times : undefined)),
  );
  checkRounds(agenda);
  const changes = changesOf(agenda);
  const net = netOf(agenda, project, open, changes, horizon);
  checkRing(agenda, net);
  const hands = agenda.tasks.map((t) => (t.hands ? handsNeeded(t) : 0));
  const people = agenda.capacity.person ?? 1;
  const head = earliestStarts(net);
  const lower =
    head === undefined
      ? Number.POSITIVE_INFINITY
      : finishBound(net, agenda.windows, people, hands, head, tailsOf(net));
  if (totalOf(net, hands) > people * agenda.windows.reduce((sum, [from, until]) => sum + until - from, 0))
    throw wrong("windows", agenda.windows.length, "They hold less time than the tasks take.");
  return {
    agenda,
    net,
    model: {
      project,
      horizon,
      open: [undefined, ...open, undefined],
      ...(changes === undefined ? {} : { change: changeIn(changes) }),
    },
    lower,
    fewest: sessionBound(net, agenda.windows, people, hands),
  };
}

const totalOf = (net: Net, hands: readonly number[]): number =>
  net.minutes.reduce((sum, minutes, i) => sum + minutes * (hands[i] as number), 0);
