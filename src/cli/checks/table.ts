import Papa from "papaparse";
import type { Tolerance, ToleranceTable } from "./tolerance.ts";
import { type CheckCase, type Context, NotReadable, type Row, type TableAdapter } from "./topic.ts";

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
}

/** Reads comma-separated text with a header line; cells stay text. Throws `NotReadable` for text that is not such a table. */
export function readTable(text: string): Table {
  const { data, meta, errors } = Papa.parse<Row>(text.trim(), {
    header: true,
    skipEmptyLines: true,
    delimiter: ",",
  });
  const [first] = errors;
  if (first !== undefined) throw new NotReadable(`row ${(first.row ?? 0) + 1}: ${first.message}`);
  return { columns: meta.fields ?? [], rows: data };
}

/** The number in a cell; a cell without one is an error, never zero. */
export function numberIn(row: Row, column: string): number {
  const text = (row[column] ?? "").trim();
  const value = Number(text);
  if (text === "" || Number.isNaN(value)) throw new Error(`${column} is "${text}", which is not a number`);
  return value;
}

const valueIn = (cell: string): unknown => (Number.isNaN(Number(cell)) ? cell : Number(cell));

interface PerRow {
  /** Columns that the calculation reads. */
  readonly inputs: readonly string[];
  /** Columns compared with what is computed under the same names, each with its tolerance. */
  readonly expected: Readonly<Record<string, Tolerance | ((row: Row) => Tolerance)>>;
  /** Columns that may be there and are neither. */
  readonly others?: readonly (string | RegExp)[];
  /** What an empty expected cell says: that there is nothing to compare (as usual), or that no such number exists. */
  readonly empty?: "not compared" | "absent";
  readonly id?: (row: Row) => string;
  /** Why a row is shown and not compared. */
  readonly shown?: (row: Row) => string | undefined;
  readonly compute: (row: Row, context: Context) => unknown;
}

/** A table in which every row is a case of its own. */
export const perRow = (spec: PerRow): TableAdapter => ({
  columns: [...spec.inputs, ...Object.keys(spec.expected), ...(spec.others ?? [])],
  needs: spec.inputs,
  cases: (rows, context) => rows.map((row, i) => caseOfRow(spec, row, i, context)),
});

function caseOfRow(spec: PerRow, row: Row, index: number, context: Context): CheckCase {
  const expected: Record<string, unknown> = {};
  const tol: Record<string, Tolerance> = {};
  for (const [column, tolerance] of Object.entries(spec.expected)) {
    const cell = row[column]?.trim();
    if (cell === undefined || (cell === "" && spec.empty !== "absent")) continue;
    expected[column] = cell === "" ? null : valueIn(cell);
    tol[column] = typeof tolerance === "function" ? tolerance(row) : tolerance;
  }
  const shown = spec.shown?.(row) ?? (Object.keys(expected).length === 0 ? "nothing to compare" : undefined);
  const id = spec.id?.(row) ?? `row ${index + 1} (${spec.inputs.map((c) => row[c]).join(", ")})`;
  const table: ToleranceTable = tol;
  return {
    id,
    expected,
    tol: table,
    ...(shown === undefined ? {} : { shown }),
    compute: () => spec.compute(row, context),
  };
}
