import { Activity } from "./activity.ts";
import { Bounds } from "./bounds.ts";
import { Clauses } from "./clauses.ts";
import { Lags } from "./lags.ts";
import { Learner } from "./learn.ts";
import { LiteralList } from "./literal-list.ts";
import { Notes } from "./notes.ts";
import { SumAtMost, type Term } from "./sum-at-most.ts";

/** Looks at some variables together; called again whenever one of them moved. False when they contradict each other. */
export interface Propagator {
  propagate(): boolean;
  readonly work: number;
}

/** "side ≥ value". */
export type Statement = readonly [side: number, value: number];

/** What a search found: `none` when nothing (more) exists, `stopped` when it had to end before it knew. */
export type Outcome = "found" | "none" | "stopped";

/**
 * Search with learning over bounded whole numbers: decides, follows the consequences, and keeps of each contradiction the
 * clause that would have prevented it.
 *
 * Source: A. Schutt, T. Feydy, P. J. Stuckey and M. G. Wallace, "Solving RCPSP/max by lazy clause generation",
 * J. Scheduling 16 (2013) 273.
 */
export class Engine {
  readonly bounds: Bounds;
  readonly notes: Notes;
  readonly lags: Lags;
  readonly clauses: Clauses;
  readonly #activity = new Activity();
  readonly #learner: Learner;
  readonly #propagators: Propagator[] = [];
  /** Propagators by variable, and those that wait. */
  readonly #watching: number[][] = [];
  readonly #waiting: number[] = [];
  readonly #isWaiting: boolean[] = [];
  readonly #notesAt: number[] = [];
  #followed = 0;
  #consistent = true;
  conflicts = 0;
  /** Variables to decide, in this order when nothing is known of them. */
  readonly toDecide: number[] = [];
  /** Variables to decide when all those are, in this order. */
  readonly decideLast: number[] = [];
  /** Values to try first: those of the best found so far. */
  #wanted: Int32Array | undefined;
  #steps = 0;
  #decisions = 0;

  constructor(variables: number) {
    this.bounds = new Bounds(variables);
    this.notes = new Notes(this.bounds);
    this.lags = new Lags(this.bounds, this.notes);
    this.clauses = new Clauses(this.bounds);
    this.#learner = new Learner(this.bounds, this.#activity);
  }

  addPropagator(propagator: Propagator, variables: Iterable<number>): void {
    const p = this.#propagators.push(propagator) - 1;
    for (const x of variables) {
      let list = this.#watching[x];
      if (list === undefined) {
        list = [];
        this.#watching[x] = list;
      }
      if (!list.includes(p)) list.push(p);
    }
    this.#isWaiting.push(true);
    this.#waiting.push(p);
  }

  /** At least one of the statements [side, value] holds. */
  addClause(...literals: readonly Statement[]): void {
    const list = new LiteralList();
    for (const [side, value] of literals) list.add(side, value);
    this.#consistent &&= this.clauses.addPermanent(list);
  }

  /** Sides, each so many times, add up to so much at most. */
  addSum(terms: readonly Term[], most: number): SumAtMost {
    const sum = new SumAtMost(this.bounds, this.notes, terms, most);
    this.addPropagator(sum, sum.variables);
    return sum;
  }

