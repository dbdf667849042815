import { descend, engineUntil, fewestSessions, leastIdle, togetherAtMost } from "./bench-goals.ts";
import type { Engine } from "./engine/engine.ts";
import type { SumAtMost } from "./engine/sum-at-most.ts";
import { goodAgenda, type MeasuredPlan, measured, type Watch } from "./good-agenda.ts";
import { earliestStarts } from "./heads.ts";
import type { Laid } from "./lay-agenda.ts";
import { ListPlanner } from "./list-planner.ts";
import { type AgendaSearch, searchable, watches } from "./plan-agenda.ts";
import { shortened } from "./solve.ts";

export interface Replanned {
  readonly plan: MeasuredPlan | undefined;
  /** Infinite when there is no plan at all. */
  readonly lowerBound: number;
  /** No plan ends sooner, or the old plan ends no sooner. */
  readonly isFinishKept: boolean;
  /** Hands-on tasks that start at another time than in the old plan, by place. */
  readonly moved: readonly number[];
  /** No plan that ends as soon moves fewer. */
  readonly isFewestMoved: boolean;
}

/** A plan that is to be kept as far as can be. */
export interface OldPlan {
  /** By task [min]; −1 for a task that was not in it. */
  readonly starts: Int32Array;
  /** By task who was to do it, from 0; −1 where that is not told. */
  readonly who: Int32Array;
}

const movedIn = ({ hands }: Laid, old: Int32Array, starts: ArrayLike<number>): number[] =>
  [...old.keys()].filter((k) => (old[k] as number) >= 0 && (hands[k] as number) > 0 && starts[k] !== old[k]);

/**
 * A plan for what is left of an agenda that keeps as much of the old one as it can: it ends no later than the old plan, or
 * as soon after as can be; of such plans it moves the fewest hands-on tasks, and of those it has the fewest sessions and then
 * the least idle minutes.
 *
 * @param laid    the agenda after its past
 * @param old     the old plan (n)
 * @param search  how long, when to stop, and whom to tell
 * @returns       the plan, the tasks that it moves, and what of it is proven
 * @throws DomainError never: what cannot be planned is an answer
 *
 * Valid:  proofs up to 250 tasks; good plans for thousands
 * Source: least change of a schedule as the second goal: H. H. El Sakkout and M. G. Wallace, "Probe backtrack search for
 *         minimal perturbation in dynamic scheduling", Constraints 5 (2000) 359
 */
export function replanned(laid: Laid, old: OldPlan, search: AgendaSearch): Replanned {
  const none = {
    plan: undefined,
    lowerBound: laid.lower,
    isFinishKept: false,
    moved: [],
    isFewestMoved: false,
  };
  if (!Number.isFinite(laid.lower)) return none;
  const within = watches(search, (plan) => search.onBest?.(plan, laid.lower));
  const oldFinish = old.starts.reduce(
    (last, start, k) => Math.max(last, start + (laid.net.minutes[k] as number)),
    0,
  );
  const target = Math.max(laid.lower, oldFinish);
  const soonest = soonEnough(laid, old, target, within(0.5).mustStop);
  if (soonest.plan === undefined) return { ...none, lowerBound: soonest.lowerBound };
  search.onBest?.(soonest.plan, soonest.lowerBound);
  const end = Math.max(soonest.plan.finish, target);
  const fewest = fewestMoved(laid, old.starts, soonest.plan, end, within(0.8));
  const plan = easedAtBench(laid, old.starts, fewest.plan, end, within);
  return {
    plan,
    lowerBound: soonest.lowerBound,
    isFinishKept: plan.finish <= target || soonest.isProven,
    moved: movedIn(laid, old.starts, plan.starts),
    isFewestMoved: fewest.isProven,
  };
}

interface Soonest {
  readonly plan: MeasuredPlan | undefined;
  readonly lowerBound: number;
  readonly isProven: boolean;
}

