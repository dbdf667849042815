import type { MeasuredPlan } from "../schedule/good-agenda.ts";
import { type Laid, layAgenda } from "../schedule/lay-agenda.ts";
import { type AgendaSearch, type ProvenGoals, planAgenda } from "../schedule/plan-agenda.ts";
import { replanned } from "../schedule/replan.ts";
import { whoDoesWhat } from "../schedule/who-does-what.ts";
import { type AgendaInput, type ReadAgenda, readAgenda } from "./agenda-input.ts";

/** A plan in clock times. */
export interface ClockPlan {
  readonly starts: Readonly<Record<string, string>>;
  readonly finish: string;
  readonly sessions: number;
  readonly idleMinutes: number;
  /** From 1, where several people change their pads each for themselves. */
  readonly who?: Readonly<Record<string, number>>;
}

export interface ScheduledAgenda {
  readonly plan: (ClockPlan & { readonly moved?: string[]; readonly isFewestMoved?: boolean }) | null;
  /** Null when it is known that there is no plan. */
  readonly lowerBound: string | null;
  readonly provenBest: ProvenGoals | null;
}

const clockPlan = (read: ReadAgenda, laid: Laid, plan: MeasuredPlan): ClockPlan => ({
  starts: Object.fromEntries(
    read.agenda.tasks.map((t, k) => [t.task, read.clock.clock(read.origin + (plan.starts[k] as number))]),
  ),
  finish: read.clock.clock(read.origin + plan.finish),
  sessions: plan.sessions,
  idleMinutes: plan.idleMinutes,
  ...whoIn(read, laid, plan),
});

function whoIn({ agenda, replan }: ReadAgenda, { net }: Laid, plan: MeasuredPlan): Pick<ClockPlan, "who"> {
  if (net.crew === undefined) return {};
  const who = whoDoesWhat(net.crew, plan.starts, replan?.old.who);
  const told = agenda.tasks.flatMap(({ task }, k): [string, number][] => {
    const person = (who[k] as number) < 0 ? replan?.past.who.get(k) : who[k];
    return person === undefined ? [] : [[task, person + 1]];
  });
  return { who: Object.fromEntries(told) };
}

/** How long to search, when to stop, and whom to tell of better plans on the way. */
export type ClockSearch = Omit<AgendaSearch, "onBest"> & {
  readonly onBest?: (plan: ClockPlan, lowerBound: string) => void;
};

/**
 * A plan for an agenda: the earliest finish, then the fewest sessions, then the least idle minutes at the bench; or where an
 * old plan is given, one that keeps as much of it as can be.
 *
 * @param given   the agenda as typed
 * @param search  how long, when to stop, and whom to tell
 * @returns       the plan in clock times, a finish that none can beat, and the goals for which it is proven best
 * @throws DomainError for what `readAgenda` and `layAgenda` refuse
 *
 * Valid:  as `planAgenda` and `replanned`
 * Source: as `planAgenda` and `replanned`
 */
export function scheduleAgenda(given: AgendaInput, search: ClockSearch): ScheduledAgenda {
  const read = readAgenda(given);
  const { onBest, ...when } = search;
  const at = (minute: number): string => read.clock.clock(read.origin + minute);
  const laid = layAgenda(read.agenda, read.replan?.past);
  const inner: AgendaSearch = {
    ...when,
    ...(onBest === undefined
      ? {}
      : { onBest: (plan, lower) => onBest(clockPlan(read, laid, plan), at(lower)) }),
  };
  const bound = (lower: number): string | null => (Number.isFinite(lower) ? at(lower) : null);
  if (read.replan === undefined) {
    const { plan, lowerBound, provenBest } = planAgenda(laid, inner);
    return {
      plan: plan === undefined ? null : clockPlan(read, laid, plan),
      lowerBound: bound(lowerBound),
      provenBest,
    };
  }
  const { plan, lowerBound, isFinishKept, moved, isFewestMoved } = replanned(laid, read.replan.old, inner);
  if (plan === undefined) return { plan: null, lowerBound: bound(lowerBound), provenBest: null };
  const names = moved.map((k) => read.agenda.tasks[k]?.task ?? "");
  return {
    plan: { ...clockPlan(read, laid, plan), moved: names, isFewestMoved: isFinishKept && isFewestMoved },
    lowerBound: bound(lowerBound),
    provenBest: plan.finish <= lowerBound ? "finish" : null,
  };
}
