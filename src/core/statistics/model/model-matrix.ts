import { DomainError } from "../../domain-error.ts";
import type { Vector } from "../numeric/vector.ts";

/** What was varied: one level a row, and the levels in order with the baseline first. */
export interface Factor {
  readonly levels: readonly string[];
  readonly values: readonly string[];
}

export interface ModelData {
  readonly rows: number;
  readonly factors: Readonly<Record<string, Factor>>;
  readonly numeric?: Readonly<Record<string, readonly number[]>>;
}

export interface Column {
  /** The term that the column belongs to; `(Intercept)` for the first. */
  readonly term: string;
  /** Term and level, as in `tempwarm`, and `tempwarm:woodash` for an interaction. */
  readonly name: string;
  readonly values: Vector;
}

export const interceptTerm = "(Intercept)";

/** A factor from one label a row: levels in the order of code units, so that the order of rows does not matter. */
export function factorFrom(values: readonly string[]): Factor {
  return { levels: [...new Set(values)].sort(), values };
}

const parts = (term: string): string[] => term.split(":");
const sameParts = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((x) => b.includes(x));

/**
 * The columns of one variable within a term. A factor takes one column a level but the first when the term without
 * it is in the model too (the intercept for a main effect), and one for every level otherwise.
 */
function columnsOfPart(part: string, full: boolean, data: ModelData): Omit<Column, "term">[] {
  const numbers = data.numeric?.[part];
  if (numbers !== undefined) return [{ name: part, values: numbers }];
  const factor = data.factors[part];
  if (factor === undefined) throw new DomainError({ code: "unknown-name", field: "terms", value: part });
  return factor.levels.slice(full ? 0 : 1).map((level) => ({
    name: `${part}${level}`,
    values: factor.values.map((x) => (x === level ? 1 : 0)),
  }));
}

const product = (a: Omit<Column, "term">, b: Omit<Column, "term">): Omit<Column, "term"> => ({
  name: `${a.name}:${b.name}`,
  values: Array.from(a.values, (x, i) => x * (b.values[i] as number)),
});

function columnsOfTerm(term: string, terms: readonly string[], data: ModelData): Column[] {
  const mine = parts(term);
  const inModel = (margin: readonly string[]): boolean =>
    margin.length === 0 || terms.some((other) => sameParts(parts(other), margin));
  const each = mine.map((part) =>
    columnsOfPart(part, !inModel(mine.filter((other) => other !== part)), data),
  );
  const [first = [], ...rest] = each;
  const columns = rest.reduce((done, next) => next.flatMap((b) => done.map((a) => product(a, b))), first);
  return columns.map((column) => ({ term, ...column }));
}

/**
 * The model matrix by columns: an intercept, then each term's columns in the order given, factors coded against
 * their first level.
 *
 * @param terms  names of factors or numeric variables, `a:b` for an interaction
 * @param data   n rows
 * @returns      columns of n numbers
 * @throws DomainError for a name that is not in the data
 *
 * Source: J. M. Chambers and T. J. Hastie, Statistical Models in S (1992), 2.4, for the coding by margins
 */
export function modelColumns(terms: readonly string[], data: ModelData): Column[] {
  const intercept = { term: interceptTerm, name: interceptTerm, values: new Float64Array(data.rows).fill(1) };
  return [intercept, ...terms.flatMap((term) => columnsOfTerm(term, terms, data))];
}
