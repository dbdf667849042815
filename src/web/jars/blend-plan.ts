import type { z } from "zod";
import type { TypedQuantity } from "../../core/notebook/kinds/parts.ts";
import { blendJars } from "../../core/registry/blend-jars.ts";
import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import type { Result } from "../../core/result.ts";
import type { JarView } from "../../core/views/jar.ts";
import { asStock } from "./as-stock.ts";
import { isWeight } from "./shop-units.ts";

export type Blended = z.output<typeof blendJars.output>;

export interface BlendPlan {
  readonly blended: Blended;
  /** The mean of the two cuts by how much of each is poured, as one would do it in the head. */
  readonly simpleCutLbPerGal: number;
  /** What each is to give beyond what it holds, mL; 0 where it holds enough. */
  readonly shortByMl: readonly number[];
}

export interface PouredIn {
  readonly jar: JarView;
  readonly amount: TypedQuantity;
}

const millilitresOf = ({ jar, amount }: PouredIn): number =>
  isWeight(amount) ? (amount.si / jar.mass.value) * jar.volume.value * 1e6 : amount.si * 1e6;

const asInput = ({ jar, amount }: PouredIn) => ({
  ...(isWeight(amount) ? { solutionG: amount.si * 1e3 } : { solutionMl: amount.si * 1e6 }),
  ...asStock(jar),
});

/**
 * Jars poured together, by mass balance.
 *
 * @param poured  what is taken of each
 */
export function blendPlan(poured: readonly PouredIn[]): Result<BlendPlan, Problem> {
  const blended = calculate(blendJars, { jars: poured.map(asInput) }) as Result<Blended, Problem>;
  if (!blended.ok) return blended;
  const volumes = poured.map(millilitresOf);
  const whole = volumes.reduce((sum, ml) => sum + ml, 0);
  const simple =
    poured.reduce((sum, one, i) => sum + asInput(one).cutLbPerGal * (volumes[i] ?? 0), 0) / whole;
  return {
    ok: true,
    value: {
      blended: blended.value,
      simpleCutLbPerGal: simple,
      shortByMl: poured.map((one, i) => Math.max(0, (volumes[i] ?? 0) - one.jar.volume.value * 1e6)),
    },
  };
}
