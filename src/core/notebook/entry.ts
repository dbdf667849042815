import { z } from "zod";

/** Lower-case UUID text. New ids are version 7, made where the entry is written. */
export const idSchema = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/, "an id is a lower-case UUID");

export const knownTo = ["minute", "hour", "day", "unknown"] as const;
export type KnownTo = (typeof knownTo)[number];

const instant = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,9})?Z$/, "an instant is UTC, as 2026-10-05T18:30:00Z");

/**
 * The envelope that every entry wears, whatever its kind. Unknown fields are kept: an entry written by a later
 * version goes through this one unchanged.
 *
 * A thing (a jar's contents, a board, a trial) has the id of the entry that made it; `about` names every thing the
 * entry touches, so that a page folds and a server fetches by it.
 */
export const entrySchema = z.looseObject({
  id: idSchema,
  notebook: idSchema,
  kind: z.string().min(1),
  /** Version of the kind's body, whole, from 1. */
  schema: z.int().min(1),
  device: idSchema,
  /** 1, 2, 3 … on each device, so that a gap shows. */
  seq: z.int().min(1),
  /** Who is signed in; null where nobody signs in. */
  by: z.string().nullable(),
  /** Whose hands, when others worked. */
  for: z.array(z.string()).optional(),
  happened: instant,
  happenedKnownTo: z.enum(knownTo),
  /** IANA name, `Europe/Berlin`. */
  zone: z.string().min(1),
  recorded: instant,
  about: z.array(idSchema),
  strikes: z.array(idSchema),
  /** Written afterwards from memory. */
  remembered: z.boolean().optional(),
  body: z.looseObject({}),
});
export type NotebookEntryInput = z.input<typeof entrySchema>;
export type NotebookEntry = z.output<typeof entrySchema>;

/** An entry with the exact text in which it came: what is stored, sent and exported is this text, byte for byte. */
export interface KeptEntry {
  readonly entry: NotebookEntry;
  readonly text: string;
}
