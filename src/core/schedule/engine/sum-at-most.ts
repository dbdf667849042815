import type { Bounds } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";
import type { Notes } from "./notes.ts";

/** A side, and how many times it counts (1 or more). */
export type Term = readonly [side: number, weight: number];

/** Sides, each so many times, add up to so much at most. The number may be lowered. */
export class SumAtMost {
  readonly #bounds: Bounds;
  readonly #notes: Notes;
  readonly #terms: readonly Term[];
  most: number;
  readonly #reason = new LiteralList();
  work = 0;

  constructor(bounds: Bounds, notes: Notes, terms: readonly Term[], most: number) {
    this.#bounds = bounds;
    this.#notes = notes;
    this.#terms = terms;
    this.most = most;
  }

  get variables(): Set<number> {
    return new Set(this.#terms.map(([side]) => side >> 1));
  }

  propagate(): boolean {
    this.work += 1 + (this.#terms.length >> 2);
    const { low, conflict } = this.#bounds;
    let left = this.most;
    for (const [side, weight] of this.#terms) left -= weight * (low[side] as number);
    if (left < 0) {
      this.#say(conflict);
      return false;
    }
    let why = -1;
    for (const [side, weight] of this.#terms) {
      const most = (low[side] as number) + Math.floor(left / weight);
      if (-(low[side ^ 1] as number) <= most) continue;
      if (why < 0) {
        this.#say(this.#reason);
        why = this.#notes.keep(this.#reason);
      }
      if (!this.#bounds.raise(side ^ 1, -most, this.#notes.by, why)) return false;
    }
    return true;
  }

  /** The sides are as much as they are. */
  #say(into: LiteralList): void {
    const { low } = this.#bounds;
    into.clear();
    for (const [side] of this.#terms) into.add(side, low[side] as number);
  }
}
