import type { Bounds, Explainer } from "./bounds.ts";
import type { LiteralList } from "./literal-list.ts";

const header = 2; // size, distance

/**
 * Clauses of statements "side ≥ value", of which at least one is true. Two statements of each are watched: while both may
 * be true, the clause has nothing to say. A watch holds: clause, the value from which the watched one is false, and
 * another statement of the clause, which when true makes a look at it needless.
 *
 * Source: M. W. Moskewicz et al., "Chaff: engineering an efficient SAT solver", DAC 2001, section 2 (two watches).
 */
export class Clauses implements Explainer {
  readonly #by: number;
  readonly #bounds: Bounds;
  #store = new Int32Array(1 << 14);
  #length = 0;
  #permanent = 0;
  #learned: number[] = [];
  readonly #watches: number[][] = [];
  work = 0;

  constructor(bounds: Bounds) {
    this.#bounds = bounds;
    this.#by = bounds.explainer(this);
  }

  get learnedCount(): number {
    return this.#learned.length;
  }

  /** A clause that always holds; before any decision. False when it contradicts what is known. */
  addPermanent(literals: LiteralList): boolean {
    const { low } = this.#bounds;
    let n = 0;
    for (let k = 0; k < literals.length; k++) {
      const side = literals.sides[k] as number;
      const value = literals.values[k] as number;
      if ((low[side] as number) >= value) return true;
      if (-(low[side ^ 1] as number) < value) continue;
      literals.sides[n] = side;
      literals.values[n++] = value;
    }
    literals.length = n;
    if (n === 0) return false;
    if (n === 1)
      return this.#bounds.raise(literals.sides[0] as number, literals.values[0] as number, this.#by, 0);
    this.#put(literals, 0);
    this.#permanent = this.#length;
    return true;
  }

  /** A learned clause: its first statement becomes true, the second has the highest level among the others. */
  learn(literals: LiteralList, distance: number): void {
    const clause = literals.length > 1 ? this.#put(literals, distance) : 0;
    if (literals.length > 1) this.#learned.push(clause);
    this.#bounds.raise(literals.sides[0] as number, literals.values[0] as number, this.#by, clause);
  }

  #put(literals: LiteralList, distance: number): number {
    const n = literals.length;
    while (this.#length + header + 2 * n > this.#store.length) {
      const next = new Int32Array(this.#store.length * 2);
      next.set(this.#store);
      this.#store = next;
    }
    const clause = this.#length;
    this.#store[clause] = n;
    this.#store[clause + 1] = distance;
    for (let k = 0; k < n; k++) {
      this.#store[clause + header + 2 * k] = literals.sides[k] as number;
      this.#store[clause + header + 2 * k + 1] = literals.values[k] as number;
    }
    this.#length += header + 2 * n;
    this.#watchTwo(clause);
    return clause;
  }

  #watchTwo(clause: number): void {
    const s = this.#store;
    const at = clause + header;
    this.#watch(clause, s[at] as number, s[at + 1] as number, s[at + 2] as number, s[at + 3] as number);
    this.#watch(clause, s[at + 2] as number, s[at + 3] as number, s[at] as number, s[at + 1] as number);
  }

