import { DomainError } from "../../domain-error.ts";
import { studentizedRangeCdf } from "../distribution/studentized-range.ts";
import { mean } from "../numeric/vector.ts";
import { friedmanTest } from "../ranks/friedman.ts";
import { skillingsMackTest } from "../ranks/incomplete-blocks.ts";
import { midRanks } from "../ranks/ranks.ts";
import { pairsOf } from "../several/family-intervals.ts";
import { tukeyMultiplier } from "../several/tukey.ts";
import { comparisonModel } from "./comparison-model.ts";
import { experimentalUnits, type Units } from "./experimental-unit.ts";
import type { MoreNeeded } from "./more-needed.ts";
import { pairedSharesInterval } from "./paired-shares.ts";
import { patchMeans, type Reading } from "./readings.ts";
import { type Blocks, blocksOf, levelRanks, type PairShares, pairShares, placements } from "./sittings.ts";
import { threeWords } from "./three-words.ts";
import {
  aboutWhat,
  type LevelSeen,
  lettersOf,
  levelsSeen,
  type Pair,
  type Question,
  type Verdict,
} from "./verdict-measured.ts";

/** The test over all levels at once that stands beside the pairs. */
export interface OverallTest {
  readonly method: string;
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
}

export interface OrderedVerdict extends Verdict {
  /** Null when every block saw all levels alike. */
  readonly overall: OverallTest | null;
}

export interface OrderedQuestion extends Question {
  /** Whether ranks were given board by board, so that those of two boards cannot be held against each other. */
  readonly rankedWithinBoards?: boolean;
}

type RankRow = readonly (number | null)[];

function overallTest(rows: readonly RankRow[]): OverallTest | null {
  const present = rows.map((row) => row.filter((x) => x !== null));
  if (present.every((row) => new Set(row).size < 2)) return null;
  const whole = present.every((row, i) => row.length === rows[i]?.length);
  const { method, statistic, degreesOfFreedom, pValue } = whole
    ? friedmanTest(present)
    : skillingsMackTest(rows);
  return { method, statistic, degreesOfFreedom, pValue };
}

interface Layout {
  readonly blocks: Blocks;
  readonly units: Units;
  readonly compare: string;
  readonly levels: readonly string[];
}

/**
 * How far the interval reaches on account of the jars or planks that the factor sits on: Tukey's reach for the mean
 * placements of patches, held against the noise between those. 0 where blocks already vary with the patches.
 */
function reachOverUnits({ blocks, units, compare, levels }: Layout, a: string, b: string): number {
  const scores = placements(blocks, compare, a, b);
  const fewest = Math.min(...[a, b].map((x) => scores.filter((s) => s.factors[compare] === x).length));
  if (units.error === null && (blocks.of === "board" || fewest < 2)) return 0;
  const { error, difference } = comparisonModel(scores, compare, units.error);
  if (!(error.meanSquare > 1e-12)) return 0;
  const { variance, degreesOfFreedom } = difference(a, b);
  return tukeyMultiplier(levels.length, degreesOfFreedom) * Math.sqrt(variance);
}

function pairOf(layout: Layout, question: Question, multiplier: number, a: string, b: string): Pair {
  const shares = pairShares(layout.blocks, layout.compare, a, b);
  if (shares.blocks === 0)
    throw new DomainError({
      code: "not-enough-data",
      field: "rows",
      value: null,
      because: `${a} and ${b} never meet in one block.`,
    });
  const difference = (shares.above - shares.below) / shares.blocks;
  const [low, high] = pairedSharesInterval(shares.above, shares.below, shares.blocks, multiplier);
  const reach = reachOverUnits(layout, a, b);
  const interval = [
    Math.max(-1, Math.min(low, difference - reach)),
    Math.min(1, Math.max(high, difference + reach)),
  ] as const;
  const said = threeWords(interval, question.matters);
  return {
    a,
    b,
    difference,
    interval,
    ...said,
    verdict: said.verdict === "equal" ? "unclear" : said.verdict,
  };
}

/** Blocks to add until every pair that could be settled is, if the shares stay as seen; null when one never is. */
function moreBlocks(
  layout: Layout,
  pairs: readonly Pair[],
  matters: number,
  multiplier: number,
): number | null {
  const needed = pairs
    .filter((p) => p.verdict === "unclear")
    .map((p) => {
      const shares = pairShares(layout.blocks, layout.compare, p.a, p.b);
      if (reachOverUnits(layout, p.a, p.b) > Math.abs(p.difference) - matters) return null;
      return firstEnough(shares, matters, multiplier);
    });
  return needed.reduce((most, n) => (most === null || n === null ? null : Math.max(most, n)), 0);
}

