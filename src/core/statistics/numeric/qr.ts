import { at, entry, type Vector } from "./vector.ts";

/** A column counts as a combination of those before it when less than this share of its length is left over. */
const negligible = 1e-7;

export interface Qr {
  /** Places of the columns that were kept, in their own order; the others are combinations of earlier ones. */
  readonly kept: readonly number[];
  /** Qᵀy: one number for each kept column, then what is left over. */
  readonly rotate: (y: Vector) => Float64Array;
  /** Qx, undoing `rotate`. */
  readonly rotateBack: (x: Vector) => Float64Array;
  /** Upper triangle: `r[j]` holds the first j + 1 entries of kept column j. */
  readonly r: readonly Float64Array[];
}

interface Reflector {
  readonly from: number;
  readonly v: Float64Array;
}

function reflect(x: Float64Array, { from, v }: Reflector): void {
  let product = 0;
  for (let i = from; i < x.length; i++) product += entry(v, i - from) * entry(x, i);
  for (let i = from; i < x.length; i++) x[i] = entry(x, i) - 2 * product * entry(v, i - from);
}

const lengthFrom = (x: Float64Array, from: number): number => {
  let squares = 0;
  for (let i = from; i < x.length; i++) squares += entry(x, i) ** 2;
  return Math.sqrt(squares);
};

/** The reflector that folds `x`, from place `from` on, onto one axis. */
function reflectorOf(x: Float64Array, from: number): Reflector {
  const v = x.slice(from);
  v[0] = at(v, 0) + (at(v, 0) < 0 ? -1 : 1) * lengthFrom(v, 0);
  const length = lengthFrom(v, 0);
  return { from, v: v.map((a) => a / length) };
}

/**
 * Householder QR of columns in the order given. The order is kept because sequential sums of squares depend on it:
 * a column that adds nothing to those before it is left out, which is how effects that cannot be told apart show.
 *
 * @param columns  p columns of n numbers
 * @param lengths  what "nothing" is measured against, one a column; their own lengths unless told
 * @returns        {kept, rotate, rotateBack, r}; the rank is `kept.length`
 *
 * Source: G. H. Golub and C. F. Van Loan, Matrix Computations (2013), 5.2
 */
export function householderQr(
  columns: readonly Vector[],
  lengths: Vector = columns.map((x) => lengthFrom(Float64Array.from(x), 0)),
): Qr {
  const reflectors: Reflector[] = [];
  const kept: number[] = [];
  const r: Float64Array[] = [];
  const rotate = (y: Vector): Float64Array => {
    const out = Float64Array.from(y);
    for (const h of reflectors) reflect(out, h);
    return out;
  };
  const rotateBack = (y: Vector): Float64Array => {
    const out = Float64Array.from(y);
    for (const h of reflectors.toReversed()) reflect(out, h);
    return out;
  };
  columns.forEach((column, j) => {
    const x = rotate(column);
    const from = kept.length;
    if (from >= x.length || !(lengthFrom(x, from) > negligible * at(lengths, j))) return;
    const reflector = reflectorOf(x, from);
    reflect(x, reflector);
    reflectors.push(reflector);
    kept.push(j);
    r.push(x.slice(0, from + 1));
  });
  return { kept, rotate, rotateBack, r };
}

/** Solves R x = b from the last row up; `b` may be longer than R, and what is over is not used. */
export function solveUpper(r: Qr["r"], b: Vector): Float64Array {
  const x = Float64Array.from({ length: r.length }, (_, i) => at(b, i));
  for (let j = r.length - 1; j >= 0; j--) {
    const column = r[j] as Float64Array; // j counts the columns of r
    x[j] = at(x, j) / at(column, j);
    for (let i = 0; i < j; i++) x[i] = at(x, i) - at(column, i) * at(x, j);
  }
  return x;
}

/** Solves Rᵀ x = c from the first row down. */
export function solveLowerTransposed(r: Qr["r"], c: Vector): Float64Array {
  const x = new Float64Array(r.length);
  r.forEach((column, j) => {
    let rest = at(c, j);
    for (let i = 0; i < j; i++) rest -= at(column, i) * at(x, i);
    x[j] = rest / at(column, j);
  });
  return x;
}
