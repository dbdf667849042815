import type { z } from "zod";
import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import { workingCuts } from "../../core/registry/working-cuts.ts";
import { ok, type Result } from "../../core/result.ts";
import type { Composition } from "../../core/solution/composition.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";
import { type ThinPlan, thinPlan } from "./thin-plan.ts";

export interface WantedCut {
  readonly toCutLbPerGal: number;
  readonly resultMl: number;
}

export interface SeriesPlan {
  /** Each cut by itself, with how sure it is and what the simple ratio would have given. */
  readonly cuts: readonly ThinPlan[];
  readonly totals: z.output<typeof workingCuts.output>;
}

/** Several working cuts from one stock in one plan, and whether the stock suffices. */
export function seriesPlan(
  jar: JarView,
  wanted: readonly WantedCut[],
  added: Composition,
): Result<SeriesPlan, Problem> {
  const totals = calculate(workingCuts, {
    stock: {
      solutionMl: jar.volume.value * 1e6,
      cutLbPerGal: jar.cut === null ? 0 : poundsPerUsGallonFromCut(jar.cut.value),
      solvent: solventOf(jar.composition),
    },
    cuts: wanted,
    with: solventOf(added),
  }) as Result<SeriesPlan["totals"], Problem>;
  if (!totals.ok) return totals;
  const cuts: ThinPlan[] = [];
  for (const { toCutLbPerGal, resultMl } of wanted) {
    const plan = thinPlan(jar, toCutLbPerGal, added, { madeMl: resultMl });
    if (!plan.ok) return plan;
    cuts.push(plan.value);
  }
  return ok({ cuts, totals: totals.value });
}
