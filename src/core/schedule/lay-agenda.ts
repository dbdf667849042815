import { type Agenda, handsNeeded, startsWithin, wrong } from "./agenda.ts";
import { checkRounds, checkWaits, longestWindow } from "./agenda-refusals.ts";
import { type Changes, changesOf } from "./changes.ts";
import { type Crew, crewOf } from "./crew.ts";
import type { Open } from "./engine/openings.ts";
import type { Model } from "./exact.ts";
import { earliestStarts, ringOf, tailsOf } from "./heads.ts";
import { arcsBothWays, type Net } from "./net.ts";
import { type Night, nightLags, nightRules, nightsOf } from "./nights.ts";
import { afterPast, type Past } from "./past.ts";
import { entriesOf, finishBound, idleBound, sessionBound } from "./plan-bounds.ts";
import type { Project } from "./project.ts";
import { projectOf } from "./project-of-agenda.ts";
import { runBound } from "./run-bound.ts";

/** An agenda as a project: task k of the agenda is task k + 1 of the project, but task k of the net. */
export interface Laid {
  readonly agenda: Agenda;
  readonly model: Model;
  readonly net: Net;
  /** Pairs of hands that each task still takes within a window. */
  readonly hands: readonly number[];
  /** No plan ends sooner; infinite when there is none at all. */
  readonly lower: number;
  /** No plan has fewer sessions. */
  readonly fewest: number;
  /** No plan has fewer idle minutes. */
  readonly leastIdle: number;
}

/** An agenda in parts, before it is put together for the planners. */
export interface AgendaParts {
  readonly project: Project;
  readonly open: readonly (readonly Open[])[];
  readonly hands: readonly number[];
  readonly changes: Changes;
  readonly crew: Crew | undefined;
  /** Pairs of which the second is for a later window than the first. */
  readonly nights: readonly Night[];
}

/** Without set-ups every task of one person takes the same hands. */
function changesOrNone(agenda: Agenda): Changes {
  const isOne = agenda.capacity.person === 1;
  return (
    changesOf(agenda) ?? {
      kitOf: Int32Array.from(agenda.tasks, (t) => (isOne && handsNeeded(t) > 0 && t.minutes > 0 ? 0 : -1)),
      minutes: [new Int32Array(1)],
    }
  );
}

/** What is near each task, for planning by lists. */
function netOf(agenda: Agenda, parts: AgendaParts, horizon: number): Net {
  const { project, open, changes, crew, nights } = parts;
  const n = agenda.tasks.length;
  const isInLine = agenda.capacity.person === 1 || crew !== undefined;
  const inLine = isInLine ? Object.keys(agenda.capacity).indexOf("person") : -1;
  const lags = project.lags
    .filter(({ from, to }) => from > 0 && to <= n)
    .map(({ from, to, least }) => ({ from: from - 1, to: to - 1, least }));
  return {
    ...arcsBothWays(n, [...lags, ...nightLags(agenda, nights)]),
    minutes: Int32Array.from(agenda.tasks, (t) => t.minutes),
    open,
    kitOf: changes.kitOf,
    change: changes.minutes,
    crew,
    needs: agenda.tasks.map((t, k) =>
      (project.demands[k + 1] ?? []).flatMap((demand, r): [number, number][] =>
        demand > 0 && r !== inLine && t.minutes > 0 ? [[r, demand]] : [],
      ),
    ),
    capacities: project.capacities,
    windows: agenda.windows,
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

function checkRoom(agenda: Agenda): void {
  const people = agenda.capacity.person ?? 1;
  const work = agenda.tasks.reduce((sum, t) => sum + (t.hands ? t.minutes * handsNeeded(t) : 0), 0);
  if (work > people * agenda.windows.reduce((sum, [from, until]) => sum + until - from, 0))
    throw wrong("windows", agenda.windows.length, "They hold less time than the tasks take.");
}

/**
 * Lays an agenda out for the planner, and refuses what cannot be meant.
 *
 * @param agenda  tasks, waits, capacity, windows, set-ups and rounds; whole minutes from the first window
 * @param past    what has been done of it, and now [min]; none for an agenda that begins
 * @returns       the project, the same by neighbours, and what no plan can beat: a finish [min] and a count of sessions
 * @throws DomainError for unknown names, waits that contradict each other (the cycle is named), a most-wait that no window
 *         can meet (with the nearest that can) or that is over, a task or a round longer than every window, more work than
 *         the windows hold, and set-ups that `changesOf` refuses
 *
 * Valid:  any number of tasks; thousands take a second
 * Source: K. Neumann, C. Schwindt and J. Zimmermann, "Project scheduling with time windows and scarce resources" (2003), 1.4 (calendars)
 */
export function layAgenda(agenda: Agenda, past?: Past): Laid {
  const horizon = horizonFor(agenda) + (past?.now ?? 0);
  const open = openTimes(agenda, horizon);
  const project = projectOf(agenda);
  checkWaits(
    agenda,
    open.map((times, k) => (agenda.tasks[k]?.hands ? times : undefined)),
    (k) => past?.done.has(k) ?? false,
  );
  checkRounds(agenda);
  const hands = agenda.tasks.map((t) => (t.hands ? handsNeeded(t) : 0));
  const changes = changesOrNone(agenda);
  const crew = crewOf(agenda, changes);
  const whole: AgendaParts = { project, open, hands, changes, crew, nights: nightsOf(agenda) };
  checkRing(agenda, netOf(agenda, whole, horizon));
  checkRoom(agenda);
  return joined(agenda, past === undefined ? whole : afterPast(agenda, whole, past), horizon);
}

function joined(agenda: Agenda, parts: AgendaParts, horizon: number): Laid {
  const { project, open, hands, changes, crew } = parts;
  const net = netOf(agenda, parts, horizon);
  const people = agenda.capacity.person ?? 1;
  const head = earliestStarts(net);
  const runs = head === undefined ? { finish: 0, sessions: 0 } : runBound(net, people, hands, head);
  return {
    agenda,
    net,
    hands,
    model: {
      project,
      horizon,
      open: [undefined, ...open, undefined],
      loads: { windows: agenda.windows, people, hands, kitOf: changes.kitOf, entries: entriesOf(net) },
      rules: nightRules(agenda, parts.nights),
      ...(changes.minutes.length === 1 ? {} : crew === undefined ? { change: changeIn(changes) } : { crew }),
    },
    lower:
      head === undefined
        ? Number.POSITIVE_INFINITY
        : Math.max(finishBound(net, agenda.windows, people, hands, head, tailsOf(net)), runs.finish),
    fewest: Math.max(sessionBound(net, agenda.windows, people, hands), runs.sessions),
    leastIdle: idleBound(net, people, hands),
  };
}
