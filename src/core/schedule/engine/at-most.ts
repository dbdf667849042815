import type { Bounds } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";
import type { Notes } from "./notes.ts";

/** At most so many of some 0-1 variables are 1. The number may be lowered. */
export class AtMost {
  readonly #bounds: Bounds;
  readonly #notes: Notes;
  readonly #variables: readonly number[];
  most: number;
  readonly #reason = new LiteralList();
  work = 0;

  constructor(bounds: Bounds, notes: Notes, variables: readonly number[], most: number) {
    this.#bounds = bounds;
    this.#notes = notes;
    this.#variables = variables;
    this.most = most;
  }

  propagate(): boolean {
    this.work++;
    const reason = this.#reason;
    reason.clear();
    for (const x of this.#variables)
      if (this.#bounds.least(x) === 1 && reason.length <= this.most) reason.add(2 * x, 1);
    if (reason.length > this.most) {
      this.#bounds.conflict.clear();
      for (let k = 0; k < reason.length; k++) this.#bounds.conflict.add(reason.sides[k] as number, 1);
      return false;
    }
    if (reason.length < this.most) return true;
    const why = this.#notes.keep(reason);
    for (const x of this.#variables)
      if (this.#bounds.least(x) === 0 && !this.#bounds.raise(2 * x + 1, 0, this.#notes.by, why)) return false;
    return true;
  }
}
