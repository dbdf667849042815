import { fieldsOf } from "./fields.mjs";

/** Six digits are what an example shows; more would differ from one machine to another. */
const rounded = (value) => {
  if (typeof value === "number") return Number(value.toPrecision(6));
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, rounded(inner)]));
};

const cell = (text) => text.replaceAll("|", "\\|").replaceAll("\n", " ");
const table = (head, rows) =>
  [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.map(cell).join(" | ")} |`).join("\n");

const inputTable = (schema) =>
  table(
    ["Field", "Kind", "Limits", "Meaning"],
    fieldsOf(schema).map((f) => [
      `\`${f.path}\`${f.isRequired ? " (needed)" : ""}`,
      f.kind,
      f.limits,
      f.meaning,
    ]),
  );
const outputTable = (schema) =>
  table(
    ["Field", "Kind", "Meaning"],
    fieldsOf(schema).map((f) => [`\`${f.path}\`${f.isRequired ? "" : " (if any)"}`, f.kind, f.meaning]),
  );

const json = (value) => `\`\`\`json\n${JSON.stringify(value, null, 2)}\n\`\`\``;

function section(calculation, { calculate, jsonSchemaOf }) {
  const { name, purpose, sources, example } = calculation;
  const result = calculate(calculation, example.input);
  if (!result.ok) throw new Error(`The example of ${name} is refused: ${result.error.message}`);
  const schema = jsonSchemaOf(calculation);
  return [
    `## ${name}`,
    purpose,
    `\`lacbench calc ${name} < in.json\` · \`POST /api/calc/${name}\` · \`calculationNamed("${name}")\``,
    `For example\n\n${json(example.input)}\n\ngives\n\n${json(rounded(result.value))}`,
    `### What ${name} takes\n\n${inputTable(schema.input)}`,
    `### What ${name} gives\n\n${outputTable(schema.output)}`,
    `### Sources of ${name}\n\n${sources.map((source) => `- ${source}`).join("\n")}`,
  ].join("\n\n");
}

const introduction = `# Calculations

Every calculation here can be had in four ways that give the same answers: as a function, on the command line, over
HTTP, and in the pages. Units stand at the end of a field's name: \`G\` gram, \`Ml\` millilitre, \`C\` °C, \`Um\` µm,
\`LbPerGal\` pound of dry resin per US gallon of solvent. Fractions are 0 to 1. A field that is not listed is refused
by name. A result outside the range of its source says so in \`flags\`. Nothing here is a permission: a figure on a
hazard is an estimate, not a clearance, and the supplier's safety data sheet comes first.

This page is made by \`node scripts/reference-page.mjs\` from the calculations themselves.`;

/** The reference page, in Markdown, of the registered calculations. */
export function referencePage(calculations, core) {
  const list = table(
    ["Calculation", "Purpose"],
    calculations.map(({ name, purpose }) => [`[${name}](#${name})`, purpose]),
  );
  return `${[introduction, list, ...calculations.map((c) => section(c, core))].join("\n\n")}\n`;
}

/** What the page prints of one calculation: the fields that it takes, its example's input and the output as printed. */
export function readSection(page, name) {
  const start = page.indexOf(`\n## ${name}\n`);
  if (start < 0) return undefined;
  const end = page.indexOf("\n## ", start + 1);
  const text = page.slice(start, end < 0 ? undefined : end);
  const [input, output] = [...text.matchAll(/```json\n([\s\S]*?)\n```/g)].map(([, body]) => JSON.parse(body));
  const takes = text.slice(text.indexOf(`### What ${name} takes`), text.indexOf(`### What ${name} gives`));
  return { input, output, fields: [...takes.matchAll(/^\| `([^`]+)`/gm)].map(([, path]) => path) };
}
