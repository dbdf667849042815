import { screenFor } from "../catalogue/screen.ts";
import { combinations, type Factor, type Plan, withinBoards } from "../plan.ts";

/** One evening's question out of a large one. */
export interface Stage {
  readonly stage: "screen" | "refine";
  /** What varies in it; for refining, whichever of them turned out to matter. */
  readonly factors: readonly Factor[];
  readonly patches: number;
  /** Of how many factors at most. */
  readonly upTo: number;
}

/**
 * A grid that is too large for its boards, in two stages: first every thing at the two levels that lie furthest apart,
 * to find the few that matter; then those few, at all their levels.
 *
 * @returns  null where the full grid fits, and where not even a screen does
 *
 * Source: G. E. P. Box, W. G. Hunter and J. S. Hunter, Statistics for Experimenters (2005), 6: a quarter of the work first
 */
export function stagesFor(plan: Plan): readonly Stage[] | null {
  const within = withinBoards(plan);
  const places = plan.boards.reduce((sum, b) => sum + b.patches, 0);
  if (within.length < 3 || combinations(within).length <= places) return null;
  const screen = screenFor(within.length, places);
  if (screen === null) return null;
  const ends = within.map((f) => ({ ...f, levels: [f.levels[0] as string, f.levels.at(-1) as string] }));
  const bySize = [...within].map((f) => f.levels.length).sort((a, b) => b - a);
  let [upTo, patches] = [0, 1];
  while (upTo < bySize.length && patches * (bySize[upTo] as number) <= places)
    patches *= bySize[upTo++] as number;
  return [
    { stage: "screen", factors: ends, patches: screen.runs.length, upTo: within.length },
    ...(upTo === 0 ? [] : [{ stage: "refine" as const, factors: within, patches, upTo }]),
  ];
}
