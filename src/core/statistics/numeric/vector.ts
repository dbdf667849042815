/** A list of numbers by place; typed arrays and plain arrays alike. */
export type Vector = ArrayLike<number>;

/** Reads within bounds. The cast stands here once: loops over vectors count to lengths that they know. */
export const at = (v: Vector, i: number): number => v[i] as number;

/** Reads within bounds of a typed array. Apart from `at`, so that the inner loops of fits meet one kind of list only. */
export const entry = (v: Float64Array, i: number): number => v[i] as number;

/** The sum with the rounding error of each step carried along (Neumaier, ZAMM 54 (1974) 39). */
export function sum(v: Vector): number {
  let total = 0;
  let carried = 0;
  for (let i = 0; i < v.length; i++) {
    const x = at(v, i);
    const next = total + x;
    carried += Math.abs(total) >= Math.abs(x) ? total - next + x : x - next + total;
    total = next;
  }
  return total + carried;
}

/** The mean, taken about the first value so that a large common offset costs no digits. */
export function mean(v: Vector): number {
  const first = at(v, 0);
  return first + sum(Array.from(v, (x) => x - first)) / v.length;
}

/** Sum of squared deviations from the mean. */
export function squaredDeviations(v: Vector): number {
  const centre = mean(v);
  return sum(Array.from(v, (x) => (x - centre) ** 2));
}
