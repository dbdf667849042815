import { z } from "zod";

/** A piece of an OpenAPI document. */
export type Json = Readonly<Record<string, unknown>>;

/** Without the dialect's name, which an OpenAPI 3.1 document states once for all. */
export function bare(schema: Json): Json {
  const { $schema: _, ...rest } = schema;
  return rest;
}
export const schemaOf = (schema: z.ZodType): Json =>
  bare(z.toJSONSchema(schema, { io: "input", unrepresentable: "any" }));
export const refTo = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });
export const json = (schema: Json, example?: unknown): Json => ({
  "application/json": { schema, ...(example === undefined ? {} : { example }) },
});
export const answer = (description: string, schema: Json): Json => ({ description, content: json(schema) });
export const problem = (description: string): Json => ({
  description,
  content: { "application/problem+json": { schema: refTo("Problem") } },
});
export const parameter = (
  name: string,
  where: "path" | "query",
  schema: Json,
  description: string,
): Json => ({
  ...{ name, in: where, required: where === "path", schema, description },
});

export const unreadable = problem("The body cannot be read.");
export const refused = problem("The input can be read and is refused.");
export const tooLarge = (bytes: number): Json => problem(`The body has more than ${bytes} bytes.`);
export const absent = problem("There is no such thing here.");
