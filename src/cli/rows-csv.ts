import { refused } from "./cli-error.ts";
import { type Cells, readTable } from "./read-table.ts";

/** Columns that say where and how a value was read; every other column is something that varied. */
const known = ["patch", "jar", "plank", "block", "judge", "occasion", "daysSinceCoat", "value"] as const;

/** The rows of a verdict from a table with a header line: each column that is not about the reading is a factor. */
export function rowsFromCsv(text: string, file: string): readonly unknown[] {
  const { columns, rows } = readTable(text, file, ["patch", "value"], known);
  const factors = columns.filter((column) => !known.some((k) => k === column));
  return rows.map((cells, i) => rowOf(cells, factors, i));
}

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
