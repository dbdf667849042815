import { z } from "zod";
import { idSchema } from "../entry.ts";
import { ingredient, typedQuantity } from "./parts.ts";

export const undissolvedShares = ["most", "some", "a trace", "none"] as const;
export const clarities = ["clear", "hazy", "cloudy"] as const;
export const dropTestResults = ["hard", "tacky", "soft"] as const;

/** A batch that a step pours into a vessel of its own: a new label with a new code. */
const newBatch = { code: z.string().min(1).optional(), vessel: idSchema.optional() };

/** A batch is what is in a vessel; the vessel is the glass, and a reused one gets a new batch. `about[0]` is the batch acted on. */
export const jarKinds = {
  "vessel-described": z.looseObject({
    name: z.string().min(1),
    capacity: typedQuantity.optional(),
    emptyWeight: typedQuantity.optional(),
  }),
  "batch-mixed": z.looseObject({
    code: z.string().min(1),
    vessel: idSchema.optional(),
    resins: z.array(ingredient),
    solvents: z.array(ingredient),
    /** Dyes, pigments and the like. */
    additions: z.array(ingredient).optional(),
    aimedCutLbPerGal: z.number().min(0).optional(),
  }),
  "batch-looked-at": z.looseObject({
    undissolved: z.enum(undissolvedShares),
    /** How much of the flakes still lies there, by eye. */
    undissolvedShare: typedQuantity.optional(),
    clarity: z.enum(clarities).optional(),
    colour: z.string().optional(),
    waxSettled: z.boolean().optional(),
  }),
  /** With a code: strained into a new vessel, and this entry makes that batch. */
  "batch-filtered": z.looseObject({
    ...newBatch,
    through: z.string().optional(),
    kept: typedQuantity.optional(),
    sludge: typedQuantity.optional(),
  }),
  /** With a code: some of the parent poured off and thinned, and this entry makes that batch. Without: thinned where it stands. */
  "batch-thinned": z.looseObject({
    ...newBatch,
    taken: typedQuantity.optional(),
    added: z.array(ingredient),
    aimedCutLbPerGal: z.number().min(0).optional(),
  }),
  "batch-blended": z.looseObject({
    code: z.string().min(1),
    vessel: idSchema.optional(),
    parts: z.array(z.looseObject({ batch: idSchema, amount: typedQuantity })),
  }),
  /** Solvent, and flakes where a jar came out too weak. */
  "batch-topped-up": z.looseObject({ added: z.array(ingredient), resins: z.array(ingredient).optional() }),
  "batch-decanted": z.looseObject({ ...newBatch, amount: typedQuantity, to: z.string().optional() }),
  "leftovers-poured-back": z.looseObject({ amount: typedQuantity.optional(), from: z.string().optional() }),
  "batch-contaminated": z.looseObject({ with: z.string() }),
  "batch-weighed": z.looseObject({ gross: typedQuantity, withLid: z.boolean() }),
  "batch-drop-tested": z.looseObject({
    result: z.enum(dropTestResults),
    hardAfterMinutes: z.number().min(0).optional(),
  }),
  "batch-dried-down": z.looseObject({ wet: typedQuantity, dry: typedQuantity }),
  "batch-emptied": z.looseObject({ why: z.string().optional() }),
} as const;
