import { type AmountField, isAmountField, type JarField } from "../../../core/jar-import/fields.ts";
import { type ColumnMatch, proposeColumns } from "../../../core/jar-import/match-columns.ts";
import { dayOrderOf } from "../../../core/jar-import/read-day.ts";
import type { Table } from "../../../core/table.ts";

/** What the person put otherwise than it was proposed, by column. */
export type Choices = Readonly<
  Record<number, Partial<Pick<ColumnMatch, "field" | "unit" | "dayOrder">> | undefined>
>;

/** Units that the bare numbers of a column can be in. */
export const unitsOf: Readonly<Record<AmountField, readonly string[]>> = {
  "resin-amount": ["g", "kg", "oz", "lb"],
  "solvent-amount": ["ml", "l", "floz-us", "pt-us", "qt-us", "floz-imp", "g", "oz"],
  cut: ["lb-cut", "g-per-l"],
  makes: ["ml", "l", "floz-us", "pt-us", "qt-us"],
  left: ["ml", "l", "floz-us", "g", "oz"],
  strength: ["percent-vol", "percent-mass", "us-proof"],
};

const cellsOf = (table: Table, column: number): readonly string[] =>
  table.rows.map((row) => (row[column] ?? "").trim()).filter((cell) => cell !== "");

/** A column taken for something else than was proposed: its heading's unit no longer counts. */
function retaken(match: ColumnMatch, field: JarField | null, table: Table): ColumnMatch {
  if (field === match.field) return match;
  const dates = field === "mixed" ? dayOrderOf(cellsOf(table, match.column)) : null;
  return { ...match, field, unit: null, unitChoices: [], dayOrder: dates };
}

/** What each column is: as proposed, with what was chosen in its place. */
export function matchesOf(table: Table, choices: Choices): readonly ColumnMatch[] {
  return proposeColumns(table).map((proposed) => {
    const choice = choices[proposed.column];
    if (choice === undefined) return proposed;
    const match = choice.field === undefined ? proposed : retaken(proposed, choice.field, table);
    const unit = choice.unit === undefined ? {} : { unit: choice.unit, unitChoices: [] };
    return { ...match, ...unit, ...(choice.dayOrder == null ? {} : { dayOrder: choice.dayOrder }) };
  });
}

/** The choices with one column taken for a field, and no other for the same. */
export function chosenField(
  matches: readonly ColumnMatch[],
  choices: Choices,
  column: number,
  field: JarField | null,
): Choices {
  const others = matches.filter(
    (match) => match.column !== column && field !== null && match.field === field,
  );
  return {
    ...choices,
    ...Object.fromEntries(others.map((match) => [match.column, { field: null }])),
    [column]: { field },
  };
}

/** Whether bare numbers stand in a column whose unit nothing tells. */
export const asksForUnit = ({ field, unit, sample, unitChoices }: ColumnMatch): boolean =>
  field !== null &&
  isAmountField(field) &&
  unit === null &&
  (unitChoices.length > 0 || sample.some((cell) => /^[\d.,½¼¾⅓⅔⅛ /]+$/.test(cell)));
