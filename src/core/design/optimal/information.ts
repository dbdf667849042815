/** A model row: the columns of one run. */
export type ModelRow = Float64Array;

/** What a start lacks is lent, by so much of an average column; it is out of the determinant that is reported. */
const lent = 1e-7;

const get = (a: Float64Array, i: number): number => a[i] as number;

/**
 * What some runs tell about p columns: the inverse D of X′X (with a trace lent to every column, so that a poor start
 * can be bettered), kept up to date while runs are exchanged.
 *
 *     det after exchanging x for z, over det before = (1 + z′Dz)(1 − x′Dx) + (x′Dz)²
 *
 * Valid:  any rows of one length
 * Source: V. V. Fedorov, Theory of Optimal Experiments (1972), 3.2
 */
export class Information {
  readonly size: number;
  /** D, p×p row by row. */
  readonly inverse: Float64Array;
  constructor(rows: readonly ModelRow[], size: number) {
    this.size = size;
    const square = rows.reduce((sum, x) => sum + dot(x, x), 0);
    this.inverse = invert(crossProduct(rows, size, (lent * square) / size), size);
  }
  /** D·x. */
  times(x: ModelRow): Float64Array {
    const { size: p, inverse } = this;
    const out = new Float64Array(p);
    for (let i = 0; i < p; i++) {
      let sum = 0;
      const at = i * p;
      for (let j = 0; j < p; j++) sum += get(inverse, at + j) * get(x, j);
      out[i] = sum;
    }
    return out;
  }
  /** Takes in one run more: D − D x x′D/(1 + x′Dx). */
  add(x: ModelRow): void {
    this.turn(x, 1);
  }
  /** Leaves one run out. */
  remove(x: ModelRow): void {
    this.turn(x, -1);
  }
  private turn(x: ModelRow, sign: 1 | -1): void {
    const { size: p, inverse } = this;
    const along = this.times(x);
    const scale = sign / (1 + sign * dot(x, along));
    for (let i = 0; i < p; i++) {
      const by = scale * get(along, i);
      const at = i * p;
      for (let j = 0; j < p; j++) inverse[at + j] = get(inverse, at + j) - by * get(along, j);
    }
  }
}

/** The inner product of two rows. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += get(a, i) * get(b, i);
  return sum;
}

/** X′X + ε·I, row by row. */
function crossProduct(rows: readonly ModelRow[], p: number, epsilon: number): Float64Array {
  const m = new Float64Array(p * p);
  for (const x of rows)
    for (let i = 0; i < p; i++)
      for (let j = 0; j < p; j++) m[i * p + j] = get(m, i * p + j) + get(x, i) * get(x, j);
  for (let i = 0; i < p; i++) m[i * p + i] = get(m, i * p + i) + epsilon;
  return m;
}

/** The inverse of a positive definite matrix by Gauss and Jordan, in place of a copy. */
function invert(matrix: Float64Array, p: number): Float64Array {
  const m = Float64Array.from(matrix);
  for (let k = 0; k < p; k++) {
    const pivot = 1 / get(m, k * p + k);
    m[k * p + k] = 1;
    for (let j = 0; j < p; j++) m[k * p + j] = get(m, k * p + j) * pivot;
    for (let i = 0; i < p; i++) {
      if (i === k) continue;
      const by = get(m, i * p + k);
      m[i * p + k] = 0;
      for (let j = 0; j < p; j++) m[i * p + j] = get(m, i * p + j) - by * get(m, k * p + j);
    }
  }
  return m;
}

/**
 * ln det X′X, by elimination with the largest pivot; −∞ where the columns do not stand apart.
 *
 * @param rows    n model rows of p columns, each with a weight of 1 unless told
 * @returns       scalar
 */
export function logDeterminant(rows: readonly ModelRow[], weights?: readonly number[]): number {
  const p = rows[0]?.length ?? 0;
  const scaled = rows.map((x, i) => x.map((value) => value * Math.sqrt(weights?.[i] ?? 1)));
  const m = crossProduct(scaled, p, 0);
  const largest = Math.max(...m);
  const left = Array.from({ length: p }, (_, i) => i);
  let log = 0;
  while (left.length > 0) {
    const k = left.reduce((a, b) => (get(m, b * p + b) > get(m, a * p + a) ? b : a));
    const pivot = get(m, k * p + k);
    if (!(pivot > 1e-12 * largest)) return Number.NEGATIVE_INFINITY;
    log += Math.log(pivot);
    left.splice(left.indexOf(k), 1);
    for (const i of left) {
      const by = get(m, i * p + k) / pivot;
      for (const j of left) m[i * p + j] = get(m, i * p + j) - by * get(m, k * p + j);
    }
  }
  return log;
}
