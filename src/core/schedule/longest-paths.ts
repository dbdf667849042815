import type { Lag, Project } from "./project.ts";

/** No lag at all, and small enough that sums of it do not wrap. */
export const unrelated = -(2 ** 29);

/** The longest paths between tasks, or the tasks of a cycle that cannot be (each waits for the next). */
export type LongestPaths =
  | { readonly distance: readonly Int32Array[]; readonly cycle?: undefined }
  | { readonly distance?: undefined; readonly cycle: readonly number[] };

/** Lags that always hold: nothing starts before the first task. */
export const allLags = (project: Project): Lag[] => [
  ...project.lags,
  ...project.durations.map((_, i): Lag => ({ from: 0, to: i, least: 0 })),
];

/**
 * Longest paths between all tasks: start[j] ≥ start[i] + distance[i][j].
 *
 *     d[i][j] = max(d[i][j], d[i][k] + d[k][j]) for every k
 *
 * @param project  n tasks with lags of both signs
 * @returns        n×n distances, or the tasks of a cycle of positive length in the order of their lags
 * @throws DomainError never
 *
 * Valid:  sums of lags below 2^29
 * Source: R. W. Floyd, "Algorithm 97: Shortest path", CACM 5 (1962) 345, with the sign turned
 */
export function longestPaths(project: Project): LongestPaths {
  const n = project.durations.length;
  const distance = Array.from({ length: n }, () => new Int32Array(n).fill(unrelated));
  const via = Array.from({ length: n }, (_, i) => new Int32Array(n).fill(i));
  for (const { from, to, least } of allLags(project)) {
    const row = distance[from] as Int32Array;
    if (from !== to && (row[to] as number) < least) row[to] = least;
    if (from === to && least > 0) return { cycle: [from] };
  }
  for (let i = 0; i < n; i++) (distance[i] as Int32Array)[i] = 0;
  for (let k = 0; k < n; k++) {
    const through = distance[k] as Int32Array;
    const viaK = via[k] as Int32Array;
    for (let i = 0; i < n; i++) {
      const row = distance[i] as Int32Array;
      const first = row[k] as number;
      if (first === unrelated) continue;
      const viaI = via[i] as Int32Array;
      for (let j = 0; j < n; j++) {
        const last = through[j] as number;
        if (last === unrelated || first + last <= (row[j] as number)) continue;
        row[j] = first + last;
        viaI[j] = viaK[j] as number;
      }
      if ((row[i] as number) > 0) return { cycle: cycleThrough(i, viaI) };
    }
  }
  return { distance };
}

/** Walks back along the tasks before each other until one comes again. */
function cycleThrough(start: number, via: Int32Array): number[] {
  const seen: number[] = [];
  for (let at = start; !seen.includes(at); at = via[at] as number) seen.push(at);
  return seen.reverse();
}
