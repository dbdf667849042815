import { at, entry, type Vector } from "./vector.ts";

/** The sum of products of the first `size` entries. Typed arrays alone: this is the inner loop of every fit. */
export const dot = (a: Float64Array, b: Float64Array, size: number): number => {
  let total = 0;
  for (let k = 0; k < size; k++) total += (a[k] as number) * (b[k] as number); // within both
  return total;
};

/**
 * The lower triangle L with A = LLᵀ of a matrix that is positive definite but for rounding; row i has i + 1 entries.
 *
 * @param a  p×p, symmetric; only its lower half is read
 *
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations (2013), 4.2
 */
export function lowerTriangle(a: readonly Float64Array[]): Float64Array[] {
  const l: Float64Array[] = [];
  a.forEach((given, i) => {
    const row = new Float64Array(i + 1);
    l.push(row);
    for (let j = 0; j <= i; j++) {
      const other = l[j] as Float64Array; // rows up to i are there
      const rest = entry(given, j) - dot(row, other, j);
      row[j] = j < i ? rest / entry(other, j) : Math.sqrt(Math.max(rest, Number.MIN_VALUE));
    }
  });
  return l;
}

/** Solves L x = b from the first row down, for as many rows as b has entries. */
export function solveLower(l: readonly Float64Array[], b: Vector): Float64Array {
  const x = Float64Array.from(b);
  for (let i = 0; i < x.length; i++) {
    const row = l[i] as Float64Array; // L has at least as many rows as b entries
    x[i] = (at(x, i) - dot(row, x, i)) / at(row, i);
  }
  return x;
}

/** Solves Lᵀ x = b from the last row up. */
export function solveTransposed(l: readonly Float64Array[], b: Vector): Float64Array {
  const x = Float64Array.from(b);
  for (let i = x.length - 1; i >= 0; i--) {
    const row = l[i] as Float64Array;
    x[i] = at(x, i) / at(row, i);
    for (let k = 0; k < i; k++) x[k] = at(x, k) - at(row, k) * at(x, i);
  }
  return x;
}
