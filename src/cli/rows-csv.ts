import Papa from "papaparse";
import { refused } from "./cli-error.ts";

type Cells = Readonly<Record<string, string>>;

/** Columns that say where and how a value was read; every other column is something that varied. */
const known = ["patch", "jar", "plank", "block", "judge", "occasion", "daysSinceCoat", "value"] as const;

/** The rows of a verdict from a table with a header line: each column that is not about the reading is a factor. */
export function rowsFromCsv(text: string, file: string): readonly unknown[] {
  const { data, meta, errors } = Papa.parse<Cells>(text.trim(), { header: true, skipEmptyLines: true });
  const [first] = errors.filter((e) => e.type !== "Delimiter");
  if (first !== undefined) throw unreadable(file, `Row ${(first.row ?? 0) + 1}: ${first.message}.`);
  const missing = ["patch", "value"].find((column) => !(meta.fields ?? []).includes(column));
  if (missing !== undefined)
    throw refused({
      code: "missing",
      field: missing,
      message: `${file} has no column "${missing}". It has ${(meta.fields ?? []).join(", ")}.`,
      value: null,
      limits: { allowed: known },
    });
  const factors = (meta.fields ?? []).filter((column) => !known.some((k) => k === column));
  return data.map((cells, i) => rowOf(cells, factors, i));
}

const unreadable = (file: string, because: string) =>
  refused({
    code: "unreadable",
    field: file,
    message: `${file} cannot be read as a table. ${because}`,
    value: null,
    limits: null,
  });

function rowOf(cells: Cells, factors: readonly string[], i: number): unknown {
  const text = (column: string) => (cells[column] ?? "").trim();
  const optional = (column: string) => (text(column) === "" ? {} : { [column]: text(column) });
  return {
    patch: text("patch"),
    ...optional("jar"),
    ...optional("plank"),
    ...optional("block"),
    ...optional("judge"),
    ...optional("occasion"),
    ...(text("daysSinceCoat") === "" ? {} : { daysSinceCoat: numberIn(text("daysSinceCoat"), i) }),
    factors: Object.fromEntries(factors.map((f) => [f, text(f)])),
    value: readValue(text("value")),
  };
}

function numberIn(text: string, i: number): number {
  const value = Number(text);
  if (Number.isFinite(value)) return value;
  throw refused({
    code: "not-a-number",
    field: `rows[${i}].daysSinceCoat`,
    message: `rows[${i}].daysSinceCoat is ${text}, which is not a number.`,
    value: text,
    limits: null,
  });
}

/** A number where it is one, a step's word where not, nothing where nothing was read. */
const readValue = (text: string): number | string | null =>
  text === "" ? null : Number.isFinite(Number(text)) ? Number(text) : text;
