import type { Bounds, Explainer } from "./bounds.ts";
import type { LiteralList } from "./literal-list.ts";

/** Reasons written down when they are found, for propagators whose reasons cannot be found again later. */
export class Notes implements Explainer {
  readonly by: number;
  #store = new Int32Array(4096);
  #length = 0;

  constructor(bounds: Bounds) {
    this.by = bounds.explainer(this);
  }

  /** Keeps the statements; returns the number to give as `why`. */
  keep(reason: LiteralList): number {
    const needed = this.#length + 1 + 2 * reason.length;
    if (needed > this.#store.length) {
      const next = new Int32Array(Math.max(needed, this.#store.length * 2));
      next.set(this.#store);
      this.#store = next;
    }
    const start = this.#length;
    this.#store[this.#length++] = reason.length;
    for (let k = 0; k < reason.length; k++) {
      this.#store[this.#length++] = reason.sides[k] as number;
      this.#store[this.#length++] = reason.values[k] as number;
    }
    return start;
  }

  /** How much is written: what was written later is forgotten with `forgetAfter`. */
  get length(): number {
    return this.#length;
  }

  forgetAfter(length: number): void {
    this.#length = length;
  }

  because(why: number, _side: number, _value: number, into: LiteralList): void {
    const n = this.#store[why] as number;
    for (let k = 0; k < n; k++)
      into.add(this.#store[why + 1 + 2 * k] as number, this.#store[why + 2 + 2 * k] as number);
  }
}
