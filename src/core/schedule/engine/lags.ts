import type { Bounds, Explainer } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";
import type { Notes } from "./notes.ts";

/** A statement that a lag waits for; `side` −1 is always true. */
export interface Guard {
  readonly side: number;
  readonly value: number;
}

/**
 * Differences y ≥ x + w, always or only while a guard is true. Every one is kept twice: from x to y, and from −y to −x,
 * so that a raised side is followed in one direction only.
 */
export class Lags implements Explainer {
  readonly #by: number;
  readonly #bounds: Bounds;
  readonly #notes: Notes;
  readonly #from: number[] = [];
  readonly #to: number[] = [];
  readonly #weight: number[] = [];
  readonly #guardSide: number[] = [];
  readonly #guardValue: number[] = [];
  /** Lags by the side they start from, and by the side of their guard. */
  readonly #out: number[][] = [];
  readonly #guarded: number[][] = [];
  readonly #reason = new LiteralList();
  work = 0;

  constructor(bounds: Bounds, notes: Notes) {
    this.#bounds = bounds;
    this.#notes = notes;
    this.#by = bounds.explainer(this);
  }

  add(x: number, y: number, weight: number, guard?: Guard): void {
    this.#one(2 * x, 2 * y, weight, guard);
    this.#one(2 * y + 1, 2 * x + 1, weight, guard);
  }

  #one(from: number, to: number, weight: number, guard?: Guard): void {
    const e = this.#from.push(from) - 1;
    this.#to.push(to);
    this.#weight.push(weight);
    this.#guardSide.push(guard?.side ?? -1);
    this.#guardValue.push(guard?.value ?? 0);
    listed(this.#out, from).push(e);
    if (guard !== undefined) listed(this.#guarded, guard.side).push(e);
  }

  /** Follows a raised side; false when that leads to a contradiction. */
  follow(side: number): boolean {
    const out = this.#out[side];
    this.work += out?.length ?? 0;
    if (out !== undefined) for (const e of out) if (!this.#push(e)) return false;
    const guarded = this.#guarded[side];
    if (guarded !== undefined) for (const e of guarded) if (!this.#push(e)) return false;
    return true;
  }

  /** All lags once, before any decision. */
  followAll(): boolean {
    for (let e = 0; e < this.#from.length; e++) if (!this.#push(e)) return false;
    return true;
  }

  #push(e: number): boolean {
    const { low } = this.#bounds;
    const from = this.#from[e] as number;
    const to = this.#to[e] as number;
    const value = (low[from] as number) + (this.#weight[e] as number);
    if (value <= (low[to] as number)) return true;
    const guard = this.#guardSide[e] as number;
    if (guard < 0 || (low[guard] as number) >= (this.#guardValue[e] as number))
      return this.#bounds.raise(to, value, this.#by, e);
    const most = -(low[to ^ 1] as number);
    return value <= most || this.#refuteGuard(e, most);
  }

  /** The lag does not fit, so its guard is false. */
  #refuteGuard(e: number, most: number): boolean {
    const guard = this.#guardSide[e] as number;
    const opposite = 1 - (this.#guardValue[e] as number);
    if ((this.#bounds.low[guard ^ 1] as number) >= opposite) return true;
    const reason = this.#reason;
    reason.clear();
    reason.add(this.#from[e] as number, most + 1 - (this.#weight[e] as number));
    reason.add((this.#to[e] as number) ^ 1, -most);
    return this.#bounds.raise(guard ^ 1, opposite, this.#notes.by, this.#notes.keep(reason));
  }

  because(e: number, _side: number, value: number, into: LiteralList): void {
    into.add(this.#from[e] as number, value - (this.#weight[e] as number));
    const guard = this.#guardSide[e] as number;
    if (guard >= 0) into.add(guard, this.#guardValue[e] as number);
  }
}

const listed = (lists: number[][], at: number): number[] => {
  let list = lists[at];
  if (list === undefined) {
    list = [];
    lists[at] = list;
  }
  return list;
};
