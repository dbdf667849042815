import { z } from "zod";
import { idSchema } from "../entry.ts";

/** A quantity as the person typed it, with what it came to in SI; never the one without the other. */
export const typedQuantity = z.looseObject({
  typed: z.string(),
  unit: z.string(),
  si: z.number(),
  instrument: idSchema.optional(),
});
export type TypedQuantity = z.output<typeof typedQuantity>;

export const money = z.looseObject({ amount: z.number().min(0), currency: z.string() });

/** As `Solvent` in the calculations; checked there, kept here as it was given. */
export const solventAsGiven = z.looseObject({});

/** Something poured or weighed in: off the shelf by id, or named when it never stood there. */
export const ingredient = z.looseObject({
  material: idSchema.optional(),
  name: z.string().optional(),
  amount: typedQuantity,
});

/** What a layer lies on: a patch of a trial, a whole board, or a part of a piece. */
export const target = z.looseObject({
  trial: idSchema.optional(),
  patch: z.string().optional(),
  board: idSchema.optional(),
  piece: idSchema.optional(),
  part: z.string().optional(),
  /** Share of the amount that went here; equal shares when absent. */
  share: z.number().min(0).max(1).optional(),
});

export const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
