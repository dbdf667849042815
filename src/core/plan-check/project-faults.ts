/** What a schedule of a project must obey; written down here anew, so that the check shares nothing with the planner. */
export interface ProjectRules {
  readonly durations: readonly number[];
  /** start[to] ≥ start[from] + least, as [from, to, least]. */
  readonly lags: readonly (readonly [number, number, number])[];
  readonly capacities: readonly number[];
  /** By task, then by resource. */
  readonly demands: readonly (readonly number[])[];
}

/**
 * Every rule that a schedule breaks, in words.
 *
 * @param rules   durations (n), lags, capacities (m), demands (n×m)
 * @param starts  start of each task (n)
 * @returns       one line a broken rule; none for a right schedule
 * @throws DomainError never
 *
 * Valid:  whole units of time
 * Source: the definition of the project scheduling problem with least and most waits: K. Neumann, C. Schwindt and
 *         J. Zimmermann, "Project scheduling with time windows and scarce resources" (2nd ed. 2003), section 1
 * @example
 * projectFaults({ durations: [1, 1], lags: [[0, 1, 1]], capacities: [], demands: [[], []] }, [0, 1]).length // => 0
 */
export function projectFaults(rules: ProjectRules, starts: readonly number[]): string[] {
  const { durations, lags, capacities, demands } = rules;
  const faults: string[] = [];
  if (starts.length !== durations.length)
    return [`${starts.length} starts were given for ${durations.length} tasks`];
  starts.forEach((start, i) => {
    if (!Number.isInteger(start) || start < 0) faults.push(`task ${i} starts at ${start}`);
  });
  for (const [from, to, least] of lags) {
    const between = (starts[to] as number) - (starts[from] as number);
    if (!(between >= least)) faults.push(`task ${to} starts ${between} after task ${from}, least ${least}`);
  }
  capacities.forEach((capacity, r) => {
    for (const [i, at] of starts.entries()) {
      if ((durations[i] as number) === 0) continue;
      const used = starts.reduce((sum, start, j) => {
        const runs = start <= at && at < start + (durations[j] as number);
        return runs ? sum + (demands[j]?.[r] ?? 0) : sum;
      }, 0);
      if (used > capacity) faults.push(`resource ${r} is used ${used} times at ${at}, capacity ${capacity}`);
    }
  });
  return faults;
}
