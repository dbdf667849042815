/** The jar in its own drawing: 88 wide, 122 high, its axis at 44. Heights are from the top, as a page counts them. */
export const jarBox = { width: 88, height: 122, axis: 44, bottom: 118, full: 18 } as const;

export const glassPath =
  "M19 12V22Q6 26 6 38V110Q6 118 14 118H74Q82 118 82 110V38Q82 26 69 22V12M14 2H74V12H14Z";
/** The inside, for what is in it. */
export const insidePath = "M6 38Q6 26 19 22V12H69V22Q82 26 82 38V110Q82 118 74 118H14Q6 118 6 110Z";

/** A quadratic curve's two coordinates at t. */
const curve = (t: number, a: readonly number[], b: readonly number[], c: readonly number[]) =>
  [0, 1].map((i) => (1 - t) ** 2 * (a[i] ?? 0) + 2 * t * (1 - t) * (b[i] ?? 0) + t ** 2 * (c[i] ?? 0));

/** The parameter at which a curve that runs downwards has come to a height. */
function at(y: number, a: readonly number[], b: readonly number[], c: readonly number[]): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if ((curve(middle, a, b, c)[1] ?? 0) < y) low = middle;
    else high = middle;
  }
  return low;
}

const shoulder = [
  [69, 22],
  [82, 26],
  [82, 38],
] as const;
const foot = [
  [82, 110],
  [82, 118],
  [74, 118],
] as const;

/** How wide the glass is at a height, from the axis. */
export function radiusAt(y: number): number {
  if (y < 22) return 25;
  if (y >= 38 && y <= 110) return 38;
  const [a, b, c] = y < 38 ? shoulder : foot;
  return (curve(at(y, a, b, c), a, b, c)[0] ?? 0) - jarBox.axis;
}

const step = 0.25;
/** Volume from the bottom up to each height, as a share of the full jar; a solid of revolution, by slices. */
const filled: readonly (readonly [y: number, share: number])[] = (() => {
  const slices: [number, number][] = [[jarBox.bottom, 0]];
  let volume = 0;
  for (let y = jarBox.bottom - step; y >= jarBox.full; y -= step) {
    volume += radiusAt(y + step / 2) ** 2 * step;
    slices.push([y, volume]);
  }
  return slices.map(([y, v]) => [y, v / volume] as const);
})();

/**
 * The height at which a liquid stands that fills a share of the jar, by volume: the drawing is a jar turned about its
 * axis, so half the liquid is half the volume and not half the height. More than full stands at the brim.
 */
export function levelAt(share: number): number {
  const above = filled.findIndex(([, s]) => s >= share);
  if (above < 0) return jarBox.full;
  if (above === 0) return jarBox.bottom;
  const [y0, s0] = filled[above - 1] as readonly [number, number];
  const [y1, s1] = filled[above] as readonly [number, number];
  return y0 + ((share - s0) / (s1 - s0)) * (y1 - y0);
}

/** How large one jar is drawn beside another: as its sides, so that the volume is true. */
export const jarScale = (capacity: number, largest: number): number => Math.cbrt(capacity / largest);
