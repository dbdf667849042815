import { type Random, randomIndex } from "../../random.ts";
import { dot, Information, logDeterminant, type ModelRow } from "./information.ts";

/** A factor as the columns that its levels put into a model. */
export interface CodedFactor {
  /** For each level, what it adds by itself; no columns where blocks take it all. */
  readonly own: readonly (readonly number[])[];
  /** For each level, what is multiplied with another factor's where they are asked together. */
  readonly crossed: readonly (readonly number[])[];
}

export interface OptimalProblem {
  readonly factors: readonly CodedFactor[];
  /** Factors that are asked together, by their numbers. */
  readonly together: readonly (readonly [number, number])[];
  /** The block of each run, n. */
  readonly blockOf: readonly number[];
  readonly blocks: number;
  /** For each run the levels that do not change, or null where the level is free. */
  readonly fixed: readonly (readonly (number | null)[])[];
  readonly allowed: (run: number, levels: readonly number[]) => boolean;
}

/** Levels of every factor for every run, and how much they tell. */
export interface OptimalRuns {
  readonly levels: readonly (readonly number[])[];
  readonly logDeterminant: number;
}

const least = 1 + 1e-7;
const drawsForOne = 2000;

/** Contrasts of k things, of length √k each and at right angles: what is asked does not depend on who comes first. */
export const contrasts = (k: number): readonly (readonly number[])[] =>
  Array.from({ length: k }, (_, level) =>
    Array.from({ length: k - 1 }, (_, c) => {
      const scale = Math.sqrt(k / ((c + 1) * (c + 2)));
      return level <= c ? scale : level === c + 1 ? -(c + 1) * scale : 0;
    }),
  );

/** Where the columns of a factor and of a pair start in a model row. */
class Columns {
  readonly own: readonly number[];
  readonly pairs: readonly { readonly start: number; readonly a: number; readonly b: number }[];
  readonly count: number;
  /** For each factor, the pairs that it is in. */
  readonly pairsOf: readonly (readonly number[])[];
  private readonly problem: OptimalProblem;
  private readonly blockColumns: readonly (readonly number[])[];
  constructor(problem: OptimalProblem) {
    this.problem = problem;
    this.blockColumns = contrasts(problem.blocks);
    let next = problem.blocks; // the mean and the blocks
    const take = (width: number) => {
      next += width;
      return next - width;
    };
    this.own = problem.factors.map((f) => take(f.own[0]?.length ?? 0));
    this.pairs = problem.together.map(([a, b]) => {
      const width = (f: number) => problem.factors[f]?.crossed[0]?.length ?? 0;
      return { start: take(width(a) * width(b)), a, b };
    });
    this.count = next;
    this.pairsOf = problem.factors.map((_, f) =>
      this.pairs.flatMap((p, i) => (p.a === f || p.b === f ? [i] : [])),
    );
  }
  row(run: number, levels: readonly number[]): ModelRow {
    const x = new Float64Array(this.count);
    x[0] = 1;
    x.set(this.blockColumns[this.problem.blockOf[run] as number] as readonly number[], 1);
    for (const f of levels.keys()) this.write(x, f, levels);
    return x;
  }
  /** Writes what one factor puts into a row: its own columns, and those of its pairs. */
  write(x: ModelRow, f: number, levels: readonly number[]): void {
    const factors = this.problem.factors;
    const own = (factors[f] as CodedFactor).own[levels[f] as number] as readonly number[];
    for (const [i, value] of own.entries()) x[(this.own[f] as number) + i] = value;
    for (const p of this.pairsOf[f] as readonly number[]) {
      const { start, a, b } = this.pairs[p] as (typeof this.pairs)[number];
      const first = (factors[a] as CodedFactor).crossed[levels[a] as number] as readonly number[];
      const second = (factors[b] as CodedFactor).crossed[levels[b] as number] as readonly number[];
      let at = start;
      for (const u of first) for (const v of second) x[at++] = u * v;
    }
  }
  /** The columns that can change with a factor. */
  touched(f: number): readonly number[] {
    const width = (this.problem.factors[f] as CodedFactor).own[0]?.length ?? 0;
    const own = Array.from({ length: width }, (_, i) => (this.own[f] as number) + i);
    const inPairs = (this.pairsOf[f] as readonly number[]).flatMap((p) => {
      const { start, a, b } = this.pairs[p] as (typeof this.pairs)[number];
      const size = (g: number) => (this.problem.factors[g] as CodedFactor).crossed[0]?.length ?? 0;
      return Array.from({ length: size(a) * size(b) }, (_, i) => start + i);
    });
    return [...own, ...inPairs];
  }
}

