import type { Activity } from "./activity.ts";
import type { Bounds } from "./bounds.ts";
import { LiteralList } from "./literal-list.ts";

/**
 * From a contradiction to a clause that would have prevented it: the first statement of the current level through which
 * every way from the decision to the contradiction leads, with what came from earlier levels.
 *
 * Source: J. P. Marques-Silva and K. A. Sakallah, "GRASP", IEEE Trans. Comput. 48 (1999) 506 (unique implication points);
 * O. Ohrimenko, P. J. Stuckey and M. Codish, "Propagation via lazy clause generation", Constraints 14 (2009) 357, over bounds.
 */
export class Learner {
  readonly #bounds: Bounds;
  readonly #activity: Activity;
  /** By entry of the trail: the value needed there, while `mark` says that it is. */
  #needed = new Int32Array(1024);
  #mark = new Int32Array(1024);
  #round = 0;
  readonly #marked: number[] = [];
  #open = 0;
  readonly #because = new LiteralList();
  readonly clause = new LiteralList();
  /** The level to go back to, and over how many levels the clause reaches. */
  backLevel = 0;
  distance = 0;
  readonly #levelSeen: number[] = [];

  constructor(bounds: Bounds, activity: Activity) {
    this.#bounds = bounds;
    this.#activity = activity;
  }

  /** Reads `bounds.conflict`, writes `clause` with the statement to make true first. */
  learn(): void {
    const b = this.#bounds;
    if (this.#mark.length < b.length) {
      this.#needed = new Int32Array(b.side.length);
      this.#mark = new Int32Array(b.side.length);
      this.#round = 0;
    }
    this.#round++;
    this.#marked.length = 0;
    this.#open = 0;
    this.#need(b.conflict);
    let at = b.length - 1;
    for (;;) {
      while (this.#mark[at] !== this.#round) at--;
      if (this.#open === 1) break;
      this.#open--;
      this.#mark[at] = 0;
      this.#because.clear();
      b.explain(at, this.#needed[at] as number, this.#because);
      this.#need(this.#because);
    }
    this.#write(at);
  }

  #need(literals: LiteralList): void {
    const b = this.#bounds;
    for (let k = 0; k < literals.length; k++) {
      const side = literals.sides[k] as number;
      const value = literals.values[k] as number;
      const at = b.entryOf(side, value);
      if (at < 0) continue;
      if (this.#mark[at] === this.#round) {
        if (value > (this.#needed[at] as number)) this.#needed[at] = value;
        continue;
      }
      this.#mark[at] = this.#round;
      this.#needed[at] = value;
      this.#activity.bump(side, value);
      if (b.levelOf[at] === b.level) this.#open++;
      else this.#marked.push(at);
    }
  }

  #write(first: number): void {
    const b = this.#bounds;
    const { clause } = this;
    clause.clear();
    clause.add((b.side[first] as number) ^ 1, 1 - (this.#needed[first] as number));
    this.#levelSeen.length = 0;
    this.backLevel = 0;
    // first what a stronger one says, unmarked so that the two are not each other's reason
    for (const at of this.#marked)
      if (this.#strongerIn(b.side[at] as number, at, b.length)) this.#mark[at] = 0;
    for (const at of this.#marked) {
      if (this.#mark[at] !== this.#round || this.#followsFromOthers(at)) continue;
      clause.add((b.side[at] as number) ^ 1, 1 - (this.#needed[at] as number));
      const level = b.levelOf[at] as number;
      if (!this.#levelSeen.includes(level)) this.#levelSeen.push(level);
      if (level > this.backLevel) {
        this.backLevel = level;
        const last = clause.length - 1;
        swap(clause.sides, 1, last);
        swap(clause.values, 1, last);
      }
    }
    this.distance = this.#levelSeen.length + 1;
  }

  /** A statement is left out when what implies it is all in. */
  #followsFromOthers(at: number): boolean {
    const b = this.#bounds;
    if (b.isDecision(at)) return false;
    this.#because.clear();
    b.explain(at, this.#needed[at] as number, this.#because);
    for (let k = 0; k < this.#because.length; k++) {
      const side = this.#because.sides[k] as number;
      const value = this.#because.values[k] as number;
      const from = b.entryOf(side, value);
      if (from < 0) continue;
      const isIn = this.#mark[from] === this.#round && (this.#needed[from] as number) >= value;
      if (!isIn && !this.#strongerIn(side, from, at)) return false;
    }
    return true;
  }

  /** Is a later, stronger bound of the side marked, before `until` on the trail? */
  #strongerIn(side: number, than: number, until: number): boolean {
    const b = this.#bounds;
    for (let at = b.lastOf(side); at > than; at = b.previous[at] as number)
      if (at < until && this.#mark[at] === this.#round) return true;
    return false;
  }
}

function swap(list: Int32Array, i: number, j: number): void {
  const kept = list[i] as number;
  list[i] = list[j] as number;
  list[j] = kept;
}
