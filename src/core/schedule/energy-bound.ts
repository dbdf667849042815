import { unrelated } from "./longest-paths.ts";
import type { Project } from "./project.ts";

/**
 * A length that no schedule can beat: tasks that cannot start before r and after whose end another q must pass fill their
 * resource in between.
 *
 *     L ≥ r + ⌈Σ d·u / c⌉ + q   over the tasks with head ≥ r and tail ≥ q
 *
 * @param project   n tasks
 * @param distance  n×n longest paths
 * @returns         the best such bound over resources, heads and tails; at least the longest path
 * @throws DomainError never
 *
 * Valid:  any project
 * Source: J. Carlier, "The one-machine sequencing problem", Eur. J. Oper. Res. 11 (1982) 42, with energy for capacity
 */
export function energyBound(project: Project, distance: readonly Int32Array[]): number {
  const { durations, demands, capacities } = project;
  const last = durations.length - 1;
  const head = distance[0] as Int32Array;
  let best = head[last] as number;
  capacities.forEach((capacity, r) => {
    const users = durations.flatMap((duration, task) => {
      const toEnd = (distance[task] as Int32Array)[last] as number;
      const energy = duration * (demands[task]?.[r] ?? 0);
      if (energy === 0 || toEnd === unrelated) return [];
      return [{ head: head[task] as number, tail: toEnd - duration, energy }];
    });
    users.sort((a, b) => b.tail - a.tail);
    for (const from of new Set(users.map((u) => u.head))) {
      let energy = 0;
      for (const user of users) {
        if (user.head < from) continue;
        energy += user.energy;
        best = Math.max(best, from + Math.ceil(energy / capacity) + user.tail);
      }
    }
  });
  return best;
}
