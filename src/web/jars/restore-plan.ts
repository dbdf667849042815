import type { z } from "zod";
import { liquidMassOf } from "../../core/jar/amounts.ts";
import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { restore } from "../../core/registry/restore.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import { thin } from "../../core/registry/thin.ts";
import { ok, type Result } from "../../core/result.ts";
import type { Composition } from "../../core/solution/composition.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";
import { asStock } from "./as-stock.ts";
import type { Thinned } from "./thin-plan.ts";

export interface RestorePlan {
  /** Solvent that has left in all, g. */
  readonly lostG: number;
  /** As strong as it has become, and as it was. */
  readonly nowLbPerGal: number;
  readonly wasLbPerGal: number;
  /** What brings it back, and what the ratio of the cuts would have said. */
  readonly back: Thinned;
}

/**
 * What brings back a jar that lost solvent: all that left since it was shut, that which an earlier weighing found among it.
 *
 * @param jar     as its entries tell it, the earlier losses taken off
 * @param lostKg  found by this weighing, above none
 * @param added   what it is topped up with
 */
export function restorePlan(
  jar: JarView,
  lostKg: number,
  added: Composition,
): Result<RestorePlan, Problem> | undefined {
  const contents = jar.steps.at(-1)?.after.value;
  if (jar.cut === null || contents === undefined) return undefined;
  const earlier = jar.lost?.kg ?? 0;
  const liquid = liquidMassOf(contents);
  const was = poundsPerUsGallonFromCut(jar.cut.value) * (liquid / (liquid + earlier));
  const lostG = (lostKg + earlier) * 1e3;
  const found = calculate(restore, {
    jar: {
      solutionG: (jar.mass.value + earlier) * 1e3,
      cutLbPerGal: was,
      solvent: solventOf(jar.composition),
    },
    lostG,
    with: solventOf(added),
  }) as Result<z.output<typeof restore.output>, Problem>;
  if (!found.ok) return found;
  const { now } = found.value;
  const back = calculate(thin, {
    stock: {
      solutionG: now.solutionG,
      ...asStock(jar),
      cutLbPerGal: now.cutLbPerGal,
    },
    toCutLbPerGal: was,
    with: solventOf(added),
  }) as Result<Thinned, Problem>;
  return back.ok ? ok({ lostG, nowLbPerGal: now.cutLbPerGal, wasLbPerGal: was, back: back.value }) : back;
}
