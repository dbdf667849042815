import type { z } from "zod";
import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import { thin } from "../../core/registry/thin.ts";
import type { Result } from "../../core/result.ts";
import type { Composition } from "../../core/solution/composition.ts";
import { kitchenInstruments } from "../../core/solution/instruments.ts";
import type { JarView } from "../../core/views/jar.ts";
import { asStock } from "./as-stock.ts";

export type Thinned = z.output<typeof thin.output>;

/** How much is wanted: so much of the weaker liquid, or all that so much of the stock gives. */
export type Wanted = { readonly madeMl: number } | { readonly takenMl: number };

export interface ThinPlan {
  readonly takenMl: number;
  readonly takenG: number;
  readonly thinned: Thinned;
  /** The uncertainty if stock and alcohol were both weighed on the kitchen scale. */
  readonly weighedStandardUncertainty: number;
  /** The stock does not hold what is to be taken. */
  readonly shortByMl: number;
}

const ask = (
  jar: JarView,
  amount: { solutionMl: number } | { solutionG: number },
  to: number,
  added: Composition,
  by = {},
) =>
  calculate(thin, {
    stock: { ...amount, ...asStock(jar) },
    toCutLbPerGal: to,
    with: solventOf(added),
    ...by,
  }) as Result<Thinned, Problem>;

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
  const litre = ask(jar, { solutionMl: 1000 }, to, added);
  if (!litre.ok) return litre;
  const takenMl = "takenMl" in wanted ? wanted.takenMl : (1000 * wanted.madeMl) / litre.value.resultMl;
  const thinned = ask(jar, { solutionMl: takenMl }, to, added);
  if (!thinned.ok) return thinned;
  const hasMl = jar.volume.value * 1e6;
  const takenG = (takenMl * jar.mass.value * 1e3) / hasMl;
  const weighed = ask(jar, { solutionG: takenG }, to, added, {
    instruments: { ...kitchenInstruments, jugMl: 0 },
  });
  if (!weighed.ok) return weighed;
  return {
    ok: true,
    value: {
      takenMl,
      takenG,
      thinned: thinned.value,
      weighedStandardUncertainty: weighed.value.cutStandardUncertainty,
      shortByMl: Math.max(0, takenMl - hasMl),
    },
  };
}
