import type { Bounds } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";
import type { Notes } from "./notes.ts";

/** One use of a resource: a start variable, how long and how much. */
export interface Use {
  readonly start: number;
  readonly duration: number;
  readonly demand: number;
}

/**
 * A resource of limited capacity. What surely runs at a time (between the latest start and the earliest end of each use)
 * is added up in a profile; a use that does not fit beside it is moved past it. Each move is explained at one moment:
 * by the uses that surely run then, each with the widest bounds that keep it there.
 *
 * Source: A. Schutt, T. Feydy, P. J. Stuckey and M. G. Wallace, "Explaining the cumulative propagator",
 * Constraints 16 (2011) 250, sections 4.1 and 4.3 (pointwise explanations).
 */
export class TimeTable {
  readonly #bounds: Bounds;
  readonly #notes: Notes;
  readonly #capacity: number;
  readonly #n: number;
  readonly #start: Int32Array;
  readonly #duration: Int32Array;
  readonly #demand: Int32Array;
  /** The profile: from when, how high; the last segment is empty. */
  readonly #from: Int32Array;
  readonly #height: Int32Array;
  #segments = 0;
  #highest = 0;
  readonly #eventAt: Float64Array;
  readonly #reason = new LiteralList();
  work = 0;

  constructor(bounds: Bounds, notes: Notes, capacity: number, uses: readonly Use[]) {
    this.#bounds = bounds;
    this.#notes = notes;
    this.#capacity = capacity;
    const biggestFirst = [...uses].sort((a, b) => b.demand - a.demand);
    this.#n = uses.length;
    this.#start = Int32Array.from(biggestFirst, (u) => u.start);
    this.#duration = Int32Array.from(biggestFirst, (u) => u.duration);
    this.#demand = Int32Array.from(biggestFirst, (u) => u.demand);
    this.#from = new Int32Array(2 * uses.length + 1);
    this.#height = new Int32Array(2 * uses.length + 1);
    this.#eventAt = new Float64Array(2 * uses.length);
  }

  get starts(): Iterable<number> {
    return this.#start;
  }

