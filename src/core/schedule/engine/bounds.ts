import { LiteralList } from "./literal-list.ts";

/** Says why a bound holds: adds statements that together imply "side ≥ value" and were true before it. */
export interface Explainer {
  because(why: number, side: number, value: number, into: LiteralList): void;
}

/** Nobody explains a decision. */
export const decided = 0;

const grown = (old: Int32Array): Int32Array<ArrayBuffer> => {
  const next = new Int32Array(old.length * 2);
  next.set(old);
  return next;
};

/**
 * Whole-number variables between two bounds, with every change of a bound on a trail, so that it can be taken back and
 * explained. Each variable x has two sides: side 2x is x itself, side 2x + 1 is −x. "x ≤ 7" is "side 2x + 1 ≥ −7", so
 * that one kind of statement, "side ≥ value", says everything, and its opposite is "side ^ 1 ≥ 1 − value".
 */
export class Bounds {
  /** The least value of each side, and what it was before the first decision. */
  low: Int32Array;
  root: Int32Array;
  length = 0;
  level = 0;
  /** Statements that cannot all be true, after a failed `raise`. */
  readonly conflict = new LiteralList();
  side = new Int32Array(1024);
  /** Value of the side before and after the change, and the change of the same side before this one (−1: none). */
  before = new Int32Array(1024);
  after = new Int32Array(1024);
  previous = new Int32Array(1024);
  levelOf = new Int32Array(1024);
  readonly #explainers: Explainer[] = [];
  #by = new Int32Array(1024);
  #why = new Int32Array(1024);
  #last: Int32Array;
  readonly #levelStart: number[] = [];
  #variables = 0;

  constructor(capacity: number) {
    this.low = new Int32Array(capacity * 2);
    this.root = this.low.slice();
    this.#last = new Int32Array(capacity * 2).fill(-1);
    this.#explainers.push({
      because: () => {
        throw new Error("A decision has no reason.");
      },
    });
  }

  get variables(): number {
    return this.#variables;
  }

  variable(least: number, most: number): number {
    const x = this.#variables++;
    if (2 * x >= this.low.length) {
      this.low = grown(this.low);
      this.root = this.low.slice();
      const last = new Int32Array(this.low.length).fill(-1);
      last.set(this.#last);
      this.#last = last;
    }
    this.low[2 * x] = least;
    this.low[2 * x + 1] = -most;
    return x;
  }

  /** The number under which an explainer's reasons are kept. */
  explainer(by: Explainer): number {
    return this.#explainers.push(by) - 1;
  }

  least(x: number): number {
    return this.low[2 * x] as number;
  }

  most(x: number): number {
    return -(this.low[2 * x + 1] as number);
  }

  isFixed(x: number): boolean {
    return this.low[2 * x] === -(this.low[2 * x + 1] as number);
  }

  /** Makes "side ≥ value" true. False when its opposite is true already: `conflict` then says why that cannot be. */
  raise(side: number, value: number, by: number, why: number): boolean {
    const old = this.low[side] as number;
    if (value <= old) return true;
    const most = -(this.low[side ^ 1] as number);
    if (value > most) {
      this.conflict.clear();
      (this.#explainers[by] as Explainer).because(why, side, value, this.conflict);
      this.conflict.add(side ^ 1, 1 - value);
      return false;
    }
    const at = this.length;
    if (at === this.side.length) this.#grow();
    this.side[at] = side;
    this.before[at] = old;
    this.after[at] = value;
    this.previous[at] = this.#last[side] as number;
    this.levelOf[at] = this.level;
    this.#by[at] = by;
    this.#why[at] = why;
    this.#last[side] = at;
    this.low[side] = value;
    this.length = at + 1;
    return true;
  }

  decide(side: number, value: number): void {
    if (this.level === 0) this.root.set(this.low);
    this.level++;
    this.#levelStart.push(this.length);
    this.raise(side, value, decided, 0);
  }

  /** Takes back all levels above `level`; `undone` is told of each side that moved. */
  backTo(level: number, undone: (side: number) => void): void {
    if (level >= this.level) return;
    const start = this.#levelStart[level] as number;
    this.#levelStart.length = level;
    for (let at = this.length - 1; at >= start; at--) {
      const side = this.side[at] as number;
      this.low[side] = this.before[at] as number;
      this.#last[side] = this.previous[at] as number;
      undone(side);
    }
    this.length = start;
    this.level = level;
  }

  /** Where on the trail "side ≥ value" became true; −1 when it always was, or was found without any decision. */
  entryOf(side: number, value: number): number {
    let at = this.#last[side] as number;
    while (at >= 0 && (this.before[at] as number) >= value) at = this.previous[at] as number;
    return at < 0 || this.levelOf[at] === 0 ? -1 : at;
  }

  /** The last change of a side, or −1. */
  lastOf(side: number): number {
    return this.#last[side] as number;
  }

  isDecision(at: number): boolean {
    return this.#by[at] === decided;
  }

  /** Adds what implies that the side of entry `at` is at least `value`. */
  explain(at: number, value: number, into: LiteralList): void {
    const by = this.#explainers[this.#by[at] as number] as Explainer;
    by.because(this.#why[at] as number, this.side[at] as number, value, into);
  }

  #grow(): void {
    this.side = grown(this.side);
    this.before = grown(this.before);
    this.after = grown(this.after);
    this.previous = grown(this.previous);
    this.levelOf = grown(this.levelOf);
    this.#by = grown(this.#by);
    this.#why = grown(this.#why);
  }
}
