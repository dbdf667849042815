import type { Open } from "./engine/openings.ts";
import type { Net } from "./net.ts";

/** The first allowed start from a moment on; infinite when there is none. */
export function nextOpen(open: readonly Open[], from: number): number {
  let lo = 0;
  let hi = open.length;
  while (lo < hi) {
    const mid = (lo + hi) >> 1;
    if ((open[mid] as Open)[1] < from) lo = mid + 1;
    else hi = mid;
  }
  const found = open[lo];
  return found === undefined ? Number.POSITIVE_INFINITY : Math.max(found[0], from);
}

/** A gap counts no more than a minute to change. */
const mostGap = 1440;

/** One pair of hands: tasks in the order of their starts, with time to change between them. */
export class HandLine {
  readonly #net: Net;
  readonly #start: Int32Array;
  readonly #tasks: number[] = [];
  work = 0;

  constructor(net: Net, start: Int32Array) {
    this.#net = net;
    this.#start = start;
  }

  clear(): void {
    this.#tasks.length = 0;
  }

  /** How many of the placed tasks start before a moment. */
  #placeAt(moment: number): number {
    let lo = 0;
    let hi = this.#tasks.length;
    while (lo < hi) {
      const mid = (lo + hi) >> 1;
      if ((this.#start[this.#tasks[mid] as number] as number) < moment) lo = mid + 1;
      else hi = mid;
    }
    return lo;
  }

  /**
   * The first start from a moment on at which the hands are free for the task, or for so many minutes from its start, and
   * there is time to change before and after.
   */
  earliest(task: number, from: number, own = this.#net.minutes[task] as number): number {
    const { minutes, kitOf, change, open } = this.#net;
    const kit = kitOf[task] as number;
    const allowed = open[task] as readonly Open[];
    let start = nextOpen(allowed, from);
    if (start === Number.POSITIVE_INFINITY) return start;
    for (let at = this.#placeAt(start); ; at++) {
      this.work++;
      const before = this.#tasks[at - 1];
      if (before !== undefined) {
        const free =
          (this.#start[before] as number) +
          (minutes[before] as number) +
          ((change[kitOf[before] as number] as Int32Array)[kit] as number);
        if (free > start) start = nextOpen(allowed, free);
      }
      if (start === Number.POSITIVE_INFINITY) return start;
      const after = this.#tasks[at];
      if (after === undefined) return start;
      const next = this.#start[after] as number;
      if (start + own + ((change[kit] as Int32Array)[kitOf[after] as number] as number) <= next) return start;
      // the next gap in which it can stand at all
      start = Math.max(start, next);
      const further = this.#placeAt(start);
      if (further > at) at = further - 1;
    }
  }

  /** What it takes of these hands beside its own minutes: more to change, and then the gap before it. */
  lossBy(task: number, start: number): number {
    const { minutes, kitOf, change } = this.#net;
    const at = this.#placeAt(start);
    const [before, after] = [this.#tasks[at - 1], this.#tasks[at]];
    const between = (a: number | undefined, b: number | undefined): number =>
      a === undefined || b === undefined ? 0 : (change[kitOf[a] as number]?.[kitOf[b] as number] as number);
    const changes = between(before, task) + between(task, after) - between(before, after);
    const gap =
      before === undefined ? mostGap : start - (this.#start[before] as number) - (minutes[before] as number);
    return changes * mostGap + Math.min(gap, mostGap);
  }

  add(task: number): void {
    this.#tasks.splice(this.#placeAt(this.#start[task] as number), 0, task);
  }

  remove(task: number): void {
    for (let at = this.#placeAt(this.#start[task] as number); at < this.#tasks.length; at++)
      if (this.#tasks[at] === task) {
        this.#tasks.splice(at, 1);
        return;
      }
  }
}
