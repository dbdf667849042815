import { type Agenda, wrong } from "./agenda.ts";
import { nextOpen } from "./hand-line.ts";
import type { AgendaParts } from "./lay-agenda.ts";
import type { Lag } from "./project.ts";

/** What has happened: starts of the tasks that were done, by place in the agenda, and the present [min]. */
export interface Past {
  readonly done: ReadonlyMap<number, number>;
  readonly now: number;
}

/**
 * An agenda as it stands after some of it was done: done tasks keep the starts that they had, in a window or not; hands-on
 * tasks that are left start from now on; what needs no hands may have begun by itself. Waits from what is done hold on,
 * waits into it are history, and a round that was broken off is broken up.
 *
 * @param agenda  n tasks
 * @param parts   the whole agenda, laid out
 * @param past    what is done and now [min]
 * @returns       the parts with the past in them
 * @throws DomainError when a most-wait after a done task is over, or no window comes before it is
 *
 * Valid:  done tasks took the minutes that were planned
 * Source: the definition
 */
export function afterPast(agenda: Agenda, parts: AgendaParts, { done, now }: Past): AgendaParts {
  const { project, changes } = parts;
  const startOf = (k: number): number => done.get(k) ?? Number.POSITIVE_INFINITY;
  const endOf = (k: number): number => startOf(k) + (agenda.tasks[k]?.minutes ?? 0);
  const open = parts.open.map((times, k) => {
    const start = done.get(k);
    if (start !== undefined) return [[start, start]] as const;
    if (!agenda.tasks[k]?.hands) return times;
    return times
      .filter(([, last]) => last >= now)
      .map(([first, last]) => [Math.max(first, now), last] as const);
  });
  const isHistory = ({ from, to, least }: Lag): boolean => {
    const [a, b] = [from - 1, to - 1];
    if (!done.has(a) && !done.has(b)) return false;
    const round = agenda.tasks[a]?.round;
    const isBroken = round !== undefined && round === agenda.tasks[b]?.round;
    return isBroken || (done.has(b) && (done.has(a) || least >= 0));
  };
  const lags = project.lags.filter((lag) => !isHistory(lag));
  checkMostWaits(agenda, lags, open, { done, now });
  // the hands still hold what they held last
  const inHand = [...done.keys()]
    .filter((k) => (changes.kitOf[k] as number) >= 0)
    .reduce((last, k) => (last < 0 || endOf(k) > endOf(last) ? k : last), -1);
  const person = Object.keys(agenda.capacity).indexOf("person");
  const demands = project.demands.map((row, i) => {
    const k = i - 1;
    if (!done.has(k) || endOf(k) > now) return row;
    return row.map((demand, r) => (k === inHand && r === person ? demand : 0));
  });
  return {
    open,
    project: { ...project, lags, demands },
    hands: parts.hands.map((taken, k) => (done.has(k) ? 0 : taken)),
    changes: {
      ...changes,
      kitOf: changes.kitOf.map((kit, k) => (done.has(k) && endOf(k) <= now && k !== inHand ? -1 : kit)),
    },
  };
}

/** What must follow a done task soon enough still can. */
function checkMostWaits(agenda: Agenda, lags: readonly Lag[], open: AgendaParts["open"], past: Past): void {
  for (const { from, to, least } of lags) {
    const start = past.done.get(to - 1);
    if (start === undefined || past.done.has(from - 1)) continue;
    const task = agenda.tasks[from - 1];
    if (task === undefined || nextOpen(open[from - 1] ?? [], 0) <= start - least) continue;
    const most = -least - (agenda.tasks[to - 1]?.minutes ?? 0);
    throw wrong(
      "replan.now",
      task.task,
      `No window from now on comes within the ${most} minutes after ${agenda.tasks[to - 1]?.task} that it may wait.`,
    );
  }
}
