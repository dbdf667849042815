/** The part of JSON Schema that the calculations' schemas use. */
export interface JsonSchema {
  readonly type?: string | readonly string[];
  readonly anyOf?: readonly JsonSchema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly items?: JsonSchema;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: JsonSchema | boolean;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly default?: unknown;
  readonly description?: string;
}

export interface Field {
  /** `solvent.parts[].massShare`; `…` stands for a key that the caller chooses. */
  readonly path: string;
  readonly kind: string;
  readonly limits: string;
  readonly meaning: string;
  readonly isRequired: boolean;
}

const number = (x: number): string => String(Number(x.toPrecision(6)));
/** The schema library's own bounds of a whole number are not a limit that a person meets. */
const isLimit = (x: number | undefined): x is number =>
  x !== undefined && Math.abs(x) < Number.MAX_SAFE_INTEGER;
const joined = (texts: readonly string[], by: string): string =>
  [...new Set(texts.filter((text) => text !== ""))].join(by);

const simpleKinds: Readonly<Record<string, string>> = {
  string: "text",
  number: "number",
  integer: "whole number",
  boolean: "true or false",
  object: "object",
  null: "null",
};

function kindOf(schema: JsonSchema): string {
  if (schema.anyOf !== undefined) return joined(schema.anyOf.map(kindOf), " or ");
  if (schema.enum !== undefined) return "one of the names";
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.type === "array")
    return schema.items === undefined ? "list" : `list of: ${kindOf(schema.items)}`;
  const types = typeof schema.type === "string" ? [schema.type] : (schema.type ?? []);
  return (
    joined(
      types.map((type) => simpleKinds[type] ?? type),
      " or ",
    ) || "any"
  );
}

function limitsOf(schema: JsonSchema): string {
  if (schema.anyOf !== undefined) return joined(schema.anyOf.map(limitsOf), " or ");
  if (schema.enum !== undefined) return schema.enum.map((name) => `\`${String(name)}\``).join(" ");
  const { minimum, exclusiveMinimum, maximum, exclusiveMaximum, minItems, maxItems, items } = schema;
  const parts = [
    isLimit(minimum) ? `${number(minimum)} or more` : "",
    isLimit(exclusiveMinimum) ? `more than ${number(exclusiveMinimum)}` : "",
    isLimit(maximum) ? `at most ${number(maximum)}` : "",
    isLimit(exclusiveMaximum) ? `less than ${number(exclusiveMaximum)}` : "",
    minItems === undefined ? "" : `${minItems} or more of them`,
    maxItems === undefined ? "" : `at most ${maxItems} of them`,
    items === undefined || items.type === "object" || items.anyOf !== undefined ? "" : limitsOf(items),
    schema.default === undefined ? "" : `${JSON.stringify(schema.default)} when left out`,
  ];
  return joined(parts, ", ");
}

const field = (path: string, schema: JsonSchema, isRequired: boolean): Field => ({
  path,
  kind: kindOf(schema),
  limits: limitsOf(schema),
  meaning: schema.description ?? "",
  isRequired,
});

/** The fields inside a value; those of alternatives one after another. */
function inside(path: string, schema: JsonSchema): readonly Field[] {
  if (schema.anyOf !== undefined) return insideAny(schema.anyOf.map((one) => inside(path, one)));
  if (schema.items !== undefined) return inside(`${path}[]`, schema.items);
  const { properties = {}, required = [], additionalProperties } = schema;
  const named = Object.entries(properties).flatMap(([key, inner]) => {
    const at = path === "" ? key : `${path}.${key}`;
    return [field(at, inner, required.includes(key)), ...inside(at, inner)];
  });
  if (typeof additionalProperties !== "object" || Object.keys(additionalProperties).length === 0)
    return named;
  const at = `${path}.…`;
  return [...named, field(at, additionalProperties, false), ...inside(at, additionalProperties)];
}

/** Of alternatives: a field is needed where every one of them needs it. */
function insideAny(alternatives: readonly (readonly Field[])[]): readonly Field[] {
  const needs = (fields: readonly Field[], path: string) =>
    fields.some((f) => f.path === path && f.isRequired);
  return alternatives.flat().map((f) => ({
    ...f,
    isRequired: f.isRequired && alternatives.every((fields) => needs(fields, f.path)),
  }));
}

/** Every field of a schema, each said once. */
export function fieldsOf(schema: JsonSchema): readonly Field[] {
  const seen = new Map<string, Field>();
  for (const found of inside("", schema)) if (!seen.has(found.path)) seen.set(found.path, found);
  return [...seen.values()];
}

const isObject = (x: unknown): x is Readonly<Record<string, unknown>> =>
  typeof x === "object" && x !== null && !Array.isArray(x);

/** The paths of the fields that a value has, as `fieldsOf` writes them. */
export function pathsIn(value: unknown, path = ""): readonly string[] {
  if (Array.isArray(value)) return [...new Set(value.flatMap((x) => pathsIn(x, `${path}[]`)))];
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const at = path === "" ? key : `${path}.${key}`;
    return [at, ...pathsIn(inner, at)];
  });
}

/** Whether a path is among the listed ones, where a listed `…` stands for any key. */
export function isListed(path: string, listed: readonly string[]): boolean {
  const parts = path.split(".");
  return listed.some((one) => {
    const other = one.split(".");
    return (
      other.length === parts.length && other.every((key, i) => key.replace("…", parts[i] ?? "") === parts[i])
    );
  });
}
