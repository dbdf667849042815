import type { LaidPatch, Plan } from "../plan.ts";
import { type Stratum, stratumOf, unitOfFactor } from "./strata.ts";

/** How often a factor's levels are truly repeated: by what has to be made afresh, not by patches. */
export interface Replicates {
  readonly factor: string;
  /** What a true repeat of it is: a jar of an alcohol, a plank of a wood. */
  readonly unit: Stratum["unit"];
  /** Of the level that has the fewest. */
  readonly times: number;
  /** Patches of that level: twenty from one jar are one jar. */
  readonly patches: number;
}

/**
 * What is a replicate in a layout, and how many there are.
 *
 * @param patches  the layout, n
 * @returns        one item for each factor with two levels or more
 *
 * Source: S. H. Hurlbert, Ecol. Monogr. 54 (1984) 187, on pseudoreplication
 */
export const replicatesOf = (plan: Plan, patches: readonly LaidPatch[]): readonly Replicates[] =>
  plan.factors
    .filter((f) => f.levels.length > 1)
    .map((factor) => {
      const { unitOf } = stratumOf(plan, patches, factor);
      const ofLevels = factor.levels.map((level) => {
        const there = patches.flatMap((p, i) =>
          p.treatment[factor.name] === level ? [unitOf[i] as string] : [],
        );
        return { times: new Set(there).size, patches: there.length };
      });
      const fewest = ofLevels.reduce((a, b) => (b.times < a.times ? b : a));
      return { factor: factor.name, unit: unitOfFactor(factor), ...fewest };
    });
