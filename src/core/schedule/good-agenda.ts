import { randomFromSeed } from "../random.ts";
import { tailsOf } from "./heads.ts";
import type { Laid } from "./lay-agenda.ts";
import { ListPlanner } from "./list-planner.ts";
import { mirroredNet, mirroredStarts, type Net } from "./net.ts";
import { gathered, shaken } from "./orders-by-chance.ts";
import { compareMeasures, type Measures, measuresOf } from "./plan-measures.ts";

export interface MeasuredPlan extends Measures {
  /** By task of the agenda [min]. */
  readonly starts: Int32Array;
}

/** Who is asked and told on the way. */
export interface Watch {
  /** Asked now and then with the steps taken; true ends the search with the best found. */
  readonly mustStop: (steps: number) => boolean;
  /** Told of every better plan. */
  readonly onBest: (plan: MeasuredPlan) => void;
}

/** Starts with what they come to. */
export const measured = (laid: Laid, starts: Int32Array): MeasuredPlan => ({
  starts,
  ...measuresOf(laid.agenda, laid.hands, starts),
});

/** Nothing is left to better: each goal is at its bound. */
export const isBestOfAll = (laid: Laid, plan: MeasuredPlan): boolean =>
  plan.finish <= laid.lower && plan.sessions <= laid.fewest && plan.idleMinutes <= laid.leastIdle;

/** Minutes of urgency that a change of the pad is held to be worth, by turns. */
const keennesses = [1440, 0, 1e6, 30, 300];

/**
 * Good plans quickly: tasks by their latest starts, shaken a little, each as early as it can or window by window; each plan is pushed to its end and back to the
 * beginning, and later rounds shake the best found.
 *
 * @param laid      the agenda
 * @param patience  how many rounds may bring nothing better
 * @param watch     asked after each round, and told of better plans
 * @returns         the best plan by finish, sessions and idle minutes; none when no order could be placed
 * @throws DomainError never
 *
 * Valid:  any agenda that `layAgenda` took
 * Source: V. Valls, F. Ballestín and S. Quintanilla, "Justification and RCPSP", Eur. J. Oper. Res. 165 (2005) 375;
 *         R. Kolisch, "Serial and parallel resource-constrained project scheduling methods", ibid. 90 (1996) 320
 */
export function goodAgenda(laid: Laid, patience: number, watch: Watch): MeasuredPlan | undefined {
  const { net } = laid;
  const forth = new ListPlanner(net);
  const back = new ListPlanner(mirroredNet(net, net.horizon));
  const tail = tailsOf(net);
  const urgency = tail.map((after, i) => laid.lower - after - (net.minutes[i] as number));
  const random = randomFromSeed("agenda");
  let best: MeasuredPlan | undefined;
  let vain = 0;
  const keep = (starts: Int32Array | undefined): void => {
    if (starts === undefined) return;
    const plan = measured(laid, starts);
    if (best !== undefined && compareMeasures(plan, best) >= 0) return;
    best = plan;
    vain = 0;
    watch.onBest(plan);
  };
  for (let round = 0; vain < patience; round++) {
    if (round > 0 && watch.mustStop(forth.work + back.work)) break;
    vain++;
    const near = round % 2 === 1 ? best?.starts : undefined;
    const keenness = near === undefined ? (keennesses[(round >> 1) % keennesses.length] as number) : 0;
    const order =
      near !== undefined && net.change.length > 1 && random() < 0.7
        ? gathered(laid, near, random)
        : round <= keennesses.length * 2
          ? (near ?? urgency)
          : shaken(near ?? urgency, random);
    const made = [forth.plan(order, 0, keenness)];
    if (near === undefined) made.push(forth.planByWindow(order, 0, keenness));
    for (const starts of made) {
      keep(starts);
      if (starts === undefined) continue;
      const late = pushedLate(net, back, starts);
      keep(late);
      if (late !== undefined) keep(forth.plan(late));
    }
    if (best !== undefined && isBestOfAll(laid, best)) break;
  }
  return best;
}

/** The same plan with everything as late as its end allows. */
function pushedLate(net: Net, back: ListPlanner, starts: Int32Array): Int32Array | undefined {
  const finish = starts.reduce((last, start, i) => Math.max(last, start + (net.minutes[i] as number)), 0);
  const late = back.plan(mirroredStarts(net, net.horizon, starts), net.horizon - finish);
  return late === undefined ? undefined : mirroredStarts(net, net.horizon, late);
}