  #watch(clause: number, side: number, value: number, otherSide: number, otherValue: number): void {
    let list = this.#watches[side ^ 1];
    if (list === undefined) {
      list = [];
      this.#watches[side ^ 1] = list;
    }
    list.push(clause, 1 - value, otherSide, otherValue);
  }

  /** Looks at the clauses that a raised side may have made say something; false when one is broken. */
  follow(side: number): boolean {
    const list = this.#watches[side];
    if (list === undefined) return true;
    const { low } = this.#bounds;
    const value = low[side] as number;
    let kept = 0;
    let k = 0;
    let good = true;
    this.work += list.length >> 2;
    for (; k < list.length; k += 4) {
      const threshold = list[k + 1] as number;
      const otherSide = list[k + 2] as number;
      const keep =
        value < threshold ||
        (low[otherSide] as number) >= (list[k + 3] as number) ||
        this.#stays(list, k, side);
      if (keep) {
        if (kept !== k) for (let i = 0; i < 4; i++) list[kept + i] = list[k + i] as number;
        kept += 4;
      }
      if (this.#broken) {
        good = false;
        this.#broken = false;
        k += 4;
        break;
      }
    }
    if (kept !== k) {
      for (; k < list.length; k++) list[kept++] = list[k] as number;
      list.length = kept;
    }
    return good;
  }

  #broken = false;

  /** The watched statement is false: watches another one, or else makes the last one true. True when the watch stays. */
  #stays(list: number[], k: number, side: number): boolean {
    const { low } = this.#bounds;
    const s = this.#store;
    const clause = list[k] as number;
    const first = clause + header;
    const falseSide = side ^ 1;
    const falseValue = 1 - (list[k + 1] as number);
    if (s[first] === falseSide && s[first + 1] === falseValue) {
      s[first] = s[first + 2] as number;
      s[first + 1] = s[first + 3] as number;
      s[first + 2] = falseSide;
      s[first + 3] = falseValue;
    }
    const keptSide = s[first] as number;
    const keptValue = s[first + 1] as number;
    list[k + 2] = keptSide;
    list[k + 3] = keptValue;
    if ((low[keptSide] as number) >= keptValue) return true;
    const end = first + 2 * (s[clause] as number);
    for (let at = first + 4; at < end; at += 2) {
      const newSide = s[at] as number;
      const newValue = s[at + 1] as number;
      if (-(low[newSide ^ 1] as number) < newValue) continue;
      s[first + 2] = newSide;
      s[first + 3] = newValue;
      s[at] = falseSide;
      s[at + 1] = falseValue;
      this.#watch(clause, newSide, newValue, keptSide, keptValue);
      return false;
    }
    this.#broken = !this.#bounds.raise(keptSide, keptValue, this.#by, clause);
    return true;
  }

  because(clause: number, _side: number, _value: number, into: LiteralList): void {
    const s = this.#store;
    const end = clause + header + 2 * (s[clause] as number);
    for (let at = clause + header + 2; at < end; at += 2)
      into.add((s[at] as number) ^ 1, 1 - (s[at + 1] as number));
  }

  /** Forgets the half of the learned clauses that reaches over most levels; only without decisions. */
  forgetHalf(): void {
    const s = this.#store;
    const byWorth = [...this.#learned].sort(
      (a, b) => (s[a + 1] as number) - (s[b + 1] as number) || (s[a] as number) - (s[b] as number) || b - a,
    );
    const half = byWorth.length >> 1;
    const kept = byWorth.filter((c, i) => i < half || (s[c + 1] as number) <= 2).sort((a, b) => a - b);
    for (const list of this.#watches) if (list !== undefined) list.length = 0;
    for (let c = 0; c < this.#permanent; c += header + 2 * (s[c] as number)) this.#watchTwo(c);
    this.#length = this.#permanent;
    this.#learned = kept.map((c) => {
      const to = this.#length;
      const size = header + 2 * (s[c] as number);
      s.copyWithin(to, c, c + size);
      this.#length = to + size;
      this.#orderForWatching(to);
      this.#watchTwo(to);
      return to;
    });
  }

  /** Without decisions any statement that may be true is fit for watching; those that cannot be go last. */
  #orderForWatching(clause: number): void {
    const { low } = this.#bounds;
    const s = this.#store;
    let front = clause + header;
    const end = front + 2 * (s[clause] as number);
    for (let at = front; at < end; at += 2) {
      const side = s[at] as number;
      const value = s[at + 1] as number;
      if (-(low[side ^ 1] as number) < value) continue;
      s[at] = s[front] as number;
      s[at + 1] = s[front + 1] as number;
      s[front] = side;
      s[front + 1] = value;
      front += 2;
    }
  }
}
