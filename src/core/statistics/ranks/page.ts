import { DomainError, inRange } from "../../domain-error.ts";
import { normalCdf } from "../distribution/normal.ts";
import { at, sum } from "../numeric/vector.ts";
import { columnSums, midRanks } from "./ranks.ts";

export interface PageTest {
  readonly method: "Page";
  /** L = Σ j Rⱼ. */
  readonly statistic: number;
  readonly mean: number;
  readonly standardDeviation: number;
  readonly z: number;
  readonly pValueNormal: number;
  /** Exact, where there are no ties and the work is small enough; null otherwise. */
  readonly pValueExact: number | null;
}

/** The shares of each Σ j rⱼ over all orders of k things, by place of the sum. */
function blockShares(k: number): Float64Array {
  const greatest = (k * (k + 1) * (2 * k + 1)) / 6;
  // By the set of ranks used so far, as bits: the number of used ranks says which place comes next.
  let sets = new Map<number, Map<number, number>>([[0, new Map([[0, 1]])]]);
  for (let place = 1; place <= k; place++) {
    const next = new Map<number, Map<number, number>>();
    for (const [used, sums] of sets) {
      for (let rank = 1; rank <= k; rank++) {
        const bit = 1 << (rank - 1);
        if ((used & bit) !== 0) continue;
        const target = next.get(used | bit) ?? new Map<number, number>();
        for (const [s, share] of sums)
          target.set(s + place * rank, (target.get(s + place * rank) ?? 0) + share / (k - place + 1));
        next.set(used | bit, target);
      }
    }
    sets = next;
  }
  const shares = new Float64Array(greatest + 1);
  for (const [s, share] of sets.get((1 << k) - 1) ?? []) shares[s] = share;
  return shares;
}

/**
 * The exact null distribution of Page's L without ties, as the probability of each whole L from 0.
 *
 * @param treatments  k, scalar
 * @param blocks      b, scalar
 * @returns           probabilities of L = 0, 1, 2, …
 * @throws DomainError outside the valid range
 *
 * Valid:    k from 2 to 10, b from 1 to 60
 * Accuracy: 1e-12 relative
 * Source:   E. B. Page, J. Am. Statist. Assoc. 58 (1963) 216
 */
export function pageNullDistribution(treatments: number, blocks: number): Float64Array {
  inRange("treatments", treatments, { min: 2, max: 10 });
  inRange("blocks", blocks, { min: 1, max: 60 });
  const one = blockShares(treatments);
  let total: Float64Array = one;
  for (let block = 1; block < blocks; block++) {
    const next = new Float64Array(total.length + one.length - 1);
    total.forEach((p, i) => {
      if (p > 0)
        one.forEach((q, j) => {
          next[i + j] = at(next, i + j) + p * q;
        });
    });
    total = next;
  }
  return total;
}

/** P(L ≥ l): summed from the far end, least first. */
export const pageExactUpper = (distribution: Float64Array, l: number): number =>
  sum(distribution.slice(Math.ceil(l - 1e-9)).toReversed());

/** The smallest L whose exact upper tail is at most alpha. */
export function pageExactCritical(distribution: Float64Array, alpha: number): number {
  let tail = 0;
  let l = distribution.length;
  while (l > 0 && tail + at(distribution, l - 1) <= alpha * (1 + 1e-12)) {
    l -= 1;
    tail += at(distribution, l);
  }
  return l;
}

/**
 * Page's test that the treatments rise in the order given.
 *
 *     L = Σ j Rⱼ,   mean = b k (k + 1)²/4,   variance = b k² (k + 1) (k² − 1)/144
 *
 * @param rows  b blocks of k values, the treatments in the order claimed from low to high
 * @returns     L with its normal and, without ties, its exact p-value
 * @throws DomainError for fewer than one block or two treatments, and rows of unequal length
 *
 * Valid:    the normal p-value carries no tie correction
 * Accuracy: 1e-10 relative
 * Source:   E. B. Page, J. Am. Statist. Assoc. 58 (1963) 216; S. Siegel and N. J. Castellan, Nonparametric
 *           Statistics (1988), 7.3
 */
export function pageTest(rows: readonly (readonly number[])[]): PageTest {
  const b = rows.length;
  const k = rows[0]?.length ?? 0;
  if (b < 1 || k < 2 || rows.some((row) => row.length !== k))
    throw new DomainError({ code: "not-enough-data", field: "rows", value: b });
  const ranks = rows.map(midRanks);
  const statistic = sum(columnSums(ranks).map((r, j) => (j + 1) * r));
  const mean = (b * k * (k + 1) ** 2) / 4;
  const standardDeviation = Math.sqrt((b * k ** 2 * (k + 1) * (k ** 2 - 1)) / 144);
  const z = (statistic - mean) / standardDeviation;
  const exact = k <= 10 && b <= 60 && ranks.every((row) => row.every((r) => Number.isInteger(r)));
  return {
    method: "Page",
    statistic,
    mean,
    standardDeviation,
    z,
    pValueNormal: normalCdf(-z),
    pValueExact: exact ? pageExactUpper(pageNullDistribution(k, b), statistic) : null,
  };
}
