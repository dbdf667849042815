import type { Net } from "./net.ts";
import { Placement } from "./placement.ts";

/** Urgency of a task that was not in the plan to keep: after all that was. */
const afterAll = 2 ** 30;

/**
 * Places the tasks of an agenda one after another, the most urgent first, each as early as it can. A task that comes too
 * late for a most-wait sends the one that it must follow to a later start, with all that depends on it.
 */
export class ListPlanner {
  readonly #placement: Placement;
  /** By group: what it takes in the hand. */
  readonly #kit: Int32Array;
  #looks = 0;

  constructor(net: Net) {
    this.#placement = new Placement(net);
    this.#kit = Int32Array.from(this.#placement.groups.members, (members) =>
      Math.max(...members.map((i) => net.kitOf[i] as number)),
    );
  }

  /** Steps of about a microsecond. */
  get work(): number {
    return 0.05 * (this.#looks + this.#placement.work);
  }

  /**
   * Starts (n) by urgency, the lowest first [min], none before `from`, those that need no change of the pad the more urgent by
   * `keenness`; `undefined` when a most-wait or the horizon stood in the way.
   */
  plan(urgency: ArrayLike<number>, from = 0, keenness = 0): Int32Array | undefined {
    this.#placement.clear(from);
    return this.#placeAll(urgency, keenness, undefined);
  }

  /**
   * Starts (n) where as much as can be stays where it was, and the rest comes no earlier than it was; −1 was nowhere. Who did
   * a task does it again where that is as well.
   */
  keep(old: Int32Array, who?: Int32Array): Int32Array | undefined {
    const { groups } = this.#placement;
    this.#placement.clear(0, who);
    const oldStart = (group: number): number => old[this.#placement.members(group)[0] as number] as number;
    const inOrder = [...groups.members.keys()].sort((a, b) => oldStart(a) - oldStart(b));
    for (const group of inOrder) {
      const begin = oldStart(group);
      const isAsItWas = this.#placement
        .members(group)
        .every((i) => old[i] === begin + (groups.offset[i] as number));
      if (begin >= 0 && isAsItWas) this.#placement.placeExactly(group, begin);
    }
    return this.#placeAll(
      old.map((start) => (start < 0 ? afterAll : start)),
      0,
      old,
    );
  }

  #placeAll(
    urgency: ArrayLike<number>,
    keenness: number,
    wished: Int32Array | undefined,
  ): Int32Array | undefined {
    const placement = this.#placement;
    let patience = 2 * this.#kit.length + 100;
    let inHand = -1;
    while (placement.unplaced > 0) {
      const group = this.#mostUrgent(urgency, inHand, keenness);
      if (!placement.place(group, wished)) return undefined;
      const kit = this.#kit[group] as number;
      if (kit >= 0) inHand = kit;
      const tooEarly = placement.tooEarlyFor(group);
      if (tooEarly.length === 0) continue;
      if (--patience < 0) return undefined;
      placement.takeOut(group);
      for (const [task, release] of tooEarly) {
        placement.release[task] = Math.max(placement.release[task] as number, release);
        placement.takeOut(placement.groups.of[task] as number);
      }
    }
    return placement.start.slice();
  }

  #mostUrgent(urgency: ArrayLike<number>, inHand: number, keenness: number): number {
    const placement = this.#placement;
    const { eligible, due } = placement;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    const consider = (group: number): void => {
      let own = Number.POSITIVE_INFINITY;
      for (const i of placement.members(group)) own = Math.min(own, urgency[i] as number, due[i] as number);
      if (this.#kit[group] === inHand) own -= keenness;
      if (best >= 0 && own >= least) return;
      least = own;
      best = group;
    };
    let kept = 0;
    for (const group of eligible) {
      if (!placement.isReady(group)) continue;
      eligible[kept++] = group;
      consider(group);
    }
    eligible.length = kept;
    this.#looks += kept + 4;
    // groups that wait for each other have none to begin with
    if (best < 0)
      for (let group = 0; group < this.#kit.length; group++) if (!placement.isPlaced(group)) consider(group);
    return best;
  }
}
