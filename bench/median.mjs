export function median(values) {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** The median of what `measure` gives, one after another. */
export async function medianOf(times, measure) {
  const values = [];
  for (let i = 0; i < times; i++) values.push(await measure(i));
  return median(values);
}
