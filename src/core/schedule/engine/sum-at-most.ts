import type { Bounds } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";
import type { Notes } from "./notes.ts";

/** The least values of some sides add up to so much at most. The number may be lowered. */
export class SumAtMost {
  readonly #bounds: Bounds;
  readonly #notes: Notes;
  readonly #sides: readonly number[];
  most: number;
  readonly #reason = new LiteralList();
  work = 0;

  constructor(bounds: Bounds, notes: Notes, sides: readonly number[], most: number) {
    this.#bounds = bounds;
    this.#notes = notes;
    this.#sides = sides;
    this.most = most;
  }

  propagate(): boolean {
    this.work += this.#sides.length >> 3;
    const { low, conflict } = this.#bounds;
    let left = this.most;
    for (const side of this.#sides) left -= low[side] as number;
    if (left < 0) {
      this.#say(conflict);
      return false;
    }
    let why = -1;
    for (const side of this.#sides) {
      const most = (low[side] as number) + left;
      if (-(low[side ^ 1] as number) <= most) continue;
      if (why < 0) {
        this.#say(this.#reason);
        why = this.#notes.keep(this.#reason);
      }
      if (!this.#bounds.raise(side ^ 1, -most, this.#notes.by, why)) return false;
    }
    return true;
  }

  /** The least values as they are; what holds without any decision needs no saying. */
  #say(into: LiteralList): void {
    const { low } = this.#bounds;
    into.clear();
    for (const side of this.#sides) into.add(side, low[side] as number);
  }
}
