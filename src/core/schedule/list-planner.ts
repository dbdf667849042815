import { HandLine, nextOpen } from "./hand-line.ts";
import type { Net } from "./net.ts";
import { type RigidGroups, rigidGroups } from "./rigid-groups.ts";
import { Room } from "./room.ts";

const nowhere = -1;

/**
 * Places the tasks of an agenda one after another, the most urgent first, each as early as it can. A task that comes too
 * late for a most-wait sends the one that it must follow to a later start, with all that depends on it.
 */
export class ListPlanner {
  readonly #net: Net;
  readonly #groups: RigidGroups;
  readonly #start: Int32Array;
  readonly #release: Int32Array;
  /** By task: the latest start that a most-wait leaves it. */
  readonly #due: Float64Array;
  readonly #line: HandLine;
  readonly #room: Room;
  /** By group: how many lags into it come from what is not placed yet. */
  readonly #waitingFor: Int32Array;
  readonly #eligible: number[] = [];
  /** By group: what it takes in the hand; and what was taken last. */
  readonly #kit: Int32Array;
  #inHand = nowhere;
  /** By how many minutes a task is the more urgent when it needs no change. */
  #keenness = 0;
  /** Starts of a plan to keep. */
  #wanted: Int32Array | undefined;
  #unplaced = 0;
  #work = 0;

