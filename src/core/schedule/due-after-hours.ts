import { type Agenda, type AgendaTask, wrong } from "./agenda.ts";
import { type Changes, changesOf } from "./changes.ts";

/** Work that would follow in a session but comes due too late for it, and from when the session would have to begin. */
export interface DueAfterHours {
  /** Which of the windows, counted from 0. */
  readonly window: number;
  /** In the order in which they come due. */
  readonly tasks: readonly string[];
  /** When the first and the last of them come due [min]. */
  readonly firstDue: number;
  readonly lastDue: number;
  /** The latest beginning from which all of them are done in that window [min]; null where none is early enough. */
  readonly begin: number | null;
}

/** A beginning is told to five minutes, and one six hours earlier is another evening. */
const step = 5;
const mostEarlier = 360;

type Starts = Readonly<Record<string, number>>;

interface Bench {
  readonly agenda: Agenda;
  readonly changes: Changes | undefined;
  readonly minutes: ReadonlyMap<string, number>;
}

/** When the waits before a task are over, with the starts as they are. */
const dueOf = ({ agenda, minutes }: Bench, task: string, starts: Starts): number =>
  Math.max(
    Number.NEGATIVE_INFINITY,
    ...agenda.waits
      .filter(({ to }) => to === task)
      .map(({ from, leastMinutes }) => (starts[from] ?? 0) + (minutes.get(from) ?? 0) + leastMinutes),
  );

/** What waits for something of a session, is planned for a later one, and comes due too late to be done in this. */
function heldBack(bench: Bench, starts: Starts, window: Agenda["windows"][number]) {
  const [opens, closes] = window;
  const at = (task: string): number => starts[task] ?? Number.POSITIVE_INFINITY;
  return bench.agenda.tasks
    .filter(({ task }) => at(task) >= closes)
    .filter(({ task }) => {
      const waits = bench.agenda.waits.filter(({ to }) => to === task);
      if (waits.some(({ otherWindow }) => otherWindow)) return false;
      const before = waits.map(({ from }) => at(from));
      return before.some((start) => start >= opens) && before.every((start) => start < closes);
    })
    .map((task) => ({ task, due: dueOf(bench, task.task, starts) }))
    .filter(({ task, due }) => due + task.minutes > closes)
    .sort((a, b) => a.due - b.due);
}

/** Tasks one after another from a beginning on, each as early as it can; undefined where they run past the end. */
function laidFrom(
  bench: Bench,
  starts: Starts,
  order: readonly AgendaTask[],
  [begin, end]: readonly [number, number],
): Starts | undefined {
  const { agenda, changes } = bench;
  const now: Record<string, number> = { ...starts };
  let free = begin;
  let kit: number | undefined;
  for (const task of order) {
    const into = changes?.kitOf[agenda.tasks.indexOf(task)];
    const change = kit === undefined || into === undefined ? 0 : (changes?.minutes[kit]?.[into] ?? 0);
    const start = Math.max(free + change, task.notBefore, dueOf(bench, task.task, now));
    if (start + task.minutes > end) return undefined;
    now[task.task] = start;
    free = start + task.minutes;
    kit = into;
  }
  return now;
}

const keepsMostWaits = ({ agenda, minutes }: Bench, starts: Starts): boolean =>
  agenda.waits.every(
    ({ from, to, mostMinutes }) =>
      mostMinutes === null ||
      (starts[to] ?? 0) - (starts[from] ?? 0) - (minutes.get(from) ?? 0) <= mostMinutes,
  );

function checkOnePair({ tasks, capacity }: Agenda): void {
  if ((capacity.person ?? 1) !== 1)
    throw wrong("capacity.person", capacity.person, "This is for one person.");
  const at = tasks.findIndex(({ hands, round }) => !hands || round !== undefined);
  if (at >= 0)
    throw wrong(`tasks[${at}]`, tasks[at]?.task, "This is for hands-on tasks that are in no round.");
}

/**
 * What comes due when nobody is there any more: for each session of a plan, the work that would follow in it but for its
 * end, and the latest beginning of that session from which it is all done in it. The session keeps its order, what comes
 * due is done after it, and every wait and change is kept.
 *
 * @param agenda    one person, hands-on tasks
 * @param starts    of each task, a plan that keeps the agenda [min]
 * @param earliest  no session can begin before it [min]
 * @returns         sessions that have such work, in order of time
 * @throws DomainError for several people, tasks without hands, and rounds
 *
 * Valid:  beginnings in steps of five minutes, up to six hours earlier and after the end of the window before
 * Source: the definition, by trial
 * @example
 * dueAfterHours({ tasks: [{ task: "coat 1", minutes: 20, hands: true, needs: {}, notBefore: -600 }, { task: "coat 2", minutes: 20, hands: true, needs: {}, notBefore: -600 }], waits: [{ from: "coat 1", to: "coat 2", leastMinutes: 60, mostMinutes: null }], capacity: {}, windows: [[0, 90], [1440, 1530]] }, { "coat 1": 0, "coat 2": 1440 }, -600)[0].begin // => -10
 */
export function dueAfterHours(agenda: Agenda, starts: Starts, earliest: number): DueAfterHours[] {
  checkOnePair(agenda);
  const bench: Bench = {
    agenda,
    changes: changesOf(agenda),
    minutes: new Map(agenda.tasks.map(({ task, minutes }) => [task, minutes])),
  };
  return agenda.windows.flatMap((window, i) => {
    const held = heldBack(bench, starts, window);
    const [first, last] = [held[0], held.at(-1)];
    if (first === undefined || last === undefined) return [];
    const [opens, closes] = window;
    const session = agenda.tasks
      .filter(({ task }) => (starts[task] ?? closes) >= opens && (starts[task] ?? closes) < closes)
      .sort((a, b) => (starts[a.task] ?? 0) - (starts[b.task] ?? 0));
    const order = [...session, ...held.map(({ task }) => task)];
    const least = Math.max(earliest, opens - mostEarlier, agenda.windows[i - 1]?.[1] ?? earliest);
    let begin: number | null = null;
    for (let from = opens - step; begin === null && from >= least; from -= step) {
      const laid = laidFrom(bench, starts, order, [from, closes]);
      if (laid !== undefined && keepsMostWaits(bench, laid)) begin = from;
    }
    return [
      { window: i, tasks: held.map(({ task }) => task.task), firstDue: first.due, lastDue: last.due, begin },
    ];
  });
}
