import type { z } from "zod";
import { problemFromIssues } from "../registry/calculation.ts";
import { entrySchema, type NotebookEntry, type Understanding } from "./entry.ts";
import { isKnownKind, kinds } from "./kinds/all.ts";

/** The body schema that this version has for a kind: all day-one kinds are at schema 1. */
const knownSchema = 1;

const bodySchemas = kinds as Readonly<Record<string, z.ZodObject>>; // indexed after `isKnownKind`
const envelopeFields = new Set(Object.keys(entrySchema.shape));

function unknownFields(entry: NotebookEntry, body: z.ZodObject): string[] {
  const unknown: string[] = [];
  for (const field in entry) if (!envelopeFields.has(field)) unknown.push(field);
  for (const field in entry.body) if (!(field in body.shape)) unknown.push(`body.${field}`);
  return unknown;
}

/**
 * What this version makes of an entry: understood, of a kind or schema that it does not know, or with a body that is not
 * what its kind promises.
 */
export function understand(entry: NotebookEntry): Understanding {
  if (!isKnownKind(entry.kind)) return { as: "not-understood", unknown: "kind" };
  if (entry.schema !== knownSchema) return { as: "not-understood", unknown: "schema" };
  const schema = bodySchemas[entry.kind] as z.ZodObject;
  if (entry.withdrawn !== undefined) return { as: "understood", unknownFields: [] };
  const read = schema.safeParse(entry.body);
  if (read.success) return { as: "understood", unknownFields: unknownFields(entry, schema) };
  const issues = read.error.issues.map((issue) => ({ ...issue, path: ["body", ...issue.path] }));
  return { as: "unusable", problem: problemFromIssues(issues, entry) };
}
