import type { Bounds } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";
import type { Notes } from "./notes.ts";

/** Starts that are allowed, both ends included; in order of time, apart from each other. */
export type Open = readonly [first: number, last: number];

/** A task that may start at certain times only: a bound between two of them moves to the next. */
export class Openings {
  readonly #bounds: Bounds;
  readonly #notes: Notes;
  readonly #start: number;
  readonly #open: readonly Open[];
  readonly #reason = new LiteralList();
  work = 0;

  constructor(bounds: Bounds, notes: Notes, start: number, open: readonly Open[]) {
    this.#bounds = bounds;
    this.#notes = notes;
    this.#start = start;
    this.#open = open;
  }

  propagate(): boolean {
    this.work++;
    const least = this.#bounds.least(this.#start);
    const after = this.#open.findIndex(([, last]) => last >= least);
    if (after < 0)
      return this.#raise(0, (this.#open.at(-1)?.[1] ?? -1) + 1, this.#bounds.most(this.#start) + 1);
    const [first] = this.#open[after] as Open;
    if (first > least && !this.#raise(0, (this.#open[after - 1]?.[1] ?? -1) + 1, first)) return false;
    const most = this.#bounds.most(this.#start);
    const before = this.#open.findLastIndex(([from]) => from <= most);
    if (before < 0) return this.#raise(1, 1 - (this.#open[0]?.[0] ?? 0), 1 - this.#bounds.least(this.#start));
    const [, last] = this.#open[before] as Open;
    return last >= most || this.#raise(1, 1 - (this.#open[before + 1]?.[0] ?? 2 ** 29), -last);
  }

  /** From "side ≥ known", the border of a closed time, to the other border. */
  #raise(side: 0 | 1, known: number, value: number): boolean {
    this.#reason.clear();
    this.#reason.add(2 * this.#start + side, known);
    return this.#bounds.raise(2 * this.#start + side, value, this.#notes.by, this.#notes.keep(this.#reason));
  }
}
