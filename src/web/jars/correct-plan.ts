import type { z } from "zod";
import { calculate } from "../../core/registry/calculation.ts";
import { correctJar } from "../../core/registry/correct-jar.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import type { Result } from "../../core/result.ts";
import type { JarView } from "../../core/views/jar.ts";
import type { MaterialView } from "../../core/views/material.ts";
import { asStock } from "./as-stock.ts";
import { flakesOf } from "./flakes-of.ts";

export type Corrected = z.output<typeof correctJar.output>;
export type Way = Corrected["ways"][number];

/** What could be put into the jar: alcohols and flakes off the shelf, and other jars. */
export interface AtHand {
  readonly solvents: readonly MaterialView[];
  readonly resins: readonly MaterialView[];
  readonly jars: readonly JarView[];
}

const haveG = (material: MaterialView) =>
  material.left?.kg == null || material.left.kg <= 0 ? {} : { haveG: material.left.kg * 1e3 };

/**
 * The ways that bring a mis-mixed jar to the wanted cut, each named by the id of what is added; those for which there
 * is enough stand first, the least to add before the others.
 */
export function correctPlan(jar: JarView, toCutLbPerGal: number, atHand: AtHand): Result<Corrected, Problem> {
  const found = calculate(correctJar, {
    jar: { solutionMl: jar.volume.value * 1e6, ...asStock(jar) },
    toCutLbPerGal,
    ...(jar.vessel?.capacity == null ? {} : { vesselMl: jar.vessel.capacity * 1e6 }),
    shelf: [
      ...atHand.solvents.flatMap((one) =>
        one.composition === null
          ? []
          : [{ name: one.id, solvent: solventOf(one.composition), ...haveG(one) }],
      ),
      ...atHand.resins.map((one) => ({ name: one.id, resins: [flakesOf(one)], ...haveG(one) })),
      ...atHand.jars.map((one) => ({
        name: one.id,
        jar: { solutionMl: one.volume.value * 1e6, ...asStock(one) },
      })),
    ],
  }) as Result<Corrected, Problem>;
  if (!found.ok) return found;
  const short = (way: Way) => (way.suffices === false ? 1 : 0);
  const ways = [...found.value.ways].sort((a, b) => short(a) - short(b) || a.addG - b.addG);
  return { ok: true, value: { ...found.value, ways } };
}
