import type { Net } from "./net.ts";

type Windows = Net["windows"];

/** Tasks of which each must follow the one before it in the same window or the next: they take windows in a row. */
interface Run {
  /** Windows that it takes at the least. */
  readonly windows: number;
  /** The first window that it may begin in, by place. */
  readonly from: number;
  /** Minutes of work that each window of it holds at the least. */
  readonly work: number;
}

/** No plan ends sooner, and none has fewer sessions. */
export interface RunBound {
  readonly finish: number;
  readonly sessions: number;
}

/**
 * What runs of windows leave no plan without. A most-wait that is over before the window after next makes a chain of tasks
 * take windows in a row, L of them at the least; then of every L windows one, the last of them, sees each such chain at
 * work, and together those windows must hold the least that each chain does in one.
 *
 *     Σ work ≤ people·Σ length   over the windows f + L − 1, f + 2L − 1, …
 *
 * @param net     n tasks
 * @param people  how many pairs of hands there are
 * @param hands   pairs of hands by task (n); 0 for what goes on without them
 * @param head    earliest starts [min] (n)
 * @returns       a finish [min] and a count of sessions; 0 where no chain is bound so
 * @throws DomainError never
 *
 * Valid:  hands-on tasks that each lie within a window
 * Source: the definition: L windows in a row hold one of every L
 */
export function runBound(net: Net, people: number, hands: readonly number[], head: Int32Array): RunBound {
  const runs = runsOf(net, hands, head);
  const longestFirst = net.windows.map(([from, until]) => until - from).sort((a, b) => b - a);
  let finish = 0;
  let sessions = 0;
  for (const length of new Set(runs.map((run) => run.windows))) {
    const bound = runs.filter((run) => run.windows >= length);
    const work = bound.reduce((sum, run) => sum + run.work, 0) / people;
    const first = Math.min(...bound.map((run) => run.from));
    finish = Math.max(finish, endOfRuns(net.windows, first + length - 1, length, work));
    let held = 0;
    let rows = 0;
    for (; held < work && rows < longestFirst.length; rows++) held += longestFirst[rows] as number;
    sessions = Math.max(sessions, rows * length);
  }
  return { finish, sessions };
}

/** When so much work is done at the earliest in every so manieth window from one on. */
function endOfRuns(windows: Windows, first: number, every: number, work: number): number {
  let left = work;
  for (let at = first; at < windows.length; at += every) {
    const [from, until] = windows[at] as Windows[number];
    if (left <= until - from) return from + Math.ceil(left);
    left -= until - from;
  }
  return Number.POSITIVE_INFINITY;
}

function runsOf(net: Net, hands: readonly number[], head: Int32Array): Run[] {
  const next = Int32Array.from(net.minutes, (_, i) => closeAfter(net, hands, i));
  const isLater = new Set(next);
  const longest = Math.max(0, ...net.windows.map(([from, until]) => until - from));
  return [...next.keys()]
    .filter((i) => next[i] !== -1 && !isLater.has(i))
    .map((first): Run => {
      let [windows, since, work] = [1, 0, Number.POSITIVE_INFINITY];
      for (let i = first; i >= 0; i = next[i] as number) {
        work = Math.min(work, (net.minutes[i] as number) * (hands[i] as number));
        const j = next[i] as number;
        const arcs = (net.out[i] ?? []).filter((arc) => arc.other === j);
        if (arcs.length === 0) break;
        since += Math.max(...arcs.map((arc) => arc.least));
        const isNew = arcs.some((arc) => arc.otherWindow) || since + (net.minutes[j] as number) > longest;
        if (!isNew) continue;
        windows++;
        since = 0;
      }
      const from = net.windows.findIndex(([, until]) => until > (head[first] as number));
      return { windows, work, from };
    });
}

/** A task that must follow another in the same window or the next; −1 when there is none. */
function closeAfter({ out, into, open, windows }: Net, hands: readonly number[], i: number): number {
  if ((hands[i] as number) === 0) return -1;
  const isClose = (most: number): boolean =>
    (open[i] ?? []).every(([first, last]) => {
      const at = windows.findIndex(([, until]) => first <= until);
      return last + most < (windows[at + 2]?.[0] ?? Number.POSITIVE_INFINITY);
    });
  const found = (out[i] ?? []).find(
    ({ other, least }) =>
      least >= 0 &&
      (hands[other] as number) > 0 &&
      (into[i] ?? []).some((back) => back.other === other && back.least < 0 && isClose(-back.least)),
  );
  return found?.other ?? -1;
}
