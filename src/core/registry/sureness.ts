import { z } from "zod";
import type { Propagated } from "../solution/propagation.ts";
import { contributions } from "./amount.ts";
import { poundsPerUsGallon } from "./cut-names.ts";

/** How sure a cut is, as every calculation of a cut says it. */
export const sureness = {
  /** In lb per US gallon. */
  cutStandardUncertainty: z.number(),
  contributions,
  /** No instruments were told: a kitchen's are assumed. */
  instrumentsAssumed: z.boolean(),
};

export const surenessOf = (found: Propagated, instrumentsAssumed: boolean) => ({
  cutStandardUncertainty: poundsPerUsGallon(found.standardUncertainty),
  contributions: [...found.contributions],
  instrumentsAssumed,
});
