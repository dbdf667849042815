import { z } from "zod";
import { idSchema } from "../entry.ts";
import { target, typedQuantity } from "./parts.ts";

export const layerSorts = [
  "coat",
  "session",
  "wash",
  "wipe",
  "stain",
  "filler",
  "oil",
  "wax",
  "topcoat",
  "spirit-off",
] as const;
export const methods = ["pad", "brush", "spray", "wipe", "dip"] as const;
export const surfaceWorks = [
  "sanded",
  "grain lifted",
  "de-nibbed",
  "scuffed",
  "levelled",
  "rubbed out",
  "wiped",
  "planed",
] as const;

export const benchKinds = {
  "air-read": z.looseObject({
    place: z.string().optional(),
    temperature: typedQuantity,
    relativeHumidity: typedQuantity,
    wood: typedQuantity.optional(),
  }),
  "pad-made": z.looseObject({ name: z.string().min(1) }),
  "pad-charged": z.looseObject({ amount: typedQuantity.optional(), drops: z.number().min(0).optional() }),
  "pad-rinsed": z.looseObject({ with: z.string().optional() }),
  "pad-retired": z.looseObject({}),
  "sitting-begun": z.looseObject({ who: z.array(z.string()).optional(), place: z.string().optional() }),
  "sitting-ended": z.looseObject({ minutes: z.number().min(0).optional() }),
  "board-cut": z.looseObject({
    name: z.string().min(1),
    wood: z.string().min(1),
    /** The plank it was sawn from: boards of one plank share its luck. */
    plank: z.string().min(1),
    lengthMm: z.number().min(0).optional(),
    widthMm: z.number().min(0).optional(),
  }),
  "surface-worked": z.looseObject({
    targets: z.array(target),
    how: z.enum(surfaceWorks),
    with: z.string().optional(),
    strokes: z.number().min(0).optional(),
    removedUm: z.number().min(0).optional(),
  }),
  "film-removed": z.looseObject({
    targets: z.array(target),
    how: z.enum(["cut through", "stripped", "washed off"]),
    note: z.string().optional(),
  }),
  "layer-applied": z.looseObject({
    sort: z.enum(layerSorts),
    targets: z.array(target).min(1),
    /** From one or more batches, or a bought product; shares are equal when absent. */
    from: z.array(
      z.looseObject({
        batch: idSchema.optional(),
        material: idSchema.optional(),
        name: z.string().optional(),
        share: z.number().min(0).max(1).optional(),
      }),
    ),
    method: z.enum(methods),
    amount: z
      .looseObject({
        /** A wet film is read off a comb on the work itself: its total is a thickness. */
        by: z.enum(["weighings", "jug", "charges", "guess", "wet film"]),
        total: typedQuantity,
        /** What stood on the scale: the jar (what was spent) unless told, or the board (what stayed on it). */
        weighed: z.enum(["jar", "board"]).optional(),
      })
      .optional(),
    /** Hands-on, for the person's own pace. */
    minutes: z.number().min(0).optional(),
    oilDrops: z.number().min(0).optional(),
    pad: idSchema.optional(),
    /** The coat of the plan that this is, counted from 1, and the surface that it is on where it is not the whole piece … */
    planned: z.looseObject({ coat: z.int().min(1), surface: z.string().optional() }).optional(),
    /** … or why it is outside the plan. */
    outsidePlan: z.string().optional(),
    /** How it went, for the person's own waits. */
    went: z.enum(["well", "dragged", "too soon", "whitened"]).optional(),
  }),
} as const;
