import { calculationNamed, calculations } from "../core/registry/all.ts";
import { type Calculation, calculate } from "../core/registry/calculation.ts";
import { jsonSchemaOf } from "../core/registry/json-schema.ts";
import { problemFromDomain } from "../core/registry/problem.ts";
import { readJson } from "../core/registry/read-json.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import type { Effects } from "./effects.ts";

export const command = defineCommand({
  usage: "calc [NAME] < in.json",
  positionals: 1,
  alwaysJson: true,
  options: {
    schema: { type: "boolean", description: "the JSON Schema of the input and the output of NAME" },
  },
  async run({ values, positionals }, effects) {
    const [name] = positionals;
    if (name === undefined) return list(values.json === true, effects);
    const calculation = named(name);
    if (values.schema === true) return print(jsonSchemaOf(calculation), effects);
    const input = readJson(await effects.stdin());
    if (!input.ok) throw refused(input.error);
    const result = calculate(calculation, input.value);
    if (!result.ok) throw refused(result.error);
    print(result.value, effects);
  },
});

function list(asJson: boolean, effects: Effects): void {
  const rows = calculations.map(({ name, purpose }) => ({ name, purpose }));
  const width = Math.max(0, ...rows.map((row) => row.name.length));
  if (asJson) print(rows, effects);
  else for (const row of rows) effects.stdout(`${row.name.padEnd(width)}  ${row.purpose}\n`);
}

function named(name: string): Calculation {
  const found = calculationNamed(name);
  if (found !== undefined) return found;
  const allowed = calculations.map((c) => c.name);
  throw refused(
    problemFromDomain({ code: "unknown-name", field: "calculation", value: name, limits: { allowed } }),
  );
}

const print = (value: unknown, effects: Effects): void =>
  effects.stdout(`${JSON.stringify(value, null, 2)}\n`);
