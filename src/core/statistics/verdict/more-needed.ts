import { tukeyMultiplier } from "../several/tukey.ts";
import type { Place } from "./readings.ts";

/** How many more of each, by itself, would settle what is unclear: 0 when all is settled, null when none would. */
export interface MoreNeeded {
  /** Jars of each level. */
  readonly jars: number | null;
  readonly boards: number | null;
}

export interface ObservedLayout {
  readonly levels: number;
  /** What the error is between. */
  readonly unit: Place;
  readonly unitsPerLevel: number;
  readonly patchesPerUnit: number;
  readonly unitVariance: number;
  readonly patchVariance: number;
  readonly boards: number;
  readonly degreesOfFreedom: number;
}

interface Unsettled {
  readonly difference: number;
  readonly verdict: string;
}

/** Beyond this many more, a count is not advice. */
const most = 60;

/** Half the width of the interval for a difference, with more jars of each level or more boards. */
function halfWidth(layout: ObservedLayout, jars: number, boards: number): number {
  const growth = layout.boards > 0 ? (layout.boards + boards) / layout.boards : 1;
  const onBoards = layout.unit === "board" || layout.unit === "plank" || layout.unit === "patch";
  const units = layout.unitsPerLevel * (onBoards ? growth : 1) + jars;
  const patches = layout.patchesPerUnit * (layout.unit === "jar" ? growth : 1);
  const variance = (2 * (layout.unitVariance + layout.patchVariance / patches)) / units;
  const freedom = onBoards
    ? layout.degreesOfFreedom * growth
    : layout.degreesOfFreedom + layout.levels * jars;
  // Whole degrees of freedom do for advice, and their multipliers are known from one question to the next.
  return tukeyMultiplier(layout.levels, Math.max(1, Math.floor(freedom))) * Math.sqrt(variance);
}

/** The first number for which the interval is short enough, by doubling and halving: more is never worse. */
function firstShort(width: (more: number) => number, needed: number): number | null {
  if (width(most) > needed) return null;
  let [low, high] = [0, most];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (width(middle) <= needed) high = middle;
    else low = middle;
  }
  return high;
}

/**
 * How many more jars of each level, or how many more boards, would settle every pair that is unclear, if the
 * differences and the noise stay as seen: the half-width must come down to | |d| − m |.
 *
 * @param pairs    {difference, verdict}
 * @param matters  m, in the response's unit
 * @param layout   what there is now, with the noise seen
 * @returns        {jars, boards}, each by itself
 *
 * Accuracy: advice, no more: the noise is itself an estimate, and a difference near m is never settled
 * Source:   D. C. Montgomery, Design and Analysis of Experiments (2013), 3.7.3, sample size by interval width
 */
export function moreNeeded(pairs: readonly Unsettled[], matters: number, layout: ObservedLayout): MoreNeeded {
  const open = pairs.filter((p) => p.verdict === "unclear");
  if (open.length === 0) return { jars: 0, boards: 0 };
  const needed = Math.min(...open.map((p) => Math.abs(Math.abs(p.difference) - matters)));
  return {
    jars: layout.unit === "jar" ? firstShort((n) => halfWidth(layout, n, 0), needed) : null,
    boards: layout.boards > 0 ? firstShort((n) => halfWidth(layout, 0, n), needed) : null,
  };
}
