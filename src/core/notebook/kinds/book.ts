import { z } from "zod";
import { idSchema } from "../entry.ts";

export const happenings = ["spill", "dust", "insect", "power cut", "draught", "other"] as const;

export const bookKinds = {
  /** The first entry of a notebook. `invented` marks a demo: every page that shows its data says so. */
  "notebook-begun": z.looseObject({
    name: z.string().min(1),
    invented: z.boolean().optional(),
    seed: z.string().optional(),
  }),
  /** People are ids; the name they show can be withdrawn. */
  "person-named": z.looseObject({ person: z.string(), name: z.string() }),
  happening: z.looseObject({ what: z.enum(happenings), note: z.string().optional() }),
  "default-changed": z.looseObject({ name: z.string(), value: z.unknown(), was: z.unknown().optional() }),
  decision: z.looseObject({ text: z.string() }),
  photograph: z.looseObject({
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    type: z.string(),
    bytes: z.int().min(1),
    note: z.string().optional(),
    /** The board's name, where the thing is a trial. */
    board: z.string().optional(),
  }),
  note: z.looseObject({ text: z.string() }),
  /** Strikes and does nothing else; undo is this. */
  struck: z.looseObject({ why: z.string().optional() }),
  /** The bodies of these entries are dropped everywhere; id, kind, times and hash stay. */
  withdrawn: z.looseObject({ entries: z.array(idSchema).min(1), why: z.string().optional() }),
} as const;