  constructor(net: Net) {
    const n = net.minutes.length;
    this.#net = net;
    this.#groups = rigidGroups(net);
    this.#start = new Int32Array(n).fill(nowhere);
    this.#release = new Int32Array(n);
    this.#due = new Float64Array(n);
    this.#line = new HandLine(net, this.#start);
    this.#room = new Room(net);
    this.#waitingFor = new Int32Array(this.#groups.members.length);
    this.#kit = Int32Array.from(this.#groups.members, (members) =>
      Math.max(...members.map((i) => net.kitOf[i] as number)),
    );
  }

  /** Steps of about a microsecond. */
  get work(): number {
    return 0.05 * (this.#work + this.#line.work + this.#room.work);
  }

  /**
   * Starts (n) by urgency, the lowest first [min], none before `from`, those that need no change of the pad the more urgent by
   * `keenness`; `undefined` when a most-wait or the horizon stood in the way.
   */
  plan(urgency: ArrayLike<number>, from = 0, keenness = 0): Int32Array | undefined {
    this.#begin(from);
    this.#keenness = keenness;
    return this.#finish(urgency);
  }

  /** Starts (n) where as much as can be stays where it was, and the rest comes no earlier than it was; −1 was nowhere. */
  keep(old: Int32Array): Int32Array | undefined {
    this.#begin(0);
    this.#keenness = 0;
    this.#wanted = old;
    const inOrder = [...this.#groups.members.keys()].sort((a, b) => this.#oldStart(a) - this.#oldStart(b));
    for (const group of inOrder) if (this.#oldStart(group) >= 0) this.#placeAsItWas(group);
    const starts = this.#finish(old.map((start) => (start < 0 ? 2 ** 30 : start)));
    this.#wanted = undefined;
    return starts;
  }

  readonly #oldStart = (group: number): number => {
    const first = (this.#groups.members[group] as readonly number[])[0] as number;
    return (this.#wanted as Int32Array)[first] as number;
  };

  #finish(urgency: ArrayLike<number>): Int32Array | undefined {
    let patience = 2 * this.#groups.members.length + 100;
    while (this.#unplaced > 0) {
      const group = this.#mostUrgent(urgency);
      const begin = this.#place(group);
      if (begin === Number.POSITIVE_INFINITY) return undefined;
      const tooEarly = this.#tooEarlyFor(group);
      if (tooEarly.length === 0) continue;
      if (--patience < 0) return undefined;
      this.#takeOut(group);
      for (const [task, release] of tooEarly) {
        this.#release[task] = Math.max(this.#release[task] as number, release);
        this.#takeOut(this.#groups.of[task] as number);
      }
    }
    return this.#start.slice();
  }

  #begin(from: number): void {
    this.#start.fill(nowhere);
    this.#release.fill(from);
    this.#due.fill(Number.POSITIVE_INFINITY);
    this.#line.clear();
    this.#room.clear();
    this.#waitingFor.fill(0);
    this.#net.out.forEach((arcs, i) => {
      for (const { other, least } of arcs) if (least >= 0) this.#waits(i, other, 1);
    });
    this.#unplaced = this.#groups.members.length;
    this.#eligible.length = 0;
    for (let g = 0; g < this.#unplaced; g++) if (this.#waitingFor[g] === 0) this.#eligible.push(g);
  }

  #waits(from: number, to: number, sign: 1 | -1): void {
    const group = this.#groups.of[to] as number;
    if (group !== this.#groups.of[from]) this.#waitingFor[group] = (this.#waitingFor[group] as number) + sign;
  }

  readonly #isPlaced = (group: number): boolean =>
    this.#start[(this.#groups.members[group] as readonly number[])[0] as number] !== nowhere;

  #mostUrgent(urgency: ArrayLike<number>): number {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    const consider = (group: number): void => {
      let own = Number.POSITIVE_INFINITY;
      for (const i of this.#groups.members[group] as readonly number[])
        own = Math.min(own, urgency[i] as number, this.#due[i] as number);
      if (this.#kit[group] === this.#inHand) own -= this.#keenness;
      if (best >= 0 && own >= least) return;
      least = own;
      best = group;
    };
    let kept = 0;
    for (const group of this.#eligible) {
      if (this.#isPlaced(group) || (this.#waitingFor[group] as number) > 0) continue;
      this.#eligible[kept++] = group;
      consider(group);
    }
    this.#eligible.length = kept;
    this.#work += kept + 4;
    // groups that wait for each other have none to begin with
    if (best < 0)
      for (let group = 0; group < this.#groups.members.length; group++)
        if (!this.#isPlaced(group)) consider(group);
    return best;
  }

  #earliest(task: number, from: number): number {
    const { kitOf, open, minutes, horizon, needs } = this.#net;
    const isOnLine = (kitOf[task] as number) >= 0;
    const last = horizon - (minutes[task] as number);
    let start = from;
    for (;;) {
      start = isOnLine ? this.#line.earliest(task, start) : nextOpen(open[task] ?? [], start);
      if (start > last) return Number.POSITIVE_INFINITY;
      if (needs[task]?.length === 0) return start;
      const clash = this.#room.clash(task, start);
      if (clash < 0) return start;
      start = clash + 1;
    }
  }

  /** The earliest that the lags from what is placed allow. */
  #lowest(task: number): number {
    let low = this.#release[task] as number;
    for (const { other, least } of this.#net.into[task] ?? []) {
      const placed = this.#start[other] as number;
      if (placed !== nowhere && placed + least > low) low = placed + least;
    }
    return low;
  }

  /** Places a group as early as all of it fits; infinite when it fits nowhere. */
  #place(group: number): number {
    const members = this.#groups.members[group] as readonly number[];
    const { offset } = this.#groups;
    let begin = 0;
    for (const i of members) {
      const wanted = Math.min(this.#wanted?.[i] ?? 0, this.#due[i] as number);
      begin = Math.max(begin, this.#lowest(i) - (offset[i] as number), wanted - (offset[i] as number));
    }
    for (let k = 0; k < members.length; k++) {
      const i = members[k] as number;
      const wanted = begin + (offset[i] as number);
      const start = this.#earliest(i, wanted);
      if (start === wanted) {
        this.#put(i, start);
        continue;
      }
      while (--k >= 0) this.#lift(members[k] as number);
      if (start === Number.POSITIVE_INFINITY) return start;
      begin = start - (offset[i] as number);
    }
    this.#unplaced--;
    if ((this.#kit[group] as number) >= 0) this.#inHand = this.#kit[group] as number;
    for (const i of members) this.#tellOthers(i, -1);
    return begin;
  }

  #placeAsItWas(group: number): void {
    const old = this.#wanted as Int32Array;
    const members = this.#groups.members[group] as readonly number[];
    for (let k = 0; k < members.length; k++) {
      const i = members[k] as number;
      const start = old[i] as number;
      const isFree =
        this.#lowest(i) <= start && start <= this.#dueOf(i) && this.#earliest(i, start) === start;
      if (isFree && start - (this.#groups.offset[i] as number) === this.#oldStart(group)) {
        this.#put(i, start);
        continue;
      }
      while (--k >= 0) this.#lift(members[k] as number);
      return;
    }
    this.#unplaced--;
    for (const i of members) this.#tellOthers(i, -1);
  }

  #put(task: number, start: number): void {
    this.#start[task] = start;
    if ((this.#net.kitOf[task] as number) >= 0) this.#line.add(task);
    this.#room.add(task, start, 1);
  }

  #lift(task: number): void {
    if ((this.#net.kitOf[task] as number) >= 0) this.#line.remove(task);
    this.#room.add(task, this.#start[task] as number, -1);
    this.#start[task] = nowhere;
  }

  /** What waits for a task that was placed or taken out, and what must not wait too long for it. */
  #tellOthers(task: number, sign: 1 | -1): void {
    for (const { other, least } of this.#net.out[task] ?? []) {
      if (least < 0) continue;
      this.#waits(task, other, sign);
      const group = this.#groups.of[other] as number;
      if (sign < 0 && this.#waitingFor[group] === 0) this.#eligible.push(group);
    }
    for (const { other } of this.#net.into[task] ?? []) this.#due[other] = this.#dueOf(other);
  }

  #dueOf(task: number): number {
    let due = Number.POSITIVE_INFINITY;
    for (const { other, least } of this.#net.out[task] ?? []) {
      const placed = this.#start[other] as number;
      if (placed !== nowhere) due = Math.min(due, placed - least);
    }
    return due;
  }

  /** Placed tasks that a group comes too late for, and when they would have to start. */
  #tooEarlyFor(group: number): [number, number][] {
    return (this.#groups.members[group] as readonly number[]).flatMap((i) => {
      const start = this.#start[i] as number;
      return (this.#net.out[i] ?? []).flatMap(({ other, least }): [number, number][] => {
        const placed = this.#start[other] as number;
        const isInTime = placed === nowhere || start + least <= placed;
        return isInTime || this.#groups.of[other] === group ? [] : [[other, start + least]];
      });
    });
  }

  /** Takes a group out again, and what was placed after it because of it. */
  #takeOut(group: number): void {
    if (!this.#isPlaced(group)) return;
    const members = this.#groups.members[group] as readonly number[];
    for (const i of members) this.#lift(i);
    this.#unplaced++;
    for (const i of members) {
      this.#tellOthers(i, 1);
      for (const { other, least } of this.#net.out[i] ?? [])
        if (least >= 0 && this.#groups.of[other] !== group) this.#takeOut(this.#groups.of[other] as number);
    }
    if (this.#waitingFor[group] === 0) this.#eligible.push(group);
  }
}
