import { at } from "../numeric/vector.ts";

/**
 * Ranks from 1 for the least; equal values share the mean of the ranks that they take up.
 *
 * Source: M. G. Kendall, Biometrika 33 (1945) 239, on ties
 * @example
 * midRanks([10, 30, 10])[0] // => 1.5
 */
export function midRanks(values: readonly number[]): number[] {
  return values.map((x) => {
    const below = values.filter((y) => y < x).length;
    const same = values.filter((y) => y === x).length;
    return below + (same + 1) / 2;
  });
}

/** Column sums of a table with rows of equal length. */
export const columnSums = (rows: readonly (readonly number[])[]): number[] =>
  (rows[0] ?? []).map((_, j) => rows.reduce((total, row) => total + at(row, j), 0));
