import { parseQuantity } from "../quantity/parse-quantity.ts";
import { plainText, readNumber } from "../quantity/read-number.ts";
import type { Table } from "../table.ts";
import { type AmountField, amountFields, headingWords, isAmountField, type JarField } from "./fields.ts";
import { type DayOrder, dayOrderOf } from "./read-day.ts";

/** What a column is taken for; everything here can be put otherwise by hand. */
export interface ColumnMatch {
  readonly column: number;
  readonly header: string;
  /** Null for a column that is not brought over. */
  readonly field: JarField | null;
  /** The unit of a bare number in it, as the heading says: an id of `units`. */
  readonly unit: string | null;
  /** Texts of which the heading means one: ounces of weight or of volume. It is to be chosen. */
  readonly unitChoices: readonly string[];
  /** For a column of dates: which of day and month comes first. Null when the cells do not tell; it is to be chosen. */
  readonly dayOrder: DayOrder | null;
  /** Some cells, to judge the match by. */
  readonly sample: readonly string[];
}

/** The unit in a heading: in brackets, behind a comma or "in", or as its last word. */
function unitTexts(header: string): readonly string[] {
  const bracket = /[([]([^)\]]+)[)\]]/.exec(header)?.[1];
  const after = /(?:,| in) +([^,]+)$/i.exec(header)?.[1];
  const last = /([^ ,]+(?: oz)?)$/.exec(header.trim())?.[1];
  return [bracket, after, last].filter((text) => text !== undefined);
}

interface HeadingUnit {
  readonly unit: string | null;
  readonly unitChoices: readonly string[];
}

function unitOf(header: string, field: AmountField): HeadingUnit {
  for (const text of unitTexts(header)) {
    const read = parseQuantity(`1 ${text}`, amountFields[field]);
    if (read.ok) return { unit: read.value.unit, unitChoices: [] };
    if (read.error.code === "ambiguous")
      return { unit: null, unitChoices: (read.error.readings ?? []).map((reading) => reading.unit) };
  }
  return { unit: null, unitChoices: [] };
}

const startsWithNumber = (cell: string): boolean => readNumber(plainText(cell)).ok;

/** Cells that begin with a number, or a unit in the heading, make an amount of what would be a name. */
function nameOrAmount(
  header: string,
  cells: readonly string[],
  name: JarField,
  amount: AmountField,
): JarField {
  const numbers = cells.filter(startsWithNumber).length;
  if (cells.length === 0) return unitOf(header, amount).unit === null ? name : amount;
  return 2 * numbers >= cells.length ? amount : name;
}

function fieldOf(header: string, cells: readonly string[]): JarField | null {
  const text = header.toLowerCase().replace(/[_-]/g, " ");
  const found = headingWords.find(([, words]) => words.test(text))?.[0] ?? null;
  if (found === "resin") return nameOrAmount(header, cells, "resin", "resin-amount");
  if (found === "solvent") return nameOrAmount(header, cells, "solvent", "solvent-amount");
  return found;
}

const nothing: HeadingUnit = { unit: null, unitChoices: [] };

/**
 * What each column of a list of jars is likely to be, by its heading and its cells: a proposal that a person confirms.
 *
 * @param table  headings and rows
 * @returns      a match for each column in their order; of two columns for one field the first has it
 */
export function proposeColumns(table: Table): readonly ColumnMatch[] {
  const taken = new Set<JarField>();
  return table.header.map((header, column) => {
    const cells = table.rows.map((row) => (row[column] ?? "").trim()).filter((cell) => cell !== "");
    const likely = fieldOf(header, cells);
    const field = likely !== null && taken.has(likely) ? null : likely;
    if (field !== null) taken.add(field);
    return {
      column,
      header,
      field,
      ...(field !== null && isAmountField(field) ? unitOf(header, field) : nothing),
      dayOrder: field === "mixed" ? dayOrderOf(cells) : null,
      sample: cells.slice(0, 3),
    };
  });
}
