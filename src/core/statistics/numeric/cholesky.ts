import { at, type Vector } from "./vector.ts";

/** Solves with a symmetric positive definite matrix. */
export interface PositiveDefinite {
  readonly solve: (b: Vector) => Float64Array;
  readonly inverse: () => Float64Array[];
}

/**
 * The Cholesky factor of a symmetric matrix, scaled to a unit diagonal first so that units do not matter.
 *
 * @param matrix  p×p, symmetric
 * @returns       how to solve with it, or undefined where it is not positive definite
 *
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations (2013), 4.2
 */
export function cholesky(matrix: readonly Vector[]): PositiveDefinite | undefined {
  const p = matrix.length;
  const entry = (i: number, j: number): number => at(matrix[i] as Vector, j); // i counts the rows
  const scale = matrix.map((_, i) => 1 / Math.sqrt(entry(i, i)));
  const l: Float64Array[] = [];
  for (let i = 0; i < p; i++) {
    const row = new Float64Array(p);
    for (let j = 0; j <= i; j++) {
      const other = j === i ? row : (l[j] as Float64Array);
      let rest = entry(i, j) * at(scale, i) * at(scale, j);
      for (let k = 0; k < j; k++) rest -= at(row, k) * at(other, k);
      if (j < i) row[j] = rest / at(other, j);
      else if (rest > 1e-14) row[j] = Math.sqrt(rest);
      else return undefined;
    }
    l.push(row);
  }
  const solve = (b: Vector): Float64Array => {
    const x = Float64Array.from({ length: p }, (_, i) => at(b, i) * at(scale, i));
    l.forEach((row, i) => {
      for (let k = 0; k < i; k++) x[i] = at(x, i) - at(row, k) * at(x, k);
      x[i] = at(x, i) / at(row, i);
    });
    for (let i = p - 1; i >= 0; i--) {
      for (let k = i + 1; k < p; k++) x[i] = at(x, i) - at(l[k] as Float64Array, i) * at(x, k);
      x[i] = at(x, i) / at(l[i] as Float64Array, i);
    }
    return x.map((v, i) => v * at(scale, i));
  };
  return {
    solve,
    inverse: () => matrix.map((_, i) => solve(matrix.map((__, j) => (i === j ? 1 : 0)))),
  };
}
