import { nextOpen } from "./hand-line.ts";
import { HandLines } from "./hand-lines.ts";
import { leastAfter, mostBefore, type Net } from "./net.ts";
import { type RigidGroups, rigidGroups } from "./rigid-groups.ts";
import { Room } from "./room.ts";

const nowhere = -1;

/** A plan in the making: groups of tasks that have their place, those that are ready for one, and what each leaves to the others. */
export class Placement {
  readonly net: Net;
  readonly groups: RigidGroups;
  readonly start: Int32Array;
  /** By task: no start before this. */
  readonly release: Int32Array;
  /** By task: the latest start that a most-wait leaves it. */
  readonly due: Float64Array;
  /** Groups that became ready, some of them placed since or ready no more. */
  readonly eligible: number[] = [];
  unplaced = 0;
  readonly #lines: HandLines;
  readonly #room: Room;
  /** By group: how many lags into it come from what is not placed yet. */
  readonly #waitingFor: Int32Array;

  constructor(net: Net) {
    const n = net.minutes.length;
    this.net = net;
    this.groups = rigidGroups(net);
    this.start = new Int32Array(n).fill(nowhere);
    this.release = new Int32Array(n);
    this.due = new Float64Array(n);
    this.#lines = new HandLines(net, this.start);
    this.#room = new Room(net);
    this.#waitingFor = new Int32Array(this.groups.members.length);
  }

  get work(): number {
    return this.#lines.work + this.#room.work;
  }

  /** Nothing is placed, and nothing may start before a moment; by task who does it if that is as well. */
  clear(from: number, who?: Int32Array): void {
    this.#lines.wished = who;
    this.start.fill(nowhere);
    this.release.fill(from);
    this.due.fill(Number.POSITIVE_INFINITY);
    this.#lines.clear();
    this.#room.clear();
    this.#waitingFor.fill(0);
    this.net.out.forEach((arcs, i) => {
      for (const { other, least } of arcs) if (least >= 0) this.#waits(i, other, 1);
    });
    this.unplaced = this.groups.members.length;
    this.eligible.length = 0;
    for (let g = 0; g < this.unplaced; g++) if (this.#waitingFor[g] === 0) this.eligible.push(g);
  }

  members(group: number): readonly number[] {
    return this.groups.members[group] as readonly number[];
  }

  isPlaced(group: number): boolean {
    return this.start[this.members(group)[0] as number] !== nowhere;
  }

  isReady(group: number): boolean {
    return this.#waitingFor[group] === 0 && !this.isPlaced(group);
  }

  /** Places a group as early as all of it fits, no task before its wish; false when it fits nowhere. */
  place(group: number, wished: ArrayLike<number> | undefined): boolean {
    let begin = this.soonest(group, wished);
    while (begin < Number.POSITIVE_INFINITY) {
      const next = this.#tryAt(group, begin);
      if (next === begin) return true;
      begin = next;
    }
    return false;
  }

  /** The first moment that a group may begin at by its lags and its wish, whatever else is placed. */
  soonest(group: number, wished?: ArrayLike<number>): number {
    let begin = 0;
    for (const i of this.members(group)) {
      const wish = Math.min(wished?.[i] ?? 0, this.due[i] as number);
      begin = Math.max(begin, Math.max(this.#lowest(i), wish) - (this.groups.offset[i] as number));
    }
    return begin;
  }

  /** Places a group at a moment, if it fits there and comes too late for nothing. */
  placeExactly(group: number, begin: number): void {
    const isInTime = this.members(group).every((i) => {
      const start = begin + (this.groups.offset[i] as number);
      return this.#lowest(i) <= start && start <= this.#dueOf(i);
    });
    if (isInTime) this.#tryAt(group, begin);
  }

  /** Places a group at a moment, or else gives the next moment that is worth a try. */
  #tryAt(group: number, begin: number): number {
    const members = this.members(group);
    for (let k = 0; k < members.length; k++) {
      const i = members[k] as number;
      const wanted = begin + (this.groups.offset[i] as number);
      const start = this.#earliest(i, wanted);
      if (start === wanted) {
        this.#put(i, start);
        continue;
      }
      while (--k >= 0) this.#lift(members[k] as number);
      return start - (this.groups.offset[i] as number);
    }
    this.unplaced--;
    for (const i of members) this.#tellOthers(i, -1);
    return begin;
  }

  /** The first start from a moment on at which hands and places are free; infinite when there is none. */
  #earliest(task: number, from: number): number {
    const { kitOf, open, minutes, horizon, needs } = this.net;
    const isOnLine = (kitOf[task] as number) >= 0;
    const last = horizon - (minutes[task] as number);
    let start = from;
    for (;;) {
      start = isOnLine ? this.#lines.earliest(task, start) : nextOpen(open[task] ?? [], start);
      if (start > last) return Number.POSITIVE_INFINITY;
      if (needs[task]?.length === 0) return start;
      const clash = this.#room.clash(task, start);
      if (clash < 0) return start;
      start = clash + 1;
    }
  }

  /** The earliest that the lags from what is placed allow. */
  #lowest(task: number): number {
    let low = this.release[task] as number;
    for (const arc of this.net.into[task] ?? []) {
      const placed = this.start[arc.other] as number;
      if (placed !== nowhere) low = Math.max(low, leastAfter(this.net, arc, placed));
    }
    return low;
  }