/** The old plan mended, or where that ends too late a plan made anew. */
function soonEnough(laid: Laid, old: OldPlan, target: number, mustStop: (steps: number) => boolean): Soonest {
  const kept = new ListPlanner(laid.net).keep(old.starts, old.who);
  let plan = kept === undefined ? undefined : measured(laid, kept);
  if (plan !== undefined && plan.finish <= target) return { plan, lowerBound: laid.lower, isProven: false };
  const anew = goodAgenda(laid, 20, { mustStop, onBest: () => {} });
  if (plan === undefined || (anew !== undefined && anew.finish < plan.finish)) plan = anew;
  if (laid.net.minutes.length > searchable || (plan !== undefined && plan.finish <= target))
    return { plan, lowerBound: laid.lower, isProven: false };
  const known = plan === undefined ? undefined : Int32Array.of(0, ...plan.starts, plan.finish);
  const solved = shortened(laid.model, known, { mustStop }, target);
  if (solved.starts === null)
    return { plan, lowerBound: solved.proven ? Number.POSITIVE_INFINITY : laid.lower, isProven: false };
  return {
    plan: measured(laid, Int32Array.from(solved.starts.slice(1, -1))),
    // below the target nothing was looked for
    lowerBound: solved.proven && (solved.length as number) > target ? (solved.length as number) : laid.lower,
    isProven: solved.proven,
  };
}

/** Tasks that cannot stay where they were whatever the others do. */
function mustMove(laid: Laid, old: Int32Array): number {
  const head = earliestStarts(laid.net);
  return movedIn(
    laid,
    old,
    old.map((start, k) => {
      const isOpen = laid.net.open[k]?.some(([first, last]) => first <= start && start <= last) ?? false;
      return isOpen && (head?.[k] as number) <= start ? start : -1;
    }),
  ).length;
}

/** An engine for plans that end by then, with a limit on how many tasks they move. */
function keepingEngine(laid: Laid, old: Int32Array, end: number): { engine: Engine; limit: SumAtMost } {
  const engine = engineUntil(laid, end);
  const moves = [...old.keys()].flatMap((k) => {
    const start = old[k] as number;
    if (start < 0 || (laid.hands[k] as number) === 0) return [];
    const moved = engine.bounds.variable(0, 1);
    const task = 2 * (k + 1);
    engine.addClause([2 * moved, 1], [task, start]);
    engine.addClause([2 * moved, 1], [task + 1, -start]);
    return [moved];
  });
  return { engine, limit: togetherAtMost(engine, moves, moves.length) };
}

function fewestMoved(
  laid: Laid,
  old: Int32Array,
  known: MeasuredPlan,
  end: number,
  watch: Watch,
): { plan: MeasuredPlan; isProven: boolean } {
  const count = (plan: MeasuredPlan): number => movedIn(laid, old, plan.starts).length;
  if (count(known) <= mustMove(laid, old)) return { plan: known, isProven: true };
  if (laid.net.minutes.length > searchable) return { plan: known, isProven: false };
  const { engine, limit } = keepingEngine(laid, old, end);
  const { plan, proven } = descend(laid, engine, limit, known, (best) => count(best) - 1, watch);
  return { plan, isProven: proven };
}

/** Of the plans that end by then and move no more, one with fewer sessions and less idle time. */
function easedAtBench(
  laid: Laid,
  old: Int32Array,
  known: MeasuredPlan,
  end: number,
  within: (share: number) => Watch,
): MeasuredPlan {
  if (laid.net.minutes.length > searchable) return known;
  const moved = movedIn(laid, old, known.starts).length;
  const anew = (): Engine => {
    const { engine, limit } = keepingEngine(laid, old, end);
    limit.most = moved;
    return engine;
  };
  const fewest = fewestSessions(laid, known, within(0.9), anew);
  return leastIdle(laid, fewest.plan, within(1), anew).plan;
}
