import { z } from "zod";
import { idSchema } from "../entry.ts";
import { layerSorts, methods } from "./bench.ts";
import { day, typedQuantity } from "./parts.ts";

/** One step of a finishing schedule: a layer, work on the surface, or a wait. */
export const scheduleStep = z.looseObject({
  step: z.string(),
  what: z.enum([...layerSorts, "sand", "de-nib", "level", "rub out", "cure", "wait"]),
  /** What a coat is for. */
  as: z.enum(["seal", "body", "tint"]).optional(),
  /** The side or part that it is done on; absent where the piece is worked all at once. A coat then has an entry a surface. */
  surface: z.string().optional(),
  day: day.optional(),
  at: z.string().optional(),
  method: z.enum(methods).optional(),
  cutLbPerGal: z.number().min(0).optional(),
  batch: idSchema.optional(),
  millilitres: z.number().min(0).optional(),
  minutes: z.number().min(0).optional(),
  leastWaitMinutes: z.number().min(0).optional(),
  mostWaitMinutes: z.number().min(0).optional(),
  note: z.string().optional(),
});
export type ScheduleStep = z.output<typeof scheduleStep>;

/** One part that a piece's area was worked out from; sizes and profile as they were measured. */
export const pieceComponent = z.looseObject({
  /** A kind of part as the calculation `area` names them. */
  part: z.string(),
  name: z.string().optional(),
  count: z.int().min(1),
  sizes: z.record(z.string(), typedQuantity),
  /** Pairs: height and diameter of a turned part, or across and up of a moulding's section. */
  profile: z.array(z.array(typedQuantity)).optional(),
  shelves: z.int().min(0).optional(),
  drawers: z.int().min(0).optional(),
  grain: z.string().optional(),
  finished: z.array(z.string()),
});
export type PieceComponent = z.output<typeof pieceComponent>;

export const pieceKinds = {
  "piece-described": z.looseObject({
    name: z.string().min(1),
    area: typedQuantity,
    /** What the area was worked out from; absent where it was told. */
    parts: z.array(pieceComponent).optional(),
    endGrainTimes: z.number().min(1).optional(),
    wood: z.string().optional(),
    lies: z.looseObject({ under: z.string().optional(), over: z.string().optional() }).optional(),
    wanted: day.optional(),
  }),
  "piece-scheduled": z.looseObject({
    fromTrial: idSchema.optional(),
    recipe: z.looseObject({
      alcohol: z.string().optional(),
      cutLbPerGal: z.number().min(0),
      resin: z.string().optional(),
      coats: z.int().min(1),
      method: z.enum(methods),
    }),
    steps: z.array(scheduleStep),
    millilitresPerM2PerCoat: z.number().min(0),
    spareShare: z.number().min(0).optional(),
  }),
  "piece-handed-over": z.looseObject({
    to: z.string().optional(),
    retainedSample: z.string().optional(),
    care: z.string().optional(),
  }),
  /** About a trial, with the evenings that its plan took of them: instants, so that a calendar can be told what changed. */
  "free-time": z.looseObject({
    windows: z.array(z.looseObject({ from: z.string(), to: z.string() })),
    evenings: z.array(z.looseObject({ from: z.string(), until: z.string() })).optional(),
  }),
} as const;
