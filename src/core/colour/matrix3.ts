export type Triple = readonly [number, number, number];
/** Three rows of three. */
export type Matrix3 = readonly [Triple, Triple, Triple];

/** Three rows by a column. */
export const times = (m: Matrix3, [x, y, z]: Triple): Triple => [
  m[0][0] * x + m[0][1] * y + m[0][2] * z,
  m[1][0] * x + m[1][1] * y + m[1][2] * z,
  m[2][0] * x + m[2][1] * y + m[2][2] * z,
];

const cross = ([a, b, c]: Triple, [x, y, z]: Triple): Triple => [b * z - c * y, c * x - a * z, a * y - b * x];
const dot = ([a, b, c]: Triple, [x, y, z]: Triple): number => a * x + b * y + c * z;
const scaled = ([x, y, z]: Triple, by: number): Triple => [x * by, y * by, z * by];

/** Rows and columns exchanged. */
export const transposed = ([a, b, c]: Matrix3): Matrix3 => [
  [a[0], b[0], c[0]],
  [a[1], b[1], c[1]],
  [a[2], b[2], c[2]],
];

/** The matrix that undoes another, by its adjugate; all that are inverted here are constants and not singular. */
export function inverse([a, b, c]: Matrix3): Matrix3 {
  const determinant = dot(a, cross(b, c));
  const columns: Matrix3 = [cross(b, c), cross(c, a), cross(a, b)];
  return transposed([
    scaled(columns[0], 1 / determinant),
    scaled(columns[1], 1 / determinant),
    scaled(columns[2], 1 / determinant),
  ]);
}
