import { type MeasuredPlan, measured } from "./good-agenda.ts";
import type { Laid } from "./lay-agenda.ts";
import { leastAfter } from "./net.ts";

/** How much earlier the tasks of a session can begin together: by their windows, and by what they wait for outside of it. */
function spare({ net }: Laid, session: readonly number[], starts: Int32Array): number {
  const isIn = new Set(session);
  const spares = session.flatMap((task) => {
    const start = starts[task] as number;
    const open = net.open[task]?.find(([from, until]) => from <= start && start <= until);
    const outside = (net.into[task] ?? []).filter(({ other }) => !isIn.has(other));
    return [
      start - (open?.[0] ?? start),
      ...outside.map((arc) => start - leastAfter(net, arc, starts[arc.other] as number)),
    ];
  });
  return Math.max(0, Math.min(...spares));
}

/**
 * The same plan with each session begun as early as it can be, in the order of time: what can wait until half past six can
 * begin at six, and a late coat has the more room. Within a session nothing moves.
 *
 * @param laid  the agenda
 * @param plan  of it
 * @returns     a plan that ends no later, with as many sessions and as many idle minutes
 *
 * Valid:  where people are all that is shared; other plans are returned as they are
 * Source: the definition
 */
export function earlySessions(laid: Laid, plan: MeasuredPlan): MeasuredPlan {
  const { agenda, hands } = laid;
  if (Object.keys(agenda.capacity).some((name) => name !== "person")) return plan;
  const starts = plan.starts.slice();
  for (const [from, until] of agenda.windows) {
    const session = [...starts.keys()].filter(
      (k) => hands[k] !== 0 && from <= (starts[k] as number) && (starts[k] as number) < until,
    );
    if (session.length === 0) continue;
    const minutes = spare(laid, session, starts);
    for (const task of session) starts[task] = (starts[task] as number) - minutes;
  }
  return measured(laid, starts);
}
