/** Row-major n×n. */
export interface Factors {
  readonly lu: Float64Array;
  readonly order: Int32Array;
}

/**
 * Room for the factors of an n×n matrix.
 *
 * Valid:    any n
 * Source:   common practice
 */
export const factorsOf = (n: number): Factors => ({ lu: new Float64Array(n * n), order: new Int32Array(n) });

const at = (x: Float64Array, i: number): number => x[i] as number; // inside the array's own length

function pivotRow(a: Float64Array, n: number, column: number): number {
  let best = column;
  for (let r = column + 1; r < n; r++)
    if (Math.abs(at(a, r * n + column)) > Math.abs(at(a, best * n + column))) best = r;
  return best;
}

function swapRows(a: Float64Array, n: number, r: number, s: number): void {
  for (let k = 0; k < n; k++) {
    const kept = at(a, r * n + k);
    a[r * n + k] = at(a, s * n + k);
    a[s * n + k] = kept;
  }
}

/**
 * Factors the matrix in `factors.lu` in place, with partial pivoting. It is small and mostly empty below the film's own
 * rows, so a row that has nothing in the column is passed over.
 *
 * Valid:    any square matrix that is not singular; a singular one gives infinities, which the step control refuses
 * Source:   Gaussian elimination, common practice
 */
export function factorInPlace({ lu, order }: Factors): void {
  const n = order.length;
  for (let c = 0; c < n; c++) {
    const pivot = pivotRow(lu, n, c);
    order[c] = pivot;
    if (pivot !== c) swapRows(lu, n, pivot, c);
    const diagonal = at(lu, c * n + c);
    for (let r = c + 1; r < n; r++) {
      const entry = at(lu, r * n + c);
      if (entry === 0) continue;
      const factor = entry / diagonal;
      lu[r * n + c] = factor;
      for (let k = c + 1; k < n; k++) lu[r * n + k] = at(lu, r * n + k) - factor * at(lu, c * n + k);
    }
  }
}

/**
 * Solves for one right-hand side, in place.
 *
 * Valid:    factors of a matrix that is not singular
 * Source:   forward and backward substitution, common practice
 */
export function solveInPlace({ lu, order }: Factors, b: Float64Array): void {
  const n = order.length;
  // Rows were swapped whole, so all the swaps come before the elimination.
  for (let c = 0; c < n; c++) {
    const pivot = order[c] as number;
    if (pivot === c) continue;
    const kept = at(b, c);
    b[c] = at(b, pivot);
    b[pivot] = kept;
  }
  for (let r = 1; r < n; r++) {
    let sum = at(b, r);
    for (let k = 0; k < r; k++) sum -= at(lu, r * n + k) * at(b, k);
    b[r] = sum;
  }
  for (let r = n - 1; r >= 0; r--) {
    let sum = at(b, r);
    for (let k = r + 1; k < n; k++) sum -= at(lu, r * n + k) * at(b, k);
    b[r] = sum / at(lu, r * n + r);
  }
}
