import { type Agenda, wrong } from "./agenda.ts";
import type { Changes } from "./changes.ts";
import { crewOf } from "./crew.ts";
import type { Open } from "./engine/openings.ts";
import { nextOpen } from "./hand-line.ts";
import type { AgendaParts } from "./lay-agenda.ts";
import { openedFrom } from "./nights.ts";
import type { Lag } from "./project.ts";

/** What has happened: starts of the tasks that were done and who did them, by place in the agenda, and the present [min]. */
export interface Past {
  readonly done: ReadonlyMap<number, number>;
  /** People from 0, as far as it is told. */
  readonly who: ReadonlyMap<number, number>;
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
export function afterPast(agenda: Agenda, parts: AgendaParts, past: Past): AgendaParts {
  const { done, now } = past;
  const { project, changes } = parts;
  const startOf = (k: number): number => done.get(k) ?? Number.POSITIVE_INFINITY;
  const endOf = (k: number): number => startOf(k) + (agenda.tasks[k]?.minutes ?? 0);
  const open = parts.open.map((times, k) => {
    const start = done.get(k);
    if (start !== undefined) return [[start, start]] as const;
    if (!agenda.tasks[k]?.hands) return times;
    return afterNights(agenda, parts, past, k)
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
  checkMostWaits(agenda, lags, open, past);
  const kitOf = kitsLeft(agenda, changes, past);
  const isOne = agenda.capacity.person === 1;
  const person = Object.keys(agenda.capacity).indexOf("person");
  const demands = project.demands.map((row, i) => {
    const k = i - 1;
    if (!done.has(k) || endOf(k) > now) return row;
    // of one person the order after what is in the hand is that of tasks which cannot be together
    return row.map((demand, r) => (isOne && kitOf[k] !== -1 && r === person ? demand : 0));
  });
  const left = { ...changes, kitOf };
  return {
    open,
    project: { ...project, lags, demands },
    hands: parts.hands.map((taken, k) => (done.has(k) ? 0 : taken)),
    changes: left,
    crew: crewOf(agenda, left, past),
    nights: parts.nights.filter(({ from, to }) => !done.has(from) && !done.has(to)),
  };
}

/** When a task may start by its windows, and by what was done so that a night must pass. */
function afterNights(
  agenda: Agenda,
  { open, nights }: AgendaParts,
  { done }: Past,
  k: number,
): readonly Open[] {
  return nights.reduce((times: readonly Open[], { from, to }) => {
    const start = done.get(from);
    if (to !== k || start === undefined) return times;
    const task = agenda.tasks[from];
    const left = openedFrom(agenda.windows, times, start + (task?.minutes ?? 0));
    if (left.length > 0) return left;
    throw wrong(
      "windows",
      agenda.windows.length,
      `No window opens after ${task?.task} for ${agenda.tasks[k]?.task}, which is for a later one.`,
    );
  }, open[k] ?? []);
}

/** Kits by task when of what is done only that is left which somebody still does, or may still hold. */
function kitsLeft(agenda: Agenda, { kitOf, minutes }: Changes, { done, who, now }: Past): Int32Array {
  const endOf = (k: number): number => (done.get(k) as number) + (agenda.tasks[k]?.minutes ?? 0);
  const isLeft = (k: number): boolean => {
    const longest = Math.max(...(minutes[kitOf[k] as number] ?? [0]));
    return (kitOf[k] as number) >= 0 && endOf(k) + longest > now;
  };
  const lastOf = new Map<number, number>();
  for (const k of done.keys()) {
    const before = lastOf.get(who.get(k) ?? -1);
    if (isLeft(k) && (before === undefined || endOf(k) > endOf(before))) lastOf.set(who.get(k) ?? -1, k);
  }
  const inHand = new Set(lastOf.values());
  return kitOf.map((kit, k) =>
    done.has(k) && (!isLeft(k) || (endOf(k) <= now && !inHand.has(k))) ? -1 : kit,
  );
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
