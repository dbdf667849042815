import { problemFromIssues } from "../registry/calculation.ts";
import type { Problem } from "../registry/problem.ts";
import { fail, ok, type Result } from "../result.ts";
import { entrySchema, type KeptEntry, type NotebookEntry } from "./entry.ts";
import { readShallowJson } from "./json-text.ts";
import { understand } from "./understanding.ts";

/**
 * Reads an entry that was kept before: by a store, a server or an export. The envelope must be right; a body that this
 * version cannot use is kept and marked, since it may come from a version that can.
 *
 * @param text  the entry's JSON; it is kept as it stands
 * @returns     the entry with its text, or what is wrong with the envelope
 */
export function readKeptEntry(text: string): Result<KeptEntry, Problem> {
  const json = readShallowJson(text);
  if (!json.ok) return json;
  const read = entrySchema.safeParse(json.value);
  if (!read.success) return fail(problemFromIssues(read.error.issues, json.value));
  const entry = json.value as NotebookEntry; // checked above; the schema changes nothing, and a copy would cost
  return ok({ entry, text, understanding: understand(entry) });
}

/**
 * Reads an entry that this device looked at when it kept it, and kept for itself alone: nothing is checked again.
 *
 * @param text  the entry's JSON as it was kept
 * @returns     the entry with its text; what it is understood as is worked out when a view looks
 */
export const readOwnEntry = (text: string): KeptEntry => ({ entry: JSON.parse(text) as NotebookEntry, text });

/** Some hundred times what the largest of them, a trial's layout, takes. */
export const longestEntry = 2 ** 20;

const tooLong = (text: string): Problem => ({
  code: "too-large",
  field: "entry",
  message: `An entry of ${text.length} characters is too long. ${longestEntry} or fewer would do.`,
  value: text.length,
  limits: { max: longestEntry },
});

/**
 * Reads an entry at a door, where it is new: besides the envelope, the body of a known kind at a known schema must have
 * its shape, and the text must not be over long. Unknown kinds, unknown fields and higher schemas pass, and stay as they are in the text.
 *
 * @param text  the entry's JSON; it is kept as it stands
 * @returns     the entry with its text, or the first thing wrong with it
 */
export function parseEntry(text: string): Result<KeptEntry, Problem> {
  if (text.length > longestEntry) return fail(tooLong(text));
  const kept = readKeptEntry(text);
  if (kept.ok && kept.value.understanding?.as === "unusable") return fail(kept.value.understanding.problem);
  return kept;
}
