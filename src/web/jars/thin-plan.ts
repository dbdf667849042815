import type { z } from "zod";
import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import { thin } from "../../core/registry/thin.ts";
import type { Result } from "../../core/result.ts";
import type { Composition } from "../../core/solution/composition.ts";
import { poundsPerUsGallonFromCut } from "../../core/units.ts";
import type { JarView } from "../../core/views/jar.ts";

export type Thinned = z.output<typeof thin.output>;

/** How much is wanted: so much of the weaker liquid, or all that so much of the stock gives. */
export type Wanted = { readonly madeMl: number } | { readonly takenMl: number };

export interface ThinPlan {
  readonly takenMl: number;
  readonly thinned: Thinned;
  /** The stock does not hold what is to be taken. */
  readonly shortByMl: number;
}

const ask = (jar: JarView, takenMl: number, toCutLbPerGal: number, added: Composition) => {
  const cut = jar.cut;
  const pounds = cut === null ? 0 : poundsPerUsGallonFromCut(cut.value);
  return calculate(thin, {
    stock: {
      solutionMl: takenMl,
      cutLbPerGal: pounds,
      cutStandardUncertainty: cut === null ? 0 : (pounds * cut.standardUncertainty) / cut.value,
      solvent: solventOf(jar.composition),
    },
    toCutLbPerGal,
    with: solventOf(added),
  }) as Result<Thinned, Problem>;
};

/**
 * A weaker jar out of this one, by mass balance. Volumes scale, so that a wanted amount is found from a first litre.
 *
 * @param jar     the stock as it is now
 * @param to      lb per US gallon
 * @param added   what it is thinned with
 * @param wanted  of the result, or of the stock
 */
export function thinPlan(
  jar: JarView,
  to: number,
  added: Composition,
  wanted: Wanted,
): Result<ThinPlan, Problem> {
  const litre = ask(jar, 1000, to, added);
  if (!litre.ok) return litre;
  const takenMl = "takenMl" in wanted ? wanted.takenMl : (1000 * wanted.madeMl) / litre.value.resultMl;
  const thinned = ask(jar, takenMl, to, added);
  if (!thinned.ok) return thinned;
  const hasMl = jar.volume.value * 1e6;
  return { ok: true, value: { takenMl, thinned: thinned.value, shortByMl: Math.max(0, takenMl - hasMl) } };
}
