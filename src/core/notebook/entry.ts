import { z } from "zod";
import type { Problem } from "../registry/problem.ts";

/** Lower-case UUID text. New ids are version 7, made where the entry is written. */
export const idSchema = z
  .string()
  .regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/, "an id is a lower-case UUID");

export const sha256Schema = z
  .string()
  .regex(/^[0-9a-f]{64}$/, "a SHA-256 is 64 lower-case hexadecimal digits");

export const knownTo = ["minute", "hour", "day", "unknown"] as const;
export type KnownTo = (typeof knownTo)[number];

const daysIn = (year: number, month: number): number => {
  if (month !== 2) return [4, 6, 9, 11].includes(month) ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
};

export const instantSchema = z
  .string()
  .regex(
    /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,9})?Z$/,
    "an instant is UTC, as 2026-10-05T18:30:00Z",
  )
  .refine(
    (text) => Number(text.slice(8, 10)) <= daysIn(Number(text.slice(0, 4)), Number(text.slice(5, 7))),
    "that month has no such day",
  );

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
  happened: instantSchema,
  happenedKnownTo: z.enum(knownTo),
  /** IANA name, `Europe/Berlin`. */
  zone: z.string().min(1),
  recorded: instantSchema,
  about: z.array(idSchema),
  strikes: z.array(idSchema),
  /** Written afterwards from memory. */
  remembered: z.boolean().optional(),
  /** On the stub of an entry whose text was withdrawn: the SHA-256 of that text. Its body is empty. */
  withdrawn: z.looseObject({ sha256: sha256Schema }).optional(),
  body: z.looseObject({}),
});
export type NotebookEntry = z.output<typeof entrySchema>;

/**
 * What this version makes of an entry. All three are kept for ever; only an understood one is handed to views, since
 * only its body is known to have the shape that its kind promises.
 */
export type Understanding =
  | { readonly as: "understood"; readonly unknownFields: readonly string[] }
  | { readonly as: "not-understood"; readonly unknown: "kind" | "schema" }
  | { readonly as: "unusable"; readonly problem: Problem };

/** An entry with the exact text in which it came: what is stored, sent and exported is this text, byte for byte. */
export interface KeptEntry {
  readonly entry: NotebookEntry;
  readonly text: string;
  /** What was made of it when it was read; worked out again where absent. */
  readonly understanding?: Understanding;
}
