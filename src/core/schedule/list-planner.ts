import type { Net } from "./net.ts";
import { never, OpenWindow } from "./open-window.ts";
import { Placement } from "./placement.ts";

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
      old.map((start) => (start < 0 ? never : start)),
      0,
      old,
    );
  }

  /**
   * The same window by window: what must be done in one comes first, then what is most urgent until it is full, and only then
   * the next is begun. So all boards go on, where otherwise the first are finished before the last are begun.
   */
  planByWindow(urgency: ArrayLike<number>, from = 0, keenness = 0): Int32Array | undefined {
    const placement = this.#placement;
    placement.clear(from);
    const window = new OpenWindow(placement, from);
    const urgencyNow = (i: number): number => {
      const due = placement.due[i] as number;
      return due < window.opensNext ? due - never : (urgency[i] as number);
    };
    const mayBe = (group: number): boolean => window.mayHold(group);
    let [patience, inHand] = [5 * this.#patience, -1];
    while (placement.unplaced > 0) {
      const group = this.#mostUrgent(urgencyNow, inHand, keenness, mayBe);
      if (group < 0) {
        if (!window.next()) return undefined;
        continue;
      }
      if (!placement.place(group, undefined)) return undefined;
      if (!window.keeps(group)) continue;
      const kit = this.#kit[group] as number;
      if (kit >= 0) inHand = kit;
      patience -= this.#sendBack(group);
      if (patience < 0) return undefined;
    }
    return placement.start.slice();
  }

  get #patience(): number {
    return 2 * this.#kit.length + 100;
  }

  #placeAll(
    urgency: ArrayLike<number>,
    keenness: number,
    wished: Int32Array | undefined,
  ): Int32Array | undefined {
    const placement = this.#placement;
    let patience = this.#patience;
    let inHand = -1;
    while (placement.unplaced > 0) {
      const group = this.#mostUrgent(
        (i) => Math.min(urgency[i] as number, placement.due[i] as number),
        inHand,
        keenness,
      );
      if (!placement.place(group, wished)) return undefined;
      const kit = this.#kit[group] as number;
      if (kit >= 0) inHand = kit;
      patience -= this.#sendBack(group);
      if (patience < 0) return undefined;
    }
    return placement.start.slice();
  }

  /** Sends back what a group comes too late for, and the group with it; gives how often that was. */
  #sendBack(group: number): 0 | 1 {
    const placement = this.#placement;
    const tooEarly = placement.tooEarlyFor(group);
    if (tooEarly.length === 0) return 0;
    placement.takeOut(group);
    for (const [task, release] of tooEarly) {
      placement.release[task] = Math.max(placement.release[task] as number, release);
      placement.takeOut(placement.groups.of[task] as number);
    }
    return 1;
  }

  #mostUrgent(
    urgency: (task: number) => number,
    inHand: number,
    keenness: number,
    mayBe: (group: number) => boolean = () => true,
  ): number {
    const placement = this.#placement;
    const { eligible } = placement;
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    const consider = (group: number): void => {
      if (!mayBe(group)) return;
      let own = Number.POSITIVE_INFINITY;
      for (const i of placement.members(group)) own = Math.min(own, urgency(i));
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
    this.#looks += 1.4 * kept + 4;
    // groups that wait for each other have none to begin with
    if (best < 0 && kept === 0)
      for (let group = 0; group < this.#kit.length; group++) if (!placement.isPlaced(group)) consider(group);
    return best;
  }
}
