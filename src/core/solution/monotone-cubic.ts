/** A point of a table: place and value. */
export type Knot = readonly [x: number, y: number];

/** Steffen's slope at the inner knot between two intervals: never so steep that the cubic overshoots a knot. */
function slopeBetween(left: number, right: number, widthLeft: number, widthRight: number): number {
  const parabola = (left * widthRight + right * widthLeft) / (widthLeft + widthRight);
  return (
    (Math.sign(left) + Math.sign(right)) * Math.min(Math.abs(left), Math.abs(right), Math.abs(parabola) / 2)
  );
}

/** The end knots take the slope of the parabola through the three nearest, held to the same bound. */
function slopeAtEnd(near: number, next: number, widthNear: number, widthNext: number): number {
  const parabola = near + ((near - next) * widthNear) / (widthNear + widthNext);
  if (parabola * near <= 0) return 0;
  return Math.abs(parabola) > 2 * Math.abs(near) ? 2 * near : parabola;
}

/**
 * A smooth curve through a table that rises and falls only where the table does.
 *
 * @param knots  at least three, in rising order of x
 * @returns      the curve; outside the knots it is not defined, and the caller guards
 *
 * Accuracy: third order in the spacing where the table is monotone; a spline is smoother but swings in a table
 *           with uneven spacing, which a density must not
 * Source:   M. Steffen, Astron. Astrophys. 239 (1990) 443, eq. 11 and 24–26
 * @example
 * monotoneCubic([[0, 0], [1, 1], [2, 4]])(1.5) // => 2.25
 */
export function monotoneCubic(knots: readonly Knot[]): (x: number) => number {
  const n = knots.length;
  const at = (i: number): Knot => knots[i] as Knot;
  const width = (i: number): number => at(i + 1)[0] - at(i)[0];
  const rise = (i: number): number => (at(i + 1)[1] - at(i)[1]) / width(i);
  const slopes = knots.map((_, i) => {
    if (i === 0) return slopeAtEnd(rise(0), rise(1), width(0), width(1));
    if (i === n - 1) return slopeAtEnd(rise(n - 2), rise(n - 3), width(n - 2), width(n - 3));
    return slopeBetween(rise(i - 1), rise(i), width(i - 1), width(i));
  });
  return (x) => {
    let [low, high] = [0, n - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(middle)[0] <= x) low = middle;
      else high = middle;
    }
    const [h, s, d] = [width(low), rise(low), x - at(low)[0]];
    const [y0, y1] = [slopes[low] as number, slopes[low + 1] as number];
    return (((y0 + y1 - 2 * s) / h ** 2) * d + (3 * s - 2 * y0 - y1) / h) * d * d + y0 * d + at(low)[1];
  };
}
