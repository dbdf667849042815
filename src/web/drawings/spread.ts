/** A name in a drawing: where it belongs, and how wide it is. */
export interface Label {
  readonly at: number;
  readonly width: number;
}

/**
 * The middles of names that would lie over one another, pushed apart as little as need be and kept in their order
 * between two ends. Where there is no room for all, the last give way at the end.
 */
export function spread(labels: readonly Label[], from: number, to: number): readonly number[] {
  const order = labels.map((label, i) => ({ ...label, i })).sort((a, b) => a.at - b.at || a.i - b.i);
  const middles = order.map((label) => Math.max(label.at, from + label.width / 2));
  for (let i = 1; i < order.length; i++) {
    const [before, here] = [order[i - 1] as Label, order[i] as Label];
    middles[i] = Math.max(middles[i] as number, (middles[i - 1] as number) + (before.width + here.width) / 2);
  }
  let end = to;
  for (let i = order.length - 1; i >= 0; i--) {
    const { width } = order[i] as Label;
    middles[i] = Math.min(middles[i] as number, end - width / 2);
    end = (middles[i] as number) - width / 2;
  }
  const placed = new Array<number>(labels.length);
  for (const [n, { i }] of order.entries()) placed[i] = middles[n] as number;
  return placed;
}
