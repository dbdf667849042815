import { type Random, randomFromSeed, randomIndex } from "../random.ts";
import { Stock } from "./breed.ts";
import { energyBound } from "./energy-bound.ts";
import type { Engine, Statement } from "./engine/engine.ts";
import { engineOf, type Model } from "./exact.ts";
import { Generator, shapeOf } from "./generate.ts";
import { Founder, goodSchedule } from "./heuristic.ts";
import { longestPaths } from "./longest-paths.ts";
import { luby } from "./luby.ts";
import { horizonOf, type Project } from "./project.ts";
import { Turner } from "./turner.ts";

export interface Solved {
  /** Starts by task; null when no schedule exists, or none was found. */
  readonly starts: readonly number[] | null;
  readonly length: number | null;
  /** No schedule is shorter. Infinite when there is none at all. */
  readonly lowerBound: number;
  /** True when it is known that none is shorter, or that none exists. */
  readonly proven: boolean;
  /** Tasks whose lags contradict each other, in the order in which each waits for the next. */
  readonly cycle?: readonly number[];
}

export interface Search {
  /** Asked now and then with the steps taken so far; true ends the search with the best found. */
  readonly mustStop: (steps: number) => boolean;
  /** Told of every better schedule and of every better bound: the best starts, and a length that none can beat. */
  readonly progress?: (starts: Int32Array | undefined, lowerBound: number) => void;
}

const impossible = (cycle?: readonly number[]): Solved => ({
  starts: null,
  length: null,
  lowerBound: Number.POSITIVE_INFINITY,
  proven: true,
  ...(cycle === undefined ? {} : { cycle }),
});

/**
 * The shortest schedule of a project: good ones by priorities, then a search with learning that ends with a proof, or
 * with the best found when it is stopped.
 *
 * @param project  tasks, lags and resources, whole units of time
 * @param search   when to stop, and whom to tell
 * @returns        starts (n), length, lower bound, and whether it is proven
 * @throws DomainError never: what cannot be scheduled is an answer
 *
 * Valid:  up to a few hundred tasks; beyond that the proof is not to be waited for
 * Source: A. Schutt, T. Feydy, P. J. Stuckey and M. G. Wallace, "Explaining the cumulative propagator", Constraints 16 (2011) 250
 */
export function solveProject(project: Project, search: Search): Solved {
  const { distance, cycle } = longestPaths(project);
  if (cycle !== undefined) return impossible(cycle);
  const tooMuch = project.demands.some((row, i) =>
    row.some(
      (demand, r) => (project.durations[i] as number) > 0 && demand > (project.capacities[r] as number),
    ),
  );
  if (tooMuch) return impossible();
  const horizon = horizonOf(project);
  const maker = Turner.of(project) ?? new Generator(shapeOf(project, distance, horizon));
  const help = priorities(new Founder(maker, distance), vainChildren * distance.length ** 3);
  return new Solver({ project, horizon }, distance, search, energyBound(project, distance), help).run();
}

/**
 * A shorter schedule than one that is known, by search alone.
 *
 * @param model   the project with its open times and changes
 * @param known   starts of the known schedule (n), or none
 * @param search  when to stop, and whom to tell
 * @param lower   a length that cannot be beaten
 * @returns       starts (n), length, lower bound, and whether it is proven
 * @throws DomainError never: what cannot be scheduled is an answer
 *
 * Valid:  up to a few hundred tasks, as `solveProject`
 * Source: as `solveProject`
 */
export function shortened(
  model: Model,
  known: Int32Array | undefined,
  search: Search,
  lower: number,
): Solved {
  const { distance, cycle } = longestPaths(model.project);
  if (cycle !== undefined) return impossible(cycle);
  const horizon = known === undefined ? model.horizon : (known.at(-1) as number) - 1;
  const help = { first: () => undefined, work: 0 };
  return new Solver({ ...model, horizon }, distance, search, lower, help, known).run();
}

/** Rounds of priority schedules before the search: they cost a few milliseconds and save it the worst part. */
const firstRounds = 60;
/** Breeding is for what a search of a second has not settled: a second of it first, then half as long as the search [steps]. */
const breedAfter = 1e6;
const breedsFirst = 1e6;
const childrenAtOnce = 100;
/** A stock has become too much alike when so many children, times the cube of the tasks, were none shorter: another is begun… */
const vainChildren = 0.25;
/** …until so many were in vain. */
const mostStocks = 8;

/** Where good schedules come from, beside the search. */
interface Help {
  readonly first: (target: number) => Int32Array | undefined;
  /** A schedule that is shorter than the best, if one is found soon. */
  readonly shorter?: (best: Int32Array) => Int32Array | undefined;
  /** Nothing more is to be hoped for. */
  readonly isSpent?: boolean;
  readonly work: number;
}

function priorities(founder: Founder, patience: number): Help {
  let stock: Stock | undefined;
  let stocks = 0;
  let vain = 0;
  return {
    first: (target) => goodSchedule(founder, firstRounds, target),
    shorter: (best) => {
      if (stock === undefined || vain > patience) {
        stock = new Stock(founder, best, `breed ${stocks++}`);
        vain = 0;
      }
      const shorter = stock.grow(childrenAtOnce, best.at(-1) as number);
      vain = shorter === undefined ? vain + childrenAtOnce : 0;
      return shorter;
    },
    get isSpent() {
      return stocks === mostStocks && vain > patience;
    },
    get work() {
      return founder.maker.work;
    },
  };
}

