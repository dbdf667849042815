import { inRange } from "../../domain-error.ts";
import { friedmanStatistic } from "./friedman.ts";

function permutations(n: number): number[][] {
  if (n === 0) return [[]];
  return permutations(n - 1).flatMap((p) =>
    Array.from({ length: n }, (_, at) => [...p.slice(0, at), n, ...p.slice(at)]),
  );
}

/** Counts of each set of rank sums, whichever treatment has which, after `blocks` blocks. */
function rankSumCounts(treatments: number, blocks: number): Map<string, number> {
  const orders = permutations(treatments);
  let counts = new Map([[Array.from({ length: treatments }, () => 0).join(), 1]]);
  for (let block = 0; block < blocks; block++) {
    const next = new Map<string, number>();
    for (const [key, share] of counts) {
      const sums = key.split(",").map(Number);
      for (const order of orders) {
        const moved = sums
          .map((s, j) => s + (order[j] as number)) // an order is as long as the sums
          .sort((a, b) => a - b)
          .join();
        next.set(moved, (next.get(moved) ?? 0) + share / orders.length);
      }
    }
    counts = next;
  }
  return counts;
}

/**
 * The exact probability of a Friedman statistic as large, when all orders within a block are equally likely.
 *
 * @param treatments  k, scalar
 * @param blocks      b, scalar
 * @param statistic   scalar
 * @returns           probability, scalar
 * @throws DomainError outside the valid range
 *
 * Valid:    no ties; k from 2 to 6, b from 1 to 15 (the work grows quickly with both)
 * Accuracy: 1e-12 relative
 * Source:   M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods (1999), 7.1, table A.22
 * @example
 * friedmanExactUpper(3, 4, 8) // => 0.00463
 */
export function friedmanExactUpper(treatments: number, blocks: number, statistic: number): number {
  inRange("treatments", treatments, { min: 2, max: 6 });
  inRange("blocks", blocks, { min: 1, max: 15 });
  let total = 0;
  for (const [key, share] of rankSumCounts(treatments, blocks)) {
    if (friedmanStatistic(key.split(",").map(Number), blocks) >= statistic - 1e-6) total += share;
  }
  return total;
}
