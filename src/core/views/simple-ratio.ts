import { solutionOf } from "../jar/amounts.ts";
import { foldJar } from "../jar/fold-jar.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { simpleRatio } from "../solution/thin.ts";
import { type Cut, cutFromPoundsPerUsGallon } from "../units.ts";

/**
 * The cut that a thinned jar would have, had the alcohol been added by the simple ratio of the cuts; null for a jar
 * that was not thinned to a cut, or whose stock is not known.
 *
 * @param read  the notebook
 * @param jar   the thinned jar's id
 */
export function cutBySimpleRatio(read: NotebookReader, jar: string): Cut | null {
  const maker = read.making(jar);
  if (maker?.kind !== "batch-thinned") return null;
  const body = maker.body as Body<"batch-thinned">;
  const fold = foldJar(read, jar);
  const parent = maker.about[0] === undefined ? null : foldJar(read, maker.about[0]);
  const poured = parent?.steps.find((step) => step.entry === maker.id)?.poured;
  const { aimedCutLbPerGal: aimed } = body;
  if (fold === null || poured == null || aimed === undefined || aimed === 0) return null;
  const stock = solutionOf(poured.value);
  if (!(stock.liquid.mass > 0)) return null;
  return simpleRatio(stock, cutFromPoundsPerUsGallon(aimed), stock.liquid.composition, strengthAt20C).cut;
}
