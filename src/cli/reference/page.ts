import { type Calculation, calculate } from "../../core/registry/calculation.ts";
import { jsonSchemaOf } from "../../core/registry/json-schema.ts";
import { fieldsOf, type JsonSchema } from "./fields.ts";
import { unitOf } from "./unit-of.ts";

/** Six digits are what an example shows; more would differ from one machine to another. */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Number(value.toPrecision(6));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, rounded(inner)]));
}

/** What the example of a calculation gives, as the page prints it. Throws where the example is refused. */
export function exampleOutput(calculation: Calculation): unknown {
  const result = calculate(calculation, calculation.example.input);
  if (!result.ok) throw new Error(`The example of ${calculation.name} is refused: ${result.error.message}`);
  return JSON.parse(JSON.stringify(rounded(result.value)));
}

const cell = (text: string): string => text.replaceAll("|", "\\|").replaceAll("\n", " ");
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.map(cell).join(" | ")} |`).join("\n");

const inputTable = (schema: JsonSchema): string =>
  table(
    ["Field", "Kind", "Unit", "Limits", "Meaning"],
    fieldsOf(schema).map((f) => [
      `\`${f.path}\`${f.isRequired ? " (needed)" : ""}`,
      f.kind,
      unitOf(f.path),
      f.limits,
      f.meaning,
    ]),
  );
const outputTable = (schema: JsonSchema): string =>
  table(
    ["Field", "Kind", "Unit", "Meaning"],
    fieldsOf(schema).map((f) => [
      `\`${f.path}\`${f.isRequired ? "" : " (if any)"}`,
      f.kind,
      unitOf(f.path),
      f.meaning,
    ]),
  );

const json = (value: unknown): string => `\`\`\`json\n${JSON.stringify(value, null, 2)}\n\`\`\``;

const takes = (name: string): string => `### What ${name} takes`;
const gives = (name: string): string => `### What ${name} gives`;

function section(calculation: Calculation): string {
  const { name, purpose, sources, example } = calculation;
  const schema = jsonSchemaOf(calculation);
  return [
    `## ${name}`,
    purpose,
    `\`lacbench calc ${name} < in.json\` · \`POST /api/calc/${name}\` · \`calculationNamed("${name}")\``,
    `For example\n\n${json(example.input)}\n\ngives\n\n${json(exampleOutput(calculation))}`,
    `${takes(name)}\n\n${inputTable(schema.input)}`,
    `${gives(name)}\n\n${outputTable(schema.output)}`,
    `### Sources of ${name}\n\n${sources.map((source) => `- ${source}`).join("\n")}`,
  ].join("\n\n");
}

const introduction = `# Calculations

Every calculation here can be had as a function, on the command line and over HTTP, with the same answers; this page
is the fourth way to one. Units stand at the end of a field's name; \`LbPerGal\` is pounds of dry resin to a US gallon of
solvent. A field that is not listed is refused by name. A result outside the range of its source says so in \`flags\`.
Nothing here is a permission: a figure on a hazard is an estimate, not a clearance, and the supplier's safety data
sheet comes first.

This page is made by \`node scripts/reference-page.mjs\` from the calculations themselves.`;

/** The reference page, in Markdown, of the registered calculations. */
export function referencePage(calculations: readonly Calculation[]): string {
  const list = table(
    ["Calculation", "Purpose"],
    calculations.map(({ name, purpose }) => [`[${name}](#${name})`, purpose]),
  );
  return `${[introduction, list, ...calculations.map(section)].join("\n\n")}\n`;
}

export interface PrintedSection {
  /** Everything that is printed of one calculation. */
  readonly text: string;
  readonly input: unknown;
  readonly output: unknown;
  /** The paths of the fields that it takes. */
  readonly fields: readonly string[];
}

/** What a page prints of one calculation; undefined where it does not have it. */
export function readSection(page: string, name: string): PrintedSection | undefined {
  const start = page.indexOf(`\n## ${name}\n`);
  if (start < 0) return undefined;
  const end = page.indexOf("\n## ", start + 1);
  const text = page.slice(start, end < 0 ? undefined : end);
  const [input, output] = [...text.matchAll(/```json\n([\s\S]*?)\n```/g)].map(([, body]) =>
    JSON.parse(body ?? ""),
  );
  const fields = text.slice(text.indexOf(takes(name)), text.indexOf(gives(name)));
  return {
    text,
    input,
    output,
    fields: [...fields.matchAll(/^\| `([^`]+)`/gm)].map(([, path]) => path ?? ""),
  };
}