  /** What was done so far, in steps that take about a microsecond each on a modest machine. */
  get work(): number {
    let looks = 0;
    for (const p of this.#propagators) looks += p.work;
    return 0.6 * this.#steps + 0.013 * (this.clauses.work + this.lags.work) + 0.15 * looks;
  }

  want(values: Int32Array): void {
    this.#wanted = values;
  }

  /** Makes "side ≥ value" true for good. */
  require(side: number, value: number): boolean {
    this.#backTo(0);
    this.#consistent &&= this.bounds.raise(side, value, this.notes.by, this.notes.keep(new LiteralList()));
    return this.#consistent;
  }

  /** Every propagator looks again: one of them was tightened. */
  wakeAll(): void {
    this.#backTo(0);
    for (let p = 0; p < this.#propagators.length; p++) this.#wake(p);
  }

  /** Follows what is known without any decision; false when it contradicts itself. */
  settle(): boolean {
    this.#backTo(0);
    this.#consistent &&= this.lags.followAll() && this.#propagate();
    return this.#consistent;
  }

  /**
   * Looks for values of all variables.
   *
   * @param conflicts  after so many contradictions it stops
   * @param mustStop   asked now and then
   * @param assumed    statements to take for true first, [side, value]; what is learned holds without them
   */
  search(conflicts: number, mustStop: () => boolean, assumed: readonly Statement[] = []): Outcome {
    if (!this.settle()) return "none";
    const until = this.conflicts + conflicts;
    for (;;) {
      if (!this.#propagate()) {
        if (!this.#learn()) return "none";
        if (this.conflicts >= until || (this.conflicts % 16 === 0 && mustStop())) return "stopped";
        continue;
      }
      const next = assumed[this.bounds.level];
      if (next !== undefined) {
        const [side, value] = next;
        if (-(this.bounds.low[side ^ 1] as number) < value) return "stopped"; // what was assumed is impossible
        this.#decide(side, value);
        continue;
      }
      if (!this.#decideNext()) return "found";
      if (this.#decisions % 1024 === 0 && mustStop()) return "stopped";
    }
  }

  /** Forgets half of what was learned when it has become much. */
  tidy(most: number): void {
    if (this.clauses.learnedCount <= most || !this.settle()) return;
    this.clauses.forgetHalf();
  }

  #learn(): boolean {
    this.conflicts++;
    if (this.bounds.level === 0) {
      this.#consistent = false;
      return false;
    }
    this.#learner.learn();
    this.#backTo(this.#learner.backLevel);
    this.clauses.learn(this.#learner.clause, this.#learner.distance);
    this.#activity.fade();
    return true;
  }

  readonly #isOpen = (x: number, value: number): boolean =>
    this.bounds.least(x) < value && value <= this.bounds.most(x);

  #decideNext(): boolean {
    const active = this.#activity.next(this.#isOpen);
    if (active !== undefined) {
      const [x, value] = active;
      const high =
        this.#wanted !== undefined && x < this.#wanted.length && (this.#wanted[x] as number) >= value;
      if (high) this.#decide(2 * x, value);
      else this.#decide(2 * x + 1, 1 - value);
      return true;
    }
    const earliest = this.#earliestOpen();
    const x = earliest < 0 ? (this.decideLast.find((last) => !this.bounds.isFixed(last)) ?? -1) : earliest;
    if (x < 0) return false;
    this.#decide(2 * x + 1, -this.bounds.least(x));
    return true;
  }

  #earliestOpen(): number {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.POSITIVE_INFINITY;
    const { low } = this.bounds;
    for (const x of this.toDecide) {
      const from = low[2 * x] as number;
      const to = -(low[2 * x + 1] as number);
      if (from === to || from > least) continue;
      if (from < least || to < most) {
        best = x;
        least = from;
        most = to;
      }
    }
    return best;
  }

  #decide(side: number, value: number): void {
    this.#notesAt[this.bounds.level] = this.notes.length;
    this.bounds.decide(side, value);
    this.#decisions++;
  }

  readonly #undone = (side: number): void => this.#activity.reopen(side >> 1);

  #backTo(level: number): void {
    if (level >= this.bounds.level) return;
    this.bounds.backTo(level, this.#undone);
    this.notes.forgetAfter(this.#notesAt[level] as number);
    this.#followed = Math.min(this.#followed, this.bounds.length);
  }

  #propagate(): boolean {
    const { bounds, lags, clauses } = this;
    for (;;) {
      while (this.#followed < bounds.length) {
        const side = bounds.side[this.#followed++] as number;
        this.#steps++;
        const watching = this.#watching[side >> 1];
        if (watching !== undefined) for (const p of watching) this.#wake(p);
        if (!lags.follow(side) || !clauses.follow(side)) return this.#fail();
      }
      const p = this.#waiting.pop();
      if (p === undefined) return true;
      this.#isWaiting[p] = false;
      if (!(this.#propagators[p] as Propagator).propagate()) return this.#fail();
    }
  }

  #wake(p: number): void {
    if (this.#isWaiting[p]) return;
    this.#isWaiting[p] = true;
    this.#waiting.push(p);
  }

  #fail(): false {
    // what had not been followed is taken back with its level
    this.#followed = this.bounds.length;
    return false;
  }
}