class Solver {
  readonly #model: Model;
  readonly #search: Search;
  readonly #engine: Engine;
  readonly #end: number;
  #best: Int32Array | undefined;
  #lower: number;
  readonly #help: Help;
  #everyRounds = 1;
  readonly #random = randomFromSeed("nearby");

  constructor(
    model: Model,
    distance: readonly Int32Array[],
    search: Search,
    lower: number,
    help: Help,
    known?: Int32Array,
  ) {
    this.#model = model;
    this.#search = search;
    this.#end = model.project.durations.length - 1;
    this.#lower = lower;
    this.#engine = engineOf(model, distance);
    this.#help = help;
    this.#best = known;
    if (known !== undefined) this.#engine.want(known);
  }

  run(): Solved {
    if (!this.#engine.settle() || !this.#engine.require(2 * this.#end, this.#lower))
      return this.#answer(true);
    this.#raiseLower();
    const first = this.#help.first(this.#lower);
    if (first !== undefined && !this.#improve(first)) return this.#answer(true);
    for (let round = 1; !this.#mustStop(); round++) {
      if (this.#once(100 * luby(round), []) || this.#look(round)) return this.#answer(true);
      this.#raiseLower();
      this.#engine.tidy(6000 + 10 * round);
      if (this.#work > breedAfter && !this.#breed()) return this.#answer(true);
    }
    return this.#answer(false);
  }

  /** Until its share of the work is done; false when that ended with a proof. */
  #breed(): boolean {
    const help = this.#help;
    const { shorter } = help;
    if (shorter === undefined) return true;
    const isBehind = (): boolean => !help.isSpent && help.work < breedsFirst + this.#engine.work;
    while (this.#best !== undefined && isBehind() && !this.#mustStop()) {
      const bred = shorter(this.#best);
      if (bred !== undefined && !this.#improve(bred)) return false;
    }
    return true;
  }

  /** One search; true when it ended with a proof. */
  #once(conflicts: number, assumed: readonly Statement[]): boolean {
    const outcome = this.#engine.search(conflicts, this.#mustStop, assumed);
    return outcome === "none" || (outcome === "found" && !this.#improve(this.#found()));
  }

  /** Looks for a shorter schedule near the best one, the more seldom the longer it was in vain. */
  #look(round: number): boolean {
    if (this.#best === undefined || round % this.#everyRounds !== 0) return false;
    const before = this.#best;
    for (let i = 0; i < 4 && !this.#mustStop(); i++)
      if (this.#once(600, gainedInWindow(this.#best, this.#model.project.durations, this.#random)))
        return true;
    this.#everyRounds = this.#best === before ? Math.min(4, this.#everyRounds + 1) : 1;
    return false;
  }

  readonly #mustStop = (): boolean => this.#search.mustStop(this.#work);

  get #work(): number {
    return this.#help.work + this.#engine.work;
  }

  #found(): Int32Array {
    const { bounds } = this.#engine;
    return Int32Array.from({ length: bounds.variables }, (_, x) => bounds.least(x));
  }

  /** Keeps a schedule and asks for a shorter one; false when there is none. */
  #improve(starts: Int32Array): boolean {
    this.#best = starts.slice(0, this.#end + 1);
    this.#engine.want(starts);
    const length = starts[this.#end] as number;
    this.#search.progress?.(this.#best, this.#lower);
    return this.#engine.require(2 * this.#end + 1, 1 - length);
  }

  #raiseLower(): void {
    const least = this.#engine.bounds.least(this.#end);
    if (this.#engine.bounds.level > 0 || least <= this.#lower) return;
    this.#lower = least;
    this.#search.progress?.(this.#best, least);
  }

  #answer(proven: boolean): Solved {
    if (this.#best === undefined)
      return proven ? impossible() : { ...impossible(), lowerBound: this.#lower, proven };
    const length = this.#best[this.#end] as number;
    const lowerBound = proven ? length : this.#lower;
    return { starts: [...this.#best], length, lowerBound, proven };
  }
}

/**
 * A schedule one unit shorter, that gains it within a window of time: what ends before stays or comes earlier, what starts
 * after comes earlier by one at least.
 */
function gainedInWindow(best: Int32Array, durations: readonly number[], random: Random): Statement[] {
  const length = best[best.length - 1] as number;
  const width = Math.max(2, Math.ceil(length * (0.2 + 0.5 * random())));
  const from = randomIndex(random, length) - (width >> 1);
  const mayMove = random() < 0.5;
  return [...best].flatMap((start, task): Statement[] => {
    const end = start + (durations[task] as number);
    const notLater: Statement = [2 * task + 1, -start];
    if (end <= from) return mayMove ? [notLater] : [notLater, [2 * task, start]];
    return start >= from + width ? [[2 * task + 1, 1 - start]] : [];
  });
}
