import { z } from "zod";

interface Schema {
  readonly anyOf?: readonly Schema[];
  readonly items?: Schema;
  readonly properties?: Readonly<Record<string, Schema>>;
}

/** One step into a value, through every form that it may have. */
function into(schema: Schema, key: PropertyKey): readonly Schema[] {
  if (schema.anyOf !== undefined) return schema.anyOf.flatMap((one) => into(one, key));
  const inner = typeof key === "number" ? schema.items : schema.properties?.[String(key)];
  return inner === undefined ? [] : [inner];
}

const namesOf = (schema: Schema): readonly string[] =>
  schema.anyOf === undefined ? Object.keys(schema.properties ?? {}) : schema.anyOf.flatMap(namesOf);

/** The names of the fields that an input of this shape may have at a path. */
export function namesAt(input: z.ZodType, path: readonly PropertyKey[]): readonly string[] {
  const start = [z.toJSONSchema(input, { io: "input", unrepresentable: "any" }) as Schema];
  const there = path.reduce<readonly Schema[]>(
    (here, key) => here.flatMap((schema) => into(schema, key)),
    start,
  );
  return [...new Set(there.flatMap(namesOf))];
}
