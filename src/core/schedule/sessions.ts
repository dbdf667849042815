import { AtMost } from "./engine/at-most.ts";
import type { Engine } from "./engine/engine.ts";
import { engineOf } from "./exact.ts";
import type { Laid } from "./lay-agenda.ts";
import { luby } from "./luby.ts";
import type { Search } from "./solve.ts";

export interface FewestSessions {
  /** Starts by task of the project. */
  readonly starts: readonly number[];
  readonly sessions: number;
  /** No plan of this length has fewer. */
  readonly proven: boolean;
}

type Windows = readonly (readonly [from: number, until: number])[];

/**
 * Counts the windows in which hands-on work starts.
 *
 * @param starts   starts by task of the project [min], n
 * @param isHands  which of them need hands, n
 * @param windows  from and until [min]
 * @returns        how many windows are used
 * @throws DomainError never
 *
 * Valid:  hands-on tasks that each lie within a window
 * Source: the definition
 */
export const sessionsUsed = (
  starts: readonly number[],
  isHands: readonly boolean[],
  windows: Windows,
): number =>
  windows.filter(([from, until]) => starts.some((s, i) => isHands[i] === true && s >= from && s < until))
    .length;

/** A 0-1 variable for each window: 1 when a hands-on task starts in it. */
function useOfWindows(engine: Engine, isHands: readonly boolean[], windows: Windows): number[] {
  return windows.map(([from, until]) => {
    const used = engine.bounds.variable(0, 1);
    isHands.forEach((hands, i) => {
      // not (from ≤ start < until), or used
      if (hands) engine.addClause([2 * i + 1, 1 - from], [2 * i, until], [2 * used, 1]);
    });
    return used;
  });
}

/**
 * Of the plans that end no later, one with the fewest sessions.
 *
 * @param laid     the agenda as a project
 * @param isHands  which tasks of the project need hands, n
 * @param windows  from and until [min], in order
 * @param plan     a plan to begin with [min], n starts: its end is kept or bettered
 * @param search   when to stop
 * @returns        the plan, its sessions, and whether fewer are impossible
 * @throws DomainError never
 *
 * Valid:  as `layAgenda`
 * Source: lexicographic order of goals; search as in `solveProject`
 */
export function fewestSessions(
  laid: Laid,
  isHands: readonly boolean[],
  windows: Windows,
  plan: readonly number[],
  search: Search,
): FewestSessions {
  const end = plan.length - 1;
  const engine = engineOf(laid.shape, laid.distance);
  const used = useOfWindows(engine, isHands, windows);
  let best = plan;
  let sessions = sessionsUsed(plan, isHands, windows);
  const limit = new AtMost(engine.bounds, engine.notes, used, sessions - 1);
  engine.addPropagator(limit, used);
  engine.want(Int32Array.from(plan));
  const mustStop = (): boolean => search.mustStop(engine.work);
  engine.require(2 * end + 1, -(plan[end] as number));
  for (let round = 1; !mustStop(); round++) {
    const outcome = engine.search(100 * luby(round), mustStop);
    if (outcome === "none") return { starts: best, sessions, proven: true };
    if (outcome === "found") {
      best = plan.map((_, i) => engine.bounds.least(i));
      sessions = sessionsUsed(best, isHands, windows);
      limit.most = sessions - 1;
      engine.want(Int32Array.from(best));
      engine.wakeAll();
    }
    engine.tidy(6000 + 10 * round);
  }
  return { starts: best, sessions, proven: false };
}
