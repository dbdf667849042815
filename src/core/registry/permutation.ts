import { z } from "zod";

/** A test by dealing levels anew among what was made apart, as verdicts tell it. */
export const permutation = z.object({
  method: z.string(),
  statistic: z.number(),
  pValue: z.number(),
  dealings: z.number(),
  exact: z.boolean(),
});
