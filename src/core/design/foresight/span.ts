/** Below this share of its own length a column counts as lying in the span: indicator columns leave no doubt. */
const tolerance = 1e-9;

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, x, i) => sum + x * (b[i] as number), 0);

/** The space that some columns span, as an orthonormal basis of it. */
export type Span = readonly (readonly number[])[];

/** What is left of a column when all that a span explains is taken out; twice, so that rounding does not build up. */
export function residual(column: readonly number[], span: Span): readonly number[] {
  let left = [...column];
  for (let pass = 0; pass < 2; pass++)
    for (const axis of span) {
      const along = dot(left, axis);
      left = left.map((x, i) => x - along * (axis[i] as number));
    }
  return left;
}

/**
 * The span of more columns, by modified Gram–Schmidt; its length is the rank.
 *
 * @param columns  n×p, each column n
 * @param onto     a span to widen; none unless told
 * @returns        rank axes of n each
 *
 * Accuracy: rank exact for indicator columns (tolerance 1e-9 of a column's length)
 * Source:   G. H. Golub and C. F. Van Loan, Matrix Computations, 4th ed. (2013), 5.2.8
 * @example
 * spanOf([[1, 1, 0], [0, 0, 1], [1, 1, 1]]).length // => 2
 */
export function spanOf(columns: readonly (readonly number[])[], onto: Span = []): Span {
  const axes = [...onto];
  for (const column of columns) {
    const left = residual(column, axes);
    const length = Math.sqrt(dot(left, left));
    if (length > tolerance * Math.sqrt(dot(column, column))) axes.push(left.map((x) => x / length));
  }
  return axes;
}

/** One column for each different label, 1 where it stands. */
export const indicators = (labels: readonly string[]): readonly (readonly number[])[] =>
  [...new Set(labels)].map((label) => labels.map((l) => (l === label ? 1 : 0)));
