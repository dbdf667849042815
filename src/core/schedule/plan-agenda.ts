import { fewestSessions, leastIdle } from "./bench-goals.ts";
import { earlySessions } from "./early-sessions.ts";
import { goodAgenda, isBestOfAll, type MeasuredPlan, measured, type Watch } from "./good-agenda.ts";
import type { Laid } from "./lay-agenda.ts";
import { shortened } from "./solve.ts";

/** The goals for which no plan is better, in their order. */
export const provenGoals = ["finish", "finish and sessions", "all goals"] as const;
export type ProvenGoals = (typeof provenGoals)[number];

export interface AgendaSearch {
  /** Steps of about a microsecond; a first plan is made whatever it takes. */
  readonly steps: number;
  /** Asked now and then; true ends the search with the best found. */
  readonly mustStop?: () => boolean;
  /** Told of every better plan and of every better bound: a finish that none can beat. */
  readonly onBest?: (plan: MeasuredPlan, lowerBound: number) => void;
}

export interface PlannedAgenda {
  readonly plan: MeasuredPlan | undefined;
  /** Infinite when there is no plan at all. */
  readonly lowerBound: number;
  readonly provenBest: ProvenGoals | null;
}

/** Larger agendas are planned by lists and held against a bound: a search with learning does not get through them. */
export const searchable = 250;

/**
 * A plan for an agenda: the earliest finish, then the fewest sessions, then the least idle minutes at the bench;
 * of what is left open, each session begins as early as it can.
 *
 * @param laid    the agenda
 * @param search  how long, when to stop, and whom to tell
 * @returns       the plan, a finish that none can beat [min], and the goals for which it is proven best
 * @throws DomainError never: what cannot be planned is an answer
 *
 * Valid:  proofs up to 250 tasks; good plans for thousands
 * Source: as `goodAgenda`, `solveProject`; each goal with those before it kept
 */
export function planAgenda(laid: Laid, search: AgendaSearch): PlannedAgenda {
  const found = searched(laid, search);
  return { ...found, plan: found.plan && earlySessions(laid, found.plan) };
}

function searched(laid: Laid, search: AgendaSearch): PlannedAgenda {
  const none = { plan: undefined, lowerBound: Number.POSITIVE_INFINITY, provenBest: null };
  if (!Number.isFinite(laid.lower)) return none;
  const isSearchable = laid.net.minutes.length <= searchable;
  let lowerBound = laid.lower;
  const within = watches(search, (plan) => search.onBest?.(plan, lowerBound));
  const good = goodAgenda(laid, isSearchable ? 40 : Number.POSITIVE_INFINITY, within(isSearchable ? 0.3 : 1));
  if (good !== undefined && isBestOfAll(laid, good))
    return { plan: good, lowerBound, provenBest: "all goals" };
  if (!isSearchable) return { plan: good, lowerBound, provenBest: provenByBounds(laid, good) };
  const known = good === undefined ? undefined : Int32Array.of(0, ...good.starts, good.finish);
  const { mustStop, onBest } = within(0.6);
  const progress = (starts: Int32Array | undefined, lower: number): void => {
    lowerBound = lower;
    if (starts !== undefined) onBest(measured(laid, starts.slice(1, -1)));
  };
  const solved = shortened(laid.model, known, { mustStop, progress }, lowerBound);
  lowerBound = solved.lowerBound;
  if (solved.starts === null) return { ...none, lowerBound };
  const soonest = measured(laid, Int32Array.from(solved.starts.slice(1, -1)));
  const fewest = fewestSessions(laid, soonest, within(0.8));
  const least = leastIdle(laid, fewest.plan, within(1));
  const proofs = [solved.proven, fewest.proven, least.proven];
  const proven = proofs.includes(false) ? proofs.indexOf(false) : proofs.length;
  return { plan: least.plan, lowerBound, provenBest: provenGoals[proven - 1] ?? null };
}

/** A watch for each part of a search, which ends when so great a share of all steps is spent. */
export function watches(
  search: AgendaSearch,
  onBest: (plan: MeasuredPlan) => void,
): (share: number) => Watch {
  let spent = 0;
  return (share) => {
    const before = spent;
    return {
      onBest,
      mustStop: (steps) => {
        spent = before + steps;
        return spent > share * search.steps || (search.mustStop?.() ?? false);
      },
    };
  };
}

/** What the bounds alone prove. */
function provenByBounds(laid: Laid, plan: MeasuredPlan | undefined): ProvenGoals | null {
  if (plan === undefined || plan.finish > laid.lower) return null;
  return plan.sessions > laid.fewest ? "finish" : "finish and sessions";
}
