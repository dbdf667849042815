import type { Factor, ModelData } from "../../core/statistics/model/model-matrix.ts";
import { type Context, type Json, NotReadable, type Row } from "./topic.ts";

/** The part of a case that says which columns of its data mean what. */
export interface CaseModel {
  readonly response: string | undefined;
  readonly transform: "log" | "sqrt" | null;
  readonly terms: readonly string[];
  readonly strata: readonly string[];
  readonly factors: Readonly<Record<string, readonly string[]>>;
  readonly numeric: readonly string[];
  readonly compare: string | undefined;
  readonly control: string | undefined;
  readonly weights: string | null;
  readonly time: Readonly<Record<string, string>>;
  readonly rows: Readonly<Record<string, unknown>>;
}

const texts = (x: unknown): string[] => (Array.isArray(x) ? x.map(String) : []);
const optionalText = (x: unknown): string | undefined => (typeof x === "string" ? x : undefined);

export function modelOf(given: Json): CaseModel {
  const model = (given.model ?? {}) as Json;
  const { transform = null } = model;
  if (transform !== null && transform !== "log" && transform !== "sqrt")
    throw new NotReadable(`model.transform ${String(transform)} is not known`);
  const factors = (model.factors ?? {}) as Record<string, unknown>;
  return {
    response: optionalText(model.response),
    transform,
    terms: texts(model.terms),
    strata: texts(model.strata),
    factors: Object.fromEntries(Object.entries(factors).map(([name, levels]) => [name, texts(levels)])),
    numeric: texts(model.numeric),
    compare: optionalText(model.compare),
    control: optionalText(model.control),
    weights: optionalText(model.weights) ?? null,
    time: (model.time ?? {}) as Record<string, string>,
    rows: (model.rows ?? {}) as Record<string, unknown>,
  };
}

/** The case's rows (beside it as `data`, or in it as `rows`), of which those are kept that its model asks for. */
export function rowsOf(given: Json, model: CaseModel, context: Context): readonly Row[] {
  const inline = Array.isArray(given.rows) ? (given.rows as Json[]).map(asText) : undefined;
  if (inline === undefined && typeof given.data !== "string") throw new NotReadable("the case names no data");
  const rows = inline ?? context.rows(String(given.data));
  return rows.filter((row) =>
    Object.entries(model.rows).every(([column, wanted]) => row[column]?.trim() === String(wanted)),
  );
}

const asText = (row: Json): Row =>
  Object.fromEntries(
    Object.entries(row).map(([column, value]) => [column, value === null ? "" : String(value)]),
  );

export function cell(row: Row, column: string): string {
  const text = row[column];
  if (text === undefined) throw new NotReadable(`the data have no column ${column}`);
  return text.trim();
}

export function numberCell(row: Row, column: string): number {
  const text = cell(row, column);
  const value = Number(text);
  if (text === "" || !Number.isFinite(value))
    throw new NotReadable(`${column} holds "${text}", not a number`);
  return value;
}

export function responseOf(rows: readonly Row[], model: CaseModel): number[] {
  const column = model.response;
  if (column === undefined) throw new NotReadable("model.response is missing");
  const values = rows.map((row) => numberCell(row, column));
  if (model.transform === null) return values;
  return values.map(model.transform === "log" ? Math.log : Math.sqrt);
}

function factorOf(rows: readonly Row[], name: string, levels: readonly string[] | undefined): Factor {
  const values = rows.map((row) => cell(row, name));
  const known = levels ?? [...new Set(values)];
  const strange = values.find((value) => !known.includes(value));
  if (strange !== undefined) throw new NotReadable(`${name} holds ${strange}, which is not among its levels`);
  return { levels: known, values };
}

/** The variables of the model's terms and strata; what is not listed as numeric is a factor. */
export function modelDataOf(rows: readonly Row[], model: CaseModel): ModelData {
  const names = [...new Set([...model.terms, ...model.strata].flatMap((term) => term.split(":")))];
  const numeric = names.filter((name) => model.numeric.includes(name));
  const factors = names.filter((name) => !numeric.includes(name));
  return {
    rows: rows.length,
    factors: Object.fromEntries(factors.map((name) => [name, factorOf(rows, name, model.factors[name])])),
    numeric: Object.fromEntries(numeric.map((name) => [name, rows.map((row) => numberCell(row, name))])),
  };
}