/** How many things a model asks: the mean, the blocks, the factors' own columns and those of their pairs. */
export const columnsOf = (problem: OptimalProblem): number => new Columns(problem).count;

/**
 * Levels for every run that together tell the most: the largest det X′X found from many starts, each bettered by
 * changing one level of one run after another while that helps. Blocks are allowed for; levels may be fixed, and
 * combinations forbidden.
 *
 * A change of one level touches few columns: with δ the change and u = D·x, both numbers of the exchange formula come
 * from δ′u and δ′Dδ alone.
 *
 * @param problem  factors, blocks and what is forbidden; n runs
 * @param starts   fresh starts, scalar
 * @returns        one item for each start in which something could be laid, best first
 *
 * Valid:    as many runs as columns, or more
 * Accuracy: not certified; on 48 runs of 6 factors in blocks at least 0.995 of the best of 1 000 plain exchanges (see bench)
 * Source:   R. K. Meyer and C. J. Nachtsheim, Technometrics 37 (1995) 60
 */
export function optimalLevels(
  problem: OptimalProblem,
  starts: number,
  random: Random,
): readonly OptimalRuns[] {
  const columns = new Columns(problem);
  const touched = problem.factors.map((_, f) => columns.touched(f));
  const found: OptimalRuns[] = [];
  for (let s = 0; s < starts; s++) {
    const levels = problem.blockOf.map((_, run) => drawnLevels(problem, run, random));
    if (levels.some((one) => one === null)) return found;
    const runs = levels as number[][];
    const rows = runs.map((one, run) => columns.row(run, one));
    while (pass(problem, columns, touched, runs, rows));
    found.push({ levels: runs, logDeterminant: logDeterminant(rows) });
  }
  return found.sort((a, b) => b.logDeterminant - a.logDeterminant);
}

function drawnLevels(problem: OptimalProblem, run: number, random: Random): number[] | null {
  const fixed = problem.fixed[run] as readonly (number | null)[];
  for (let draw = 0; draw < drawsForOne; draw++) {
    const levels = problem.factors.map((f, i) => fixed[i] ?? randomIndex(random, f.crossed.length));
    if (problem.allowed(run, levels)) return levels;
  }
  return null;
}

/** One pass over runs and factors; whether any level was changed. */
function pass(
  problem: OptimalProblem,
  columns: Columns,
  touched: readonly (readonly number[])[],
  runs: readonly number[][],
  rows: readonly ModelRow[],
): boolean {
  const information = new Information(rows, columns.count);
  let helped = false;
  for (const [run, levels] of runs.entries()) {
    const x = rows[run] as ModelRow;
    let along = information.times(x);
    for (const f of problem.factors.keys()) {
      if (problem.fixed[run]?.[f] != null) continue;
      const better = betterLevel(
        problem,
        columns,
        touched[f] as readonly number[],
        information,
        run,
        f,
        levels,
        x,
        along,
      );
      if (better === null) continue;
      const before = Float64Array.from(x);
      levels[f] = better;
      columns.write(x, f, levels);
      information.add(x);
      information.remove(before);
      along = information.times(x);
      helped = true;
    }
  }
  return helped;
}

function betterLevel(
  problem: OptimalProblem,
  columns: Columns,
  touched: readonly number[],
  information: Information,
  run: number,
  f: number,
  levels: readonly number[],
  x: ModelRow,
  along: Float64Array,
): number | null {
  const p = columns.count;
  const known = dot(x, along);
  const trial = [...levels];
  const z = Float64Array.from(x);
  let [best, to] = [least, null as number | null];
  for (let level = 0; level < (problem.factors[f] as CodedFactor).crossed.length; level++) {
    if (level === levels[f]) continue;
    trial[f] = level;
    if (!problem.allowed(run, trial)) continue;
    columns.write(z, f, trial);
    let [once, twice] = [0, 0];
    for (const i of touched) {
      const step = (z[i] as number) - (x[i] as number);
      if (step === 0) continue;
      once += step * (along[i] as number);
      let sum = 0;
      for (const j of touched)
        sum += (information.inverse[i * p + j] as number) * ((z[j] as number) - (x[j] as number));
      twice += step * sum;
    }
    const gain = (1 + known + 2 * once + twice) * (1 - known) + (known + once) ** 2;
    if (gain > best) [best, to] = [gain, level];
  }
  return to;
}