  /** False when the resource cannot be shared as the bounds stand. */
  propagate(): boolean {
    this.work += this.#n;
    if (!this.#buildProfile()) return false;
    if (this.#segments <= 1) return true;
    for (let k = 0; k < this.#n; k++) {
      const demand = this.#demand[k] as number;
      if (this.#highest + demand <= this.#capacity) break; // the uses are in order of their demand
      const x = this.#start[k] as number;
      if (this.#bounds.isFixed(x)) continue;
      if (!this.#pushLater(k) || !this.#pushEarlier(k)) return false;
    }
    return true;
  }

  /** Adds up what surely runs; false when it is more than there is. */
  #buildProfile(): boolean {
    const { low } = this.#bounds;
    const events = this.#eventAt;
    let n = 0;
    for (let k = 0; k < this.#n; k++) {
      const x = this.#start[k] as number;
      const latest = -(low[2 * x + 1] as number);
      const end = (low[2 * x] as number) + (this.#duration[k] as number);
      if (latest >= end) continue;
      // time and signed demand in one sortable number
      events[n++] = latest * 65536 + (this.#demand[k] as number) + 32768;
      events[n++] = end * 65536 - (this.#demand[k] as number) + 32768;
    }
    this.#segments = 0;
    this.#highest = 0;
    if (n === 0) return true;
    sortFirst(events, n);
    let height = 0;
    let segments = 0;
    for (let i = 0; i < n; ) {
      const at = Math.floor((events[i] as number) / 65536);
      for (; i < n && Math.floor((events[i] as number) / 65536) === at; i++)
        height += (events[i] as number) - at * 65536 - 32768;
      this.#from[segments] = at;
      this.#height[segments++] = height;
      if (height > this.#highest) this.#highest = height;
      if (height > this.#capacity) {
        const until = i < n ? Math.floor((events[i] as number) / 65536) : at + 1;
        return this.#overload(at + ((until - at) >> 1));
      }
    }
    this.#segments = segments;
    return true;
  }

  #overload(at: number): false {
    const conflict = this.#bounds.conflict;
    conflict.clear();
    this.#runningAt(at, this.#capacity + 1, -1, conflict);
    return false;
  }

  /**
   * Uses that surely run at a moment, as few as take `enough`, with the widest bounds that keep them there. Those that
   * run then whatever is decided come first: they cost nothing in an explanation.
   */
  #runningAt(at: number, enough: number, without: number, into: LiteralList): void {
    const { low, root } = this.#bounds;
    let sum = 0;
    const isThere = (bounds: Int32Array, k: number): boolean => {
      const x = this.#start[k] as number;
      return (
        -(bounds[2 * x + 1] as number) <= at && (bounds[2 * x] as number) + (this.#duration[k] as number) > at
      );
    };
    for (let k = 0; k < this.#n && sum < enough; k++)
      if (k !== without && isThere(root, k)) sum += this.#demand[k] as number;
    for (let k = 0; k < this.#n && sum < enough; k++) {
      if (k === without || !isThere(low, k) || isThere(root, k)) continue;
      const x = this.#start[k] as number;
      into.add(2 * x, at - (this.#duration[k] as number) + 1);
      into.add(2 * x + 1, -at);
      sum += this.#demand[k] as number;
    }
  }

  #segmentAt(time: number): number {
    let lo = 0;
    let hi = this.#segments;
    while (lo < hi) {
      const mid = (lo + hi) >> 1;
      if ((this.#from[mid] as number) <= time) lo = mid + 1;
      else hi = mid;
    }
    return lo - 1;
  }

  #pushLater(k: number): boolean {
    const { low } = this.#bounds;
    const x = this.#start[k] as number;
    const duration = this.#duration[k] as number;
    const room = this.#capacity - (this.#demand[k] as number);
    const latest = -(low[2 * x + 1] as number);
    const ownEnd = (low[2 * x] as number) + duration; // of its own part, when it has one: [latest, ownEnd)
    let start = low[2 * x] as number;
    for (let s = Math.max(0, this.#segmentAt(start)); s < this.#segments - 1; s++) {
      const from = this.#from[s] as number;
      if (from >= start + duration) break;
      if (latest < ownEnd && from >= latest) break; // beside its own part there is room, or it had been an overload
      const until = this.#from[s + 1] as number;
      if ((this.#height[s] as number) <= room || until <= start) continue;
      while (start < until) {
        const at = Math.min(start + duration, until) - 1;
        this.#reason.clear();
        this.#reason.add(2 * x, at - duration + 1);
        this.#runningAt(at, room + 1, k, this.#reason);
        if (!this.#bounds.raise(2 * x, at + 1, this.#notes.by, this.#notes.keep(this.#reason))) return false;
        start = at + 1;
      }
    }
    return true;
  }

  #pushEarlier(k: number): boolean {
    const { low } = this.#bounds;
    const x = this.#start[k] as number;
    const duration = this.#duration[k] as number;
    const room = this.#capacity - (this.#demand[k] as number);
    const earliestEnd = (low[2 * x] as number) + duration;
    let end = -(low[2 * x + 1] as number) + duration;
    const ownFrom = end - duration;
    for (let s = Math.min(this.#segments - 2, this.#segmentAt(end - 1)); s >= 0; s--) {
      const until = this.#from[s + 1] as number;
      if (until <= end - duration) break;
      if (ownFrom < earliestEnd && until <= earliestEnd) break;
      const from = this.#from[s] as number;
      if ((this.#height[s] as number) <= room || from >= end) continue;
      while (end > from) {
        const at = Math.max(end - duration, from);
        this.#reason.clear();
        this.#reason.add(2 * x + 1, -at);
        this.#runningAt(at, room + 1, k, this.#reason);
        // it starts at or before `at`, so it ends by `at`
        if (!this.#bounds.raise(2 * x + 1, duration - at, this.#notes.by, this.#notes.keep(this.#reason)))
          return false;
        end = at;
      }
    }
    return true;
  }
}

/** Insertion sort of the first n: they are few and nearly in order. */
function sortFirst(list: Float64Array, n: number): void {
  if (n > 64) {
    list.subarray(0, n).sort();
    return;
  }
  for (let i = 1; i < n; i++) {
    const x = list[i] as number;
    let j = i - 1;
    while (j >= 0 && (list[j] as number) > x) {
      list[j + 1] = list[j] as number;
      j--;
    }
    list[j + 1] = x;
  }
}
