const firstMs = 1_000;
const longestMs = 60_000;

/** How long to wait before trying again after so many failures in a row: 1 s, 2 s, 4 s … at most a minute. */
export const backoffMs = (failures: number): number =>
  Math.min(longestMs, firstMs * 2 ** Math.max(0, failures - 1));
