import { DomainError } from "../../domain-error.ts";
import { finiteField, primePowers } from "./finite-field.ts";

/** Runs by things that vary, −1 and +1. */
export type TwoLevels = readonly (readonly number[])[];

/**
 * A screen for N − 1 things in N runs from its first row: the row is shifted again and again, and a row of minus
 * signs comes last.
 *
 * @param firstRow  N − 1 levels, −1 or +1
 * @returns         N×(N − 1)
 *
 * Source: R. L. Plackett and J. P. Burman, Biometrika 33 (1946) 305
 * @example
 * screenFromRow([1, 1, -1]).length // => 4
 */
export function screenFromRow(firstRow: readonly number[]): TwoLevels {
  const n = firstRow.length;
  const shifted = firstRow.map((_, by) => firstRow.map((_, i) => firstRow[(i - by + n) % n] as number));
  return [...shifted, firstRow.map(() => -1)];
}

/** Whether all columns are balanced and every two of them are so against each other: X′X = N·I, with the mean. */
export function isOrthogonal(runs: TwoLevels): boolean {
  const columns = [runs.map(() => 1), ...(runs[0] ?? []).map((_, c) => runs.map((row) => row[c] as number))];
  return columns.every((a, i) =>
    columns.slice(i + 1).every((b) => a.reduce((sum, x, r) => sum + x * (b[r] as number), 0) === 0),
  );
}

/** 1 for squares of a field, −1 for the others, 0 for nothing. */
function squareSigns(q: number): {
  readonly sign: (x: number) => number;
  readonly minus: (a: number, b: number) => number;
} {
  const { add, multiply } = finiteField(q);
  const points = Array.from({ length: q }, (_, x) => x);
  const squares = new Set(points.slice(1).map((x) => multiply(x, x)));
  const opposite = points.map((a) => points.find((b) => add(a, b) === 0) as number);
  return {
    sign: (x) => (x === 0 ? 0 : squares.has(x) ? 1 : -1),
    minus: (a, b) => add(a, opposite[b] as number),
  };
}

/** A matrix of ±1 of order N whose rows all stand at right angles, by fields and by doubling; null where neither does. */
function hadamard(n: number): number[][] | null {
  if (n === 1) return [[1]];
  if (n === 2)
    return [
      [1, 1],
      [1, -1],
    ];
  const isPower = (q: number) => q > 2 && q <= 256 && primePowers(q).length === 1;
  const lines = (q: number) => Array.from({ length: q + 1 }, (_, i) => i - 1);
  if (isPower(n - 1) && (n - 1) % 4 === 3) {
    const { sign, minus } = squareSigns(n - 1);
    return lines(n - 1).map((r) =>
      lines(n - 1).map((c) =>
        r < 0 || c < 0 ? (c < 0 && r >= 0 ? -1 : 1) : r === c ? 1 : sign(minus(r, c)),
      ),
    );
  }
  const half = n / 2;
  if (half % 4 === 2 && isPower(half - 1) && (half - 1) % 4 === 1) {
    const { sign, minus } = squareSigns(half - 1);
    const conference = lines(half - 1).map((r) =>
      lines(half - 1).map((c) => (r < 0 || c < 0 ? (r === c ? 0 : 1) : sign(minus(r, c)))),
    );
    const join = (by: (c: number, same: boolean) => number) =>
      conference.map((row, r) => row.map((x, c) => by(x, r === c)));
    const sum = join((x, same) => x + (same ? 1 : 0));
    const difference = join((x, same) => x - (same ? 1 : 0));
    return [
      ...sum.map((row, r) => [...row, ...(difference[r] as number[])]),
      ...difference.map((row, r) => [...row, ...(sum[r] as number[]).map((x) => -x)]),
    ];
  }
  const smaller = n % 4 === 0 ? hadamard(half) : null;
  return smaller === null
    ? null
    : [...smaller.map((row) => [...row, ...row]), ...smaller.map((row) => [...row, ...row.map((x) => -x)])];
}

/** The fewest runs, a multiple of 4, in which so many things can be screened. */
export const screenRunsFor = (factors: number): number => 4 * Math.ceil((factors + 1) / 4);

function nextScreen(runs: number): number {
  let next = 4 * Math.ceil(Math.max(runs, 4) / 4);
  while (hadamard(next) === null) next += 4;
  return next;
}

/**
 * A screen: N − 1 things at two levels in N runs, each told apart from every other alone, none from pairs of others.
 *
 * @param runs  a multiple of 4, scalar
 * @returns     N×(N − 1), balanced and orthogonal
 * @throws DomainError for runs that are no multiple of 4, and for those that neither a field nor doubling gives
 *
 * Valid:    multiples of 4 up to 88
 * Accuracy: exact
 * Source:   R. E. A. C. Paley, J. Math. Phys. 12 (1933) 311; Plackett and Burman (1946)
 */
export function screenOf(runs: number): TwoLevels {
  const square = runs >= 4 && runs % 4 === 0 ? hadamard(runs) : null;
  if (square === null)
    throw new DomainError({
      code: "out-of-range",
      field: "runs",
      value: runs,
      because: `A screen takes a multiple of 4 runs that Lacbench can make; ${nextScreen(runs)} would do.`,
    });
  // every row is turned so that its first entry is +: that column is the mean
  return square.map((row) => row.slice(1).map((x) => x * (row[0] as number)));
}
