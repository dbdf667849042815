import type { Engine, Statement } from "./engine/engine.ts";
import type { SumAtMost, Term } from "./engine/sum-at-most.ts";
import { engineOf } from "./exact.ts";
import { type MeasuredPlan, measured, type Watch } from "./good-agenda.ts";
import type { Laid } from "./lay-agenda.ts";
import { longestPaths } from "./longest-paths.ts";
import { luby } from "./luby.ts";
import { changesBeyond, entriesOf } from "./plan-bounds.ts";

export interface Bettered {
  readonly plan: MeasuredPlan;
  /** No plan that is as good by the goals before has less. */
  readonly proven: boolean;
}

/** An engine for plans that end no later than one that is known. */
export function engineUntil(laid: Laid, finish: number): Engine {
  const { distance = [] } = longestPaths(laid.model.project);
  return engineOf({ ...laid.model, horizon: finish }, distance);
}

/** A 0-1 variable for each window: 1 when a hands-on task starts in it. */
function useOfWindows({ agenda, hands }: Laid, engine: Engine): number[] {
  return agenda.windows.map(([from, until]) => {
    const used = engine.bounds.variable(0, 1);
    hands.forEach((taken, k) => {
      const start = 2 * (k + 1);
      // not (from ≤ start < until), or used
      if (taken > 0) engine.addClause([start + 1, 1 - from], [start, until], [2 * used, 1]);
    });
    return used;
  });
}

/** Some variables add up to so much at most. */
export const togetherAtMost = (engine: Engine, variables: readonly number[], most: number): SumAtMost =>
  engine.addSum(
    variables.map((x): Term => [2 * x, 1]),
    most,
  );

/**
 * For each window the idle minutes: all people are there from its first start to its last end.
 *
 *     people·(last − first) − Σ hands·minutes·isIn ≤ idle,   Σ hands·minutes·isIn ≤ people·(last − first)
 */
function idleOfWindows({ agenda, hands, net }: Laid, engine: Engine): number[] {
  const { bounds, lags } = engine;
  const people = agenda.capacity.person ?? 1;
  const entries = entriesOf(net);
  const inside: Statement[][] = hands.map(() => []);
  const idle = agenda.windows.map(([from, until]) => {
    const first = bounds.variable(from, until);
    const last = bounds.variable(from, until);
    // what can be nowhere else is done here, with the changes that it takes
    const here = [...hands.keys()].filter(
      (k) => hands[k] !== 0 && bounds.least(k + 1) >= from && bounds.most(k + 1) < until,
    );
    const kits = new Set(here.map((k) => net.kitOf[k] as number));
    const changes = changesBeyond(people, kits, entries);
    const idleHere = bounds.variable(changes, people * (until - from));
    lags.add(first, last, 0);
    const work: [isIn: number, work: number][] = [];
    agenda.tasks.forEach(({ minutes }, k) => {
      const task = k + 1;
      if (hands[k] === 0 || minutes === 0 || bounds.most(task) < from || bounds.least(task) >= until) return;
      const isIn = bounds.variable(0, 1);
      inside[k]?.push([2 * isIn, 1]);
      work.push([isIn, minutes * (hands[k] as number)]);
      engine.addClause([2 * task + 1, 1 - from], [2 * task, until], [2 * isIn, 1]);
      engine.addClause([2 * isIn + 1, 0], [2 * task, from]);
      engine.addClause([2 * isIn + 1, 0], [2 * task + 1, 1 - until]);
      const guard = { side: 2 * isIn, value: 1 };
      lags.add(first, task, 0, guard);
      lags.add(task, last, minutes, guard);
    });
    const without = work.map(([isIn, minutes]): Term => [2 * isIn + 1, minutes]);
    engine.addSum([[2 * last, people], [2 * first + 1, people], [2 * idleHere + 1, 1], ...without], 0);
    const done = work.map(([isIn, minutes]): Term => [2 * isIn, minutes]);
    engine.addSum([[2 * last + 1, people], [2 * first, people], ...done], 0);
    return idleHere;
  });
  for (const statements of inside) if (statements.length > 0) engine.addClause(...statements);
  return idle;
}

/**
 * Better and better by one measure, until nothing is left to find.
 *
 * @param laid      the agenda
 * @param engine    with the goals before held, and `limit` among its propagators
 * @param limit     on the measure
 * @param known     a plan to begin with
 * @param mostFor   what the limit is to be for a plan to be better than another
 * @param watch     asked when to stop, and told of better plans
 * @returns         the best plan, and whether none is better
 * @throws DomainError never
 *
 * Valid:  as `shortened`
 * Source: as `solveProject`
 */
export function descend(
  laid: Laid,
  engine: Engine,
  limit: SumAtMost,
  known: MeasuredPlan,
  mostFor: (plan: MeasuredPlan) => number,
  watch: Watch,
): Bettered {
  let plan = known;
  const aim = (): void => {
    limit.most = mostFor(plan);
    engine.want(Int32Array.of(0, ...plan.starts, plan.finish));
    engine.wakeAll();
  };
  aim();
  const stop = (): boolean => watch.mustStop(engine.work);
  for (let round = 1; !stop(); round++) {
    const outcome = engine.search(100 * luby(round), stop);
    if (outcome === "none") return { plan, proven: true };
    if (outcome === "found") {
      plan = measured(
        laid,
        Int32Array.from(plan.starts, (_, k) => engine.bounds.least(k + 1)),
      );
      aim();
    }
    engine.tidy(6000 + 10 * round);
  }
  return { plan, proven: false };
}

/**
 * Of the plans that end no later, one with the fewest sessions.
 *
 * @param laid      the agenda
 * @param known     a plan to begin with: its finish is kept
 * @param watch     asked when to stop, and told of better plans
 * @param anew      an engine that holds the goals before
 * @returns         the plan, and whether fewer sessions are impossible
 * @throws DomainError never
 *
 * Valid:  as `shortened`
 * Source: lexicographic order of goals; search as in `solveProject`
 */
export function fewestSessions(
  laid: Laid,
  known: MeasuredPlan,
  watch: Watch,
  anew = (): Engine => engineUntil(laid, known.finish),
): Bettered {
  if (known.sessions <= laid.fewest) return { plan: known, proven: true };
  const engine = anew();
  const used = useOfWindows(laid, engine);
  const limit = togetherAtMost(engine, used, used.length);
  return descend(laid, engine, limit, known, (plan) => plan.sessions - 1, watch);
}

/**
 * Of the plans that end no later and have no more sessions, one with the least idle minutes at the bench.
 *
 * @param laid      the agenda
 * @param known     a plan to begin with: its finish and its count of sessions are kept
 * @param watch     asked when to stop, and told of better plans
 * @param anew      an engine that holds the goals before, apart from the count of sessions
 * @returns         the plan, and whether less is impossible
 * @throws DomainError never
 *
 * Valid:  as `shortened`
 * Source: as `fewestSessions`
 */
export function leastIdle(
  laid: Laid,
  known: MeasuredPlan,
  watch: Watch,
  anew = (): Engine => engineUntil(laid, known.finish),
): Bettered {
  if (known.idleMinutes <= laid.leastIdle) return { plan: known, proven: true };
  const engine = anew();
  togetherAtMost(engine, useOfWindows(laid, engine), known.sessions);
  const limit = togetherAtMost(engine, idleOfWindows(laid, engine), 2 ** 28);
  return descend(laid, engine, limit, known, (plan) => plan.idleMinutes - 1, watch);
}
