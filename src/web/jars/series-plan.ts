import type { z } from "zod";
import { calculate } from "../../core/registry/calculation.ts";
import type { Problem } from "../../core/registry/problem.ts";
import { solventOf } from "../../core/registry/solvent-of.ts";
import { workingCuts } from "../../core/registry/working-cuts.ts";
import type { Result } from "../../core/result.ts";
import type { Composition } from "../../core/solution/composition.ts";
import type { JarView } from "../../core/views/jar.ts";
import { asStock } from "./as-stock.ts";

export interface WantedCut {
  readonly toCutLbPerGal: number;
  readonly resultMl: number;
}

export type SeriesPlan = z.output<typeof workingCuts.output>;

/** Several working cuts from one stock in one plan, and whether the stock suffices. */
export const seriesPlan = (
  jar: JarView,
  wanted: readonly WantedCut[],
  added: Composition,
): Result<SeriesPlan, Problem> =>
  calculate(workingCuts, {
    stock: { solutionMl: jar.volume.value * 1e6, ...asStock(jar) },
    cuts: wanted,
    with: solventOf(added),
  }) as Result<SeriesPlan, Problem>;
