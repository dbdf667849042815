import { type Agenda, placeOf } from "./agenda.ts";
import type { Statement } from "./engine/engine.ts";
import type { Open } from "./engine/openings.ts";
import type { NetLag } from "./net.ts";

/** Two tasks of the agenda, of which the second is for a later window than the first. */
export interface Night {
  readonly from: number;
  readonly to: number;
}

/** The waits of an agenda over a night. */
export const nightsOf = (agenda: Agenda): Night[] =>
  agenda.waits.flatMap(({ from, to, otherWindow }, w) =>
    otherWindow === true
      ? [{ from: placeOf(agenda, from, `waits[${w}].from`), to: placeOf(agenda, to, `waits[${w}].to`) }]
      : [],
  );

/** The same as lags: no night is shorter than the shortest between two windows. */
export function nightLags({ tasks, windows }: Agenda, nights: readonly Night[]): NetLag[] {
  const between = windows.slice(1).map(([from], w) => from - (windows[w]?.[1] ?? 0));
  const shortest = between.length === 0 ? 0 : Math.min(...between);
  return nights.map(({ from, to }) => ({
    from,
    to,
    least: (tasks[from]?.minutes ?? 0) + shortest,
    otherWindow: true,
  }));
}

/** For each window: the second starts after it, or the first before it; variable k + 1 is the start of task k. */
export const nightRules = ({ tasks, windows }: Agenda, nights: readonly Night[]): Statement[][] =>
  nights.flatMap(({ from, to }) =>
    windows.map(([opens, closes]): Statement[] => [
      [2 * (to + 1), closes - (tasks[to]?.minutes ?? 0) + 1],
      [2 * (from + 1) + 1, 1 - opens],
    ]),
  );

/** Of the times at which a task may start those in windows that open from a moment on. */
export const openedFrom = (windows: Agenda["windows"], open: readonly Open[], moment: number): Open[] =>
  open.filter(([first]) =>
    windows.some(([from, until]) => from >= moment && from <= first && first <= until),
  );
