import { DomainError } from "../../domain-error.ts";
import { mean, sum } from "../numeric/vector.ts";
import { midRanks } from "../ranks/ranks.ts";
import type { Unit } from "./experimental-unit.ts";
import { groupedBy, type PatchMean, type Reading } from "./readings.ts";
import type { DealtUnit } from "./stratified-permutation.ts";

/** Readings that one judge made of one board, or of all boards where boards carry one level each: only these are held against each other. */
type Sitting = readonly Reading[];

export interface Blocks {
  readonly of: "board" | "judge";
  /** Sittings by block. */
  readonly blocks: readonly (readonly Sitting[])[];
}

const levelIn = (reading: Reading, compare: string): string => reading.factors[compare] ?? "";

const holdsSeveral = (sitting: Sitting, compare: string): boolean =>
  new Set(sitting.map((r) => levelIn(r, compare))).size > 1;

/**
 * Boards are the blocks where two or more of them carry several levels; otherwise judges are, each holding what lies
 * on one board against another unless ranks were given board by board.
 */
export function blocksOf(readings: readonly Reading[], compare: string, rankedWithinBoards: boolean): Blocks {
  const ofOneBoard = (r: Reading): string => JSON.stringify([r.board ?? null, r.judge ?? null]);
  // Where a board holds one patch, it is boards that were ranked.
  const severalOnABoard = groupedBy(readings, ofOneBoard).some((sitting) => sitting.length > 1);
  for (const of of ["board", "judge"] as const) {
    const apart = of === "board" || (rankedWithinBoards && severalOnABoard);
    const sittingOf = (r: Reading): string => (apart ? ofOneBoard(r) : JSON.stringify(r.judge ?? null));
    const blocks = groupedBy(readings, (r) => r[of] ?? "")
      .map((block) => groupedBy(block, sittingOf).filter((s) => holdsSeveral(s, compare)))
      .filter((sittings) => sittings.length > 0);
    if (blocks.length >= 2) return { of, blocks };
  }
  throw new DomainError({
    code: "not-enough-data",
    field: "rows.block",
    value: new Set(readings.map((r) => r.board ?? "")).size,
    limits: { min: 2 },
    because: `Two or more boards (or judges) that each saw several levels of ${compare} would do.`,
  });
}

/** Of the pairs of readings in one sitting, the shares in which level a stands above and below level b. */
function sharesIn(sitting: Sitting, compare: string, a: string, b: string): [number, number] | undefined {
  const of = (level: string): number[] =>
    sitting.flatMap((r) => (levelIn(r, compare) === level ? [r.value] : []));
  const [as, bs] = [of(a), of(b)];
  let [above, below] = [0, 0];
  for (const x of as)
    for (const y of bs) {
      if (x > y) above++;
      else if (x < y) below++;
    }
  const pairs = as.length * bs.length;
  return pairs === 0 ? undefined : [above / pairs, below / pairs];
}

const meanShares = (shares: readonly (readonly [number, number])[]): [number, number] => [
  mean(shares.map((s) => s[0])),
  mean(shares.map((s) => s[1])),
];

export interface PairShares {
  readonly above: number;
  readonly below: number;
  readonly blocks: number;
}

/** Of the blocks in which both levels were judged, in how many each stood above the other; a block of several sittings counts their mean. */
export function pairShares({ blocks }: Blocks, compare: string, a: string, b: string): PairShares {
  const seen = blocks.flatMap((sittings) => {
    const shares = sittings.flatMap((s) => {
      const found = sharesIn(s, compare, a, b);
      return found === undefined ? [] : [found];
    });
    return shares.length === 0 ? [] : [meanShares(shares)];
  });
  return { above: sum(seen.map((s) => s[0])), below: sum(seen.map((s) => s[1])), blocks: seen.length };
}

/** Half of how often each patch stands above less below the other level's patches in its sittings, as one value a patch. */
export function placements({ blocks }: Blocks, compare: string, a: string, b: string): PatchMean[] {
  const scores = blocks.flat().flatMap((sitting) =>
    sitting
      .filter((r) => [a, b].includes(levelIn(r, compare)))
      .flatMap((r) => {
        const rivals = sitting.filter((x) => levelIn(x, compare) === (levelIn(r, compare) === a ? b : a));
        if (rivals.length === 0) return [];
        return [{ ...r, value: mean(rivals.map((x) => Math.sign(r.value - x.value))) / 2 }];
      }),
  );
  return groupedBy(scores, (r) => r.patch).map((group) => {
    const { patch, jar, plank, board, factors } = group[0] as Reading; // a group holds what made it
    return {
      patch,
      jar,
      plank,
      board,
      factors: { [compare]: factors[compare] ?? "" },
      value: mean(group.map((r) => r.value)),
    };
  });
}

/** One row a block: the mean rank of each level in it, null where it was not seen. */
export function levelRanks(
  { blocks }: Blocks,
  compare: string,
  levels: readonly string[],
): (number | null)[][] {
  return blocks.map((sittings) => {
    const ranked = sittings.flatMap((sitting) => {
      const ranks = midRanks(sitting.map((r) => r.value));
      return sitting.map((r, i) => ({
        level: levelIn(r, compare),
        rank: (ranks[i] as number) / sitting.length,
      }));
    });
    return levels.map((level) => {
      const mine = ranked.filter((r) => r.level === level);
      // Rounded, so that means of the same ranks in another order stay ties.
      return mine.length === 0 ? null : Math.round(mean(mine.map((r) => r.rank)) * 1e9) / 1e9;
    });
  });
}

/**
 * What levels may be dealt anew among: jars (planks, boards) where each level has several, over all blocks; else
 * patches within their block. Scores are ranks within a sitting about their middle.
 */
export function dealtUnits({ of, blocks }: Blocks, compare: string, unit: Unit | null): DealtUnit[] {
  const scored = blocks.flatMap((sittings) =>
    sittings.flatMap((sitting) => {
      const ranks = midRanks(sitting.map((r) => r.value));
      return sitting.map((r, i) => ({ r, score: (ranks[i] as number) - (sitting.length + 1) / 2 }));
    }),
  );
  const place = (r: Reading): string =>
    unit === null ? JSON.stringify([r[of] ?? "", r.patch]) : (r[unit.place] ?? "");
  return groupedBy(scored, ({ r }) => place(r)).map((group) => {
    const { r } = group[0] as (typeof scored)[number]; // a group holds what made it
    return {
      stratum: unit === null ? (r[of] ?? "") : "",
      level: levelIn(r, compare),
      total: sum(group.map((g) => g.score)),
      count: group.length,
    };
  });
}
