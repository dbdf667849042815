import type { Agenda } from "./agenda.ts";

/** What a plan comes to, in the order of the goals; minutes from the first window. */
export interface Measures {
  readonly finish: number;
  /** Windows in which hands-on work is done. */
  readonly sessions: number;
  /**
   * Minutes of waiting at the bench: all people are there from the first start of each session to its last end, and what of
   * their time is no work is idle. Time to change is idle.
   */
  readonly idleMinutes: number;
}

/**
 * What a plan comes to.
 *
 *     idle = Σ (people·(last end − first start) − Σ hands·minutes)   over the sessions
 *
 * @param agenda  n tasks, and windows in order of time
 * @param hands   pairs of hands that each still takes (n): what is done is not counted
 * @param starts  when each starts [min] (n)
 * @returns       finish [min], sessions and idle minutes
 * @throws DomainError never
 *
 * Valid:  hands-on tasks that each lie within a window
 * Source: the definitions
 */
export function measuresOf(agenda: Agenda, hands: readonly number[], starts: ArrayLike<number>): Measures {
  const people = agenda.capacity.person ?? 1;
  let finish = 0;
  let work = 0;
  const spans: [number, number][] = [];
  agenda.tasks.forEach(({ minutes }, i) => {
    const start = starts[i] as number;
    finish = Math.max(finish, start + minutes);
    if ((hands[i] as number) === 0) return;
    spans.push([start, start + minutes]);
    work += (hands[i] as number) * minutes;
  });
  spans.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  let sessions = 0;
  let atBench = 0;
  let windowEnds = Number.NEGATIVE_INFINITY;
  let until = 0;
  let at = 0;
  for (const [start, end] of spans) {
    if (start >= windowEnds) {
      while ((agenda.windows[at]?.[1] ?? Number.POSITIVE_INFINITY) <= start) at++;
      windowEnds = agenda.windows[at]?.[1] ?? Number.POSITIVE_INFINITY;
      sessions++;
      until = start;
    }
    atBench += Math.max(0, end - until);
    until = Math.max(until, end);
  }
  return { finish, sessions, idleMinutes: people * atBench - work };
}

/** Negative when the first is better: an earlier finish, then fewer sessions, then less idle time. */
export const compareMeasures = (a: Measures, b: Measures): number =>
  a.finish - b.finish || a.sessions - b.sessions || a.idleMinutes - b.idleMinutes;
