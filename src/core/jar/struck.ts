import type { NotebookReader } from "../notebook/reader.ts";
import type { Composition } from "../solution/composition.ts";
import { combined, liquidOf, only } from "./amounts.ts";
import type { Named } from "./ingredient.ts";
import type { JarFold } from "./jar-fold.ts";
import { struckMakeup } from "./makeup.ts";

/** What became of a jar when a bottle that it was mixed from was struck off the shelf. */
export interface StruckBottles {
  /** What it was mixed from and no longer stands on the shelf: the reckoning does not know what that was. */
  readonly struck: readonly Named[];
  /** What its cautions go by: the liquid, with what was written of those bottles where the reckoning names nothing. */
  readonly cautioned: Composition;
}

/**
 * Cautions outlive a struck bottle: what nothing is known of takes in equal parts what was written of the bottles that
 * are gone. Only cautions read this; a cut never does.
 */
export function struckBottles(read: NotebookReader, fold: JarFold): StruckBottles {
  const written = (named: Named) => (named.material === null ? null : struckMakeup(read, named.material));
  const gone = fold.solventNames.flatMap((named) => written(named)?.composition ?? []);
  const { unknown = 0, ...known } = only(fold.now.value, "liquids");
  const filled =
    gone.length === 0
      ? fold.now.value
      : combined([1, known], ...gone.map((one) => [unknown / gone.length, one] as const));
  return {
    struck: [...fold.resinNames, ...fold.solventNames].filter((named) => written(named) !== null),
    cautioned: liquidOf(filled).composition,
  };
}