  #dueOf(task: number): number {
    let due = Number.POSITIVE_INFINITY;
    for (const arc of this.net.out[task] ?? []) {
      const placed = this.start[arc.other] as number;
      if (placed !== nowhere) due = Math.min(due, mostBefore(this.net, arc, placed));
    }
    return due;
  }

  /** Placed tasks that a group comes too late for, and when they would have to start. */
  tooEarlyFor(group: number): [task: number, start: number][] {
    return this.members(group).flatMap((i) => {
      const start = this.start[i] as number;
      return (this.net.out[i] ?? []).flatMap((arc): [number, number][] => {
        const placed = this.start[arc.other] as number;
        const least = leastAfter(this.net, arc, start);
        return placed === nowhere || least <= placed || this.groups.of[arc.other] === group
          ? []
          : [[arc.other, least]];
      });
    });
  }

  /** Takes a group out again, and what was placed after it because of it. */
  takeOut(group: number): void {
    if (!this.isPlaced(group)) return;
    const members = this.members(group);
    for (const i of members) this.#lift(i);
    this.unplaced++;
    for (const i of members) {
      this.#tellOthers(i, 1);
      for (const { other, least } of this.net.out[i] ?? [])
        if (least >= 0 && this.groups.of[other] !== group) this.takeOut(this.groups.of[other] as number);
    }
    if (this.#waitingFor[group] === 0) this.eligible.push(group);
  }

  #put(task: number, start: number): void {
    this.start[task] = start;
    if ((this.net.kitOf[task] as number) >= 0) this.#lines.add(task);
    this.#room.add(task, start, 1);
  }

  #lift(task: number): void {
    if ((this.net.kitOf[task] as number) >= 0) this.#lines.remove(task);
    this.#room.add(task, this.start[task] as number, -1);
    this.start[task] = nowhere;
  }

  #waits(from: number, to: number, sign: 1 | -1): void {
    const group = this.groups.of[to] as number;
    if (group !== this.groups.of[from]) this.#waitingFor[group] = (this.#waitingFor[group] as number) + sign;
  }

  /** What waits for a task that was placed or taken out, and what must not wait too long for it. */
  #tellOthers(task: number, sign: 1 | -1): void {
    for (const { other, least } of this.net.out[task] ?? []) {
      if (least < 0) continue;
      this.#waits(task, other, sign);
      const group = this.groups.of[other] as number;
      if (sign < 0 && this.#waitingFor[group] === 0) this.eligible.push(group);
    }
    for (const { other } of this.net.into[task] ?? []) this.due[other] = this.#dueOf(other);
  }
}
