import { DomainError } from "../../domain-error.ts";
import { chiSquareTails } from "../distribution/chi-square.ts";
import { fTails } from "../distribution/f-distribution.ts";
import { normalQuantile } from "../distribution/normal.ts";
import { studentTUpperQuantile } from "../distribution/student-t.ts";
import { sum } from "../numeric/vector.ts";
import { columnSums, midRanks } from "./ranks.ts";

export interface FriedmanTest {
  readonly method: "Friedman, corrected for ties";
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  readonly rankSums: readonly number[];
  /** Agreement of the blocks, from 0 to 1. */
  readonly kendallW: number;
  /** The statistic as it would be without ties. */
  readonly uncorrected: number;
  /** Conover's F of the ranks; infinite when all blocks agree. */
  readonly f: {
    readonly statistic: number;
    readonly degreesOfFreedom: readonly [number, number];
    readonly pValue: number;
  };
  /** Least significant difference of two rank sums by Conover's t, 5 %, for one pair. */
  readonly conoverLsd: number;
}

/**
 * Least significant difference of two rank sums, 5 %, for one pair, by the normal distribution.
 *
 *     z √(b k (k + 1)/6)
 *
 * @param blocks      b, scalar
 * @param treatments  k, scalar
 * @returns           scalar
 *
 * Valid:  no ties
 * Source: ISO 8587:2006, clause 8
 * @example
 * rankSumLsdIso8587(8, 5) // => 12.3959006
 */
export const rankSumLsdIso8587 = (blocks: number, treatments: number): number =>
  normalQuantile(0.975) * Math.sqrt((blocks * treatments * (treatments + 1)) / 6);

/**
 * Friedman's statistic from rank sums alone, where there are no ties.
 *
 *     12/(b k (k + 1)) Σ Rⱼ² − 3 b (k + 1)
 *
 * @param rankSums  k numbers
 * @param blocks    b, scalar
 * @returns         scalar
 *
 * Valid:  no ties
 * Source: M. Friedman, J. Am. Statist. Assoc. 32 (1937) 675; ISO 8587:2006, clause 8
 * @example
 * friedmanStatistic([17, 31, 32, 23, 17], 8) // => 10.6
 */
export function friedmanStatistic(rankSums: readonly number[], blocks: number): number {
  const k = rankSums.length;
  return (12 / (blocks * k * (k + 1))) * sum(rankSums.map((r) => r * r)) - 3 * blocks * (k + 1);
}

/**
 * Friedman's test of several treatments in complete blocks, corrected for ties, with Conover's F.
 *
 *     χ² = (k − 1) Σ (Rⱼ − b(k + 1)/2)² / (ΣΣ rᵢⱼ² − b k (k + 1)²/4)
 *     F  = (b − 1) χ² / (b(k − 1) − χ²)
 *
 * @param rows  b blocks of k values
 * @returns     statistic, p-value, rank sums, least significant differences
 * @throws DomainError for fewer than two blocks or treatments, rows of unequal length, and values that are all equal
 *         within every block
 *
 * Valid:    b ≥ 2, k ≥ 2; the chi-square p-value is an approximation for few blocks
 * Accuracy: 1e-10 relative
 * Source:   W. J. Conover, Practical Nonparametric Statistics (1999), 5.8
 */
export function friedmanTest(rows: readonly (readonly number[])[]): FriedmanTest {
  const b = rows.length;
  const k = rows[0]?.length ?? 0;
  if (b < 2 || k < 2 || rows.some((row) => row.length !== k))
    throw new DomainError({ code: "not-enough-data", field: "rows", value: b, limits: { min: 2 } });
  const ranks = rows.map(midRanks);
  const rankSums = columnSums(ranks);
  const squares = sum(ranks.flatMap((row) => row.map((r) => r * r)));
  const spread = squares - (b * k * (k + 1) ** 2) / 4;
  if (!(spread > 0)) throw new DomainError({ code: "no-variation", field: "rows", value: null });
  const statistic = ((k - 1) * sum(rankSums.map((r) => (r - (b * (k + 1)) / 2) ** 2))) / spread;
  const freedom = (b - 1) * (k - 1);
  const left = b * (k - 1) - statistic;
  const f = left > 1e-12 * b * k ? ((b - 1) * statistic) / left : Number.POSITIVE_INFINITY;
  const within = Math.max(0, squares - sum(rankSums.map((r) => r * r)) / b);
  return {
    method: "Friedman, corrected for ties",
    statistic,
    degreesOfFreedom: k - 1,
    pValue: chiSquareTails(statistic, k - 1).upper,
    rankSums,
    kendallW: statistic / (b * (k - 1)),
    uncorrected: friedmanStatistic(rankSums, b),
    f: { statistic: f, degreesOfFreedom: [k - 1, freedom], pValue: fTails(f, k - 1, freedom).upper },
    conoverLsd: studentTUpperQuantile(0.025, freedom) * Math.sqrt((2 * b * within) / freedom),
  };
}
