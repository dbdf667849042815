import type { Agenda } from "./agenda.ts";
import type { Engine, Statement } from "./engine/engine.ts";
import type { Term } from "./engine/sum-at-most.ts";

/** Hands-on work in windows. */
export interface Loads {
  readonly windows: Agenda["windows"];
  readonly people: number;
  /** By task of the agenda: pairs of hands, and what it takes in them. */
  readonly hands: readonly number[];
  readonly kitOf: Int32Array;
  /** Minutes that it takes at the least to change to each kit. */
  readonly entries: readonly number[];
}

/**
 * For each window what is done in it, as 0-1 variables by task k, and that it is no more than the window holds from its
 * opening to its end, or to that of the plan. Each kit that is used there takes a change, but for one of each person.
 *
 *     Σ hands·minutes·isIn + Σ entry·kitIsIn − people·(longest entry) ≤ people·(until − from)
 */
export function addLoads(engine: Engine, durations: readonly number[], loads: Loads): void {
  const { windows, people, hands, entries } = loads;
  const atHand = people * Math.max(...entries);
  const { bounds } = engine;
  const end = durations.length - 1;
  const inside: Statement[][] = hands.map(() => []);
  for (const [from, until] of windows) {
    const terms: Term[] = [];
    const kits = new Map<number, number>();
    hands.forEach((taken, k) => {
      const task = k + 1;
      const minutes = durations[task] as number;
      if (taken === 0 || minutes === 0 || bounds.most(task) < from || bounds.least(task) >= until) return;
      const isIn = bounds.variable(0, 1);
      inside[k]?.push([2 * isIn, 1]);
      engine.addClause([2 * task + 1, 1 - from], [2 * task, until], [2 * isIn, 1]);
      engine.addClause([2 * isIn + 1, 0], [2 * task, from]);
      engine.addClause([2 * isIn + 1, 0], [2 * task + 1, 1 - until]);
      terms.push([2 * isIn, minutes * taken]);
      const kit = loads.kitOf[k] as number;
      if ((entries[kit] ?? 0) === 0) return;
      const kitIsIn = kits.get(kit) ?? bounds.variable(0, 1);
      kits.set(kit, kitIsIn);
      engine.addClause([2 * isIn + 1, 0], [2 * kitIsIn, 1]);
    });
    if (terms.length === 0) continue;
    for (const [kit, kitIsIn] of kits) terms.push([2 * kitIsIn, entries[kit] as number]);
    engine.addSum(terms, people * (until - from) + atHand);
    const isLast = from <= bounds.least(end) && bounds.least(end) < until;
    if (isLast) engine.addSum([...terms, [2 * end + 1, people]], atHand - people * from);
  }
  for (const statements of inside) if (statements.length > 0) engine.addClause(...statements);
}
