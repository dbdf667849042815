const number = (x) => String(Number(x.toPrecision(6)));
/** zod's own bounds of a whole number are not a limit that a person meets. */
const isLimit = (x) => typeof x === "number" && Math.abs(x) < Number.MAX_SAFE_INTEGER;

const or = (texts) => [...new Set(texts.filter((t) => t !== ""))].join(" or ");

function kindOf(schema) {
  if (schema.anyOf !== undefined) return or(schema.anyOf.map(kindOf));
  if (schema.enum !== undefined) return "one of the names";
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.type === "array")
    return schema.items === undefined ? "list" : `list of: ${kindOf(schema.items)}`;
  if (schema.type === "integer") return "whole number";
  if (schema.type === "boolean") return "true or false";
  return { string: "text", number: "number", null: "null", object: "object" }[schema.type] ?? "any";
}

function limitsOf(schema) {
  if (schema.anyOf !== undefined) return or(schema.anyOf.map(limitsOf));
  if (schema.enum !== undefined) return schema.enum.map((name) => `\`${name}\``).join(" ");
  if (schema.type === "array") return listLimits(schema);
  const parts = [
    isLimit(schema.minimum) ? `${number(schema.minimum)} or more` : "",
    isLimit(schema.exclusiveMinimum) ? `more than ${number(schema.exclusiveMinimum)}` : "",
    isLimit(schema.maximum) ? `at most ${number(schema.maximum)}` : "",
    isLimit(schema.exclusiveMaximum) ? `less than ${number(schema.exclusiveMaximum)}` : "",
  ];
  const given = schema.default === undefined ? "" : `${JSON.stringify(schema.default)} when left out`;
  return [...parts, given].filter((t) => t !== "").join(", ");
}

function listLimits({ items, minItems, maxItems }) {
  const count = [
    minItems === undefined ? "" : `${minItems} or more of them`,
    maxItems === undefined ? "" : `at most ${maxItems} of them`,
  ];
  const each =
    items === undefined || items.type === "object" || items.anyOf !== undefined ? "" : limitsOf(items);
  return [...count, each].filter((t) => t !== "").join(", ");
}

const row = (path, schema, isRequired) => ({
  path,
  kind: kindOf(schema),
  limits: limitsOf(schema),
  meaning: schema.description ?? "",
  isRequired,
});

/** The fields inside a value, each as a row; those of alternatives one after another, said once. */
function inside(path, schema) {
  if (schema.anyOf !== undefined) return schema.anyOf.flatMap((one) => inside(path, one));
  if (schema.type === "array") return schema.items === undefined ? [] : inside(`${path}[]`, schema.items);
  const { properties = {}, required = [], additionalProperties } = schema;
  const named = Object.entries(properties).flatMap(([key, inner]) => {
    const at = path === "" ? key : `${path}.${key}`;
    return [row(at, inner, required.includes(key)), ...inside(at, inner)];
  });
  if (typeof additionalProperties !== "object" || Object.keys(additionalProperties).length === 0)
    return named;
  const at = `${path}.…`;
  return [...named, row(at, additionalProperties, false), ...inside(at, additionalProperties)];
}

/** Every field of a JSON Schema: path, kind, limits, meaning, and whether it must be there. */
export function fieldsOf(schema) {
  const seen = new Map();
  for (const field of inside("", schema)) if (!seen.has(field.path)) seen.set(field.path, field);
  return [...seen.values()];
}