function firstEnough(
  { above, below, blocks }: PairShares,
  matters: number,
  multiplier: number,
): number | null {
  for (let more = 1; more <= 60; more++) {
    const grown = (blocks + more) / blocks;
    const interval = pairedSharesInterval(above * grown, below * grown, blocks + more, multiplier);
    if (threeWords(interval, matters).verdict === "different") return more;
  }
  return null;
}

/** The mean rank of each level among those seen in its block. */
function rankedLevels(seen: readonly LevelSeen[], rows: readonly RankRow[]): LevelSeen[] {
  const ranks = rows.map((row) => {
    const present = midRanks(row.filter((x) => x !== null));
    let next = 0;
    return row.map((x) => (x === null ? [] : [present[next++] as number])); // as many ranks as values
  });
  return seen.map((level, j) => ({ ...level, mean: mean(ranks.flatMap((row) => row[j] ?? [])) }));
}

/**
 * The verdict on an ordered or ranked response: for each two levels how often one was put above the other in the same
 * block less how often below, with an interval for all pairs at once, beside Friedman's test of all levels.
 *
 *     d = P(A above B) − P(B above A)
 *
 * The interval is Tango's score interval with Tukey's multiplier over the blocks (boards, or judges where one board
 * carries all), made wider where the noise between jars or planks asks for it. It never says that two levels are as
 * good as equal.
 *
 * @param readings  n readings, the higher value the one above
 * @param question  {compare, appliedTo, matters}, matters as a share of blocks
 * @returns         one pair for each two levels, with the words
 * @throws DomainError for values that do not vary, fewer than two blocks with several levels, and levels that never
 *         meet in one
 *
 * Valid:  two or more levels, two or more blocks
 * Source: W. J. Conover, Practical Nonparametric Statistics (1999), 5.8; T. Tango, Statist. Med. 17 (1998) 891
 */
export function verdictOrdered(readings: readonly Reading[], question: OrderedQuestion): OrderedVerdict {
  const { compare, matters } = question;
  const { patches, wobble } = patchMeans(readings);
  if (new Set(readings.map((r) => r.value)).size < 2)
    throw new DomainError({ code: "no-variation", field: "rows.value", value: readings[0]?.value });
  const units = experimentalUnits(patches, compare, question.appliedTo);
  const blocks = blocksOf(readings, compare, question.rankedWithinBoards ?? false);
  const levels = [...new Set(patches.map((p) => p.factors[compare] ?? ""))].sort();
  const layout: Layout = { blocks, units, compare, levels };
  const multiplier = tukeyMultiplier(levels.length, Number.POSITIVE_INFINITY);
  const pairs = pairsOf(levels).map(([a, b]) => pairOf(layout, question, multiplier, a, b));
  const rows = levelRanks(blocks, compare, levels);
  const seen = rankedLevels(levelsSeen(patches, compare, levels), rows);
  const more = moreBlocks(layout, pairs, matters, multiplier);
  const moreNeeded: MoreNeeded = {
    jars: more === 0 ? 0 : null,
    boards: blocks.of === "board" || more === 0 ? more : null,
  };
  return {
    about: aboutOrdered(layout, patches.length),
    pairs,
    method: {
      name: "score interval for paired shares with Tukey's multiplier, widened for jars or planks; Friedman's test beside it",
      terms: [`blocks: ${blocks.of}s`, compare],
      errorTerm: blocks.of,
      errorMeanSquare: null,
      multiplier,
      confidence: 0.95,
      variances: [],
    },
    degreesOfFreedom: levels.length - 1,
    letters: lettersOf(
      [...seen].sort((a, b) => b.mean - a.mean).map((s) => s.level),
      pairs,
    ),
    moreNeeded,
    levels: seen,
    wobble,
    noise: null,
    remarks: [],
    pValue: () =>
      sharesPValue(
        pairs.map((p) => pairShares(blocks, compare, p.a, p.b)),
        levels.length,
      ),
    overall: overallTest(rows),
  };
}

/** Of no difference at all: that of the pair that stands farthest apart, by the score that its interval inverts. */
function sharesPValue(shares: readonly PairShares[], levels: number): number {
  const scores = shares.map(({ above, below }) =>
    above + below === 0 ? 0 : Math.abs(above - below) / Math.sqrt(above + below),
  );
  return 1 - studentizedRangeCdf(Math.max(...scores) * Math.SQRT2, levels, Number.POSITIVE_INFINITY);
}

/** Judges who all looked at one patch of each level say something of those patches only. */
function aboutOrdered({ blocks, units, compare, levels }: Layout, patches: number): string {
  const about = aboutWhat(compare, units);
  return about === compare && blocks.of === "judge" && patches === levels.length ? "these patches" : about;
}
