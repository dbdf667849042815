/** start[to] ≥ start[from] + least; a negative `least` is a most-wait the other way round. */
export interface Lag {
  readonly from: number;
  readonly to: number;
  readonly least: number;
}

/**
 * What is to be scheduled, in whole units of time: tasks 0 … n − 1 that run without a break, differences between their
 * starts, and resources of limited capacity. The length of a schedule is the start of the last task.
 */
export interface Project {
  readonly durations: readonly number[];
  readonly lags: readonly Lag[];
  readonly capacities: readonly number[];
  /** By task, then by resource. */
  readonly demands: readonly (readonly number[])[];
}

/** No schedule that starts everything as early as it can is longer than this. */
export function horizonOf(project: Project): number {
  const longest = project.durations.map((d) => d);
  for (const { from, least } of project.lags) longest[from] = Math.max(longest[from] as number, least);
  return longest.reduce((sum, x) => sum + x, 0);
}
