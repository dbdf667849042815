import type { CalendarDay } from "../pieces/calendar-day.ts";
import { parseQuantity } from "../quantity/parse-quantity.ts";
import { quantityProblemSentence } from "../quantity/problem-sentence.ts";
import type { Reading } from "../quantity/reading.ts";
import type { GallonSystem } from "../quantity/unit-table.ts";
import { type AmountField, amountFields, type JarField } from "./fields.ts";
import type { ColumnMatch } from "./match-columns.ts";
import { readDay } from "./read-day.ts";
import { readSolvent, type SolventRead } from "./read-solvent.ts";

/** Something to know about one cell: where it stands, what stands in it, and one sentence. */
export interface CellRemark {
  /** As a spreadsheet counts: the headings are row 1. */
  readonly row: number;
  readonly column: string;
  readonly value: string;
  readonly says: string;
}

/** One jar as its row tells it; amounts that were not written are absent. */
export interface JarRow {
  readonly row: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly code: string;
  readonly mixed: CalendarDay | null;
  readonly resin: string;
  readonly solvent: SolventRead;
  readonly amounts: Readonly<Partial<Record<AmountField, Reading>>>;
  readonly vessel: string;
  readonly note: string;
}

export interface RowRead {
  /** Undefined when there are problems. */
  readonly jar: JarRow | undefined;
  readonly problems: readonly CellRemark[];
  readonly notes: readonly CellRemark[];
}

export interface ReadingContext {
  /** Nothing was mixed after it. */
  readonly today: CalendarDay;
  readonly gallon: GallonSystem;
}

/** The cells of one row by what they are of, with remarks gathered as they are read. */
class RowReader {
  readonly problems: CellRemark[] = [];
  readonly notes: CellRemark[] = [];
  readonly row: number;
  readonly #cells: readonly string[];
  readonly #matches: readonly ColumnMatch[];
  constructor(row: number, cells: readonly string[], matches: readonly ColumnMatch[]) {
    this.row = row;
    this.#cells = cells;
    this.#matches = matches;
  }

  match = (field: JarField): ColumnMatch | undefined => this.#matches.find((m) => m.field === field);

  text(field: JarField): string {
    const column = this.match(field)?.column;
    return column === undefined ? "" : (this.#cells[column] ?? "").trim();
  }

  remark(list: CellRemark[], field: JarField, says: string): void {
    const column = this.match(field)?.header ?? field;
    const value = this.text(field);
    list.push({ row: this.row, column, value, says: `Row ${this.row}, column “${column}”: ${says}` });
  }

  needed(field: JarField, wouldDo: string): string {
    const text = this.text(field);
    if (text === "") this.remark(this.problems, field, `Nothing is written here. ${wouldDo} would do.`);
    return text;
  }

  allCells = (): Readonly<Record<string, string>> =>
    Object.fromEntries(this.#matches.map((m) => [m.header, (this.#cells[m.column] ?? "").trim()]));
}

function readAmount(row: RowReader, field: AmountField, gallon: GallonSystem): Reading | undefined {
  const text = row.text(field);
  if (text === "") return undefined;
  const unit = row.match(field)?.unit;
  const read = parseQuantity(text, {
    ...amountFields[field],
    gallon,
    ...(unit == null ? {} : { bareUnit: unit }),
  });
  if (!read.ok) {
    row.remark(row.problems, field, quantityProblemSentence(read.error));
    return undefined;
  }
  const { instead, ...reading } = read.value;
  if (!(reading.si > 0)) {
    row.remark(row.problems, field, `“${text}” is none. More than nothing would do.`);
    return undefined;
  }
  if (instead !== undefined)
    row.remark(row.notes, field, `“${text}” is read in ${gallon === "us" ? "US" : "imperial"} measure.`);
  return reading;
}

function readMixed(row: RowReader, today: CalendarDay): CalendarDay | null {
  const text = row.text("mixed");
  if (text === "") {
    row.remark(row.notes, "mixed", "No date is written: its age will not be known.");
    return null;
  }
  const order = row.match("mixed")?.dayOrder;
  if (order == null) {
    row.remark(
      row.problems,
      "mixed",
      `“${text}” may begin with the day or the month: which is to be chosen.`,
    );
    return null;
  }
  const day = readDay(text, order);
  if (day === undefined)
    row.remark(row.problems, "mixed", `“${text}” is no date as ${order}. 2026-10-05 would do.`);
  else if (day > today) row.remark(row.problems, "mixed", `${day} has not come yet.`);
  return day ?? null;
}

function readLiquid(row: RowReader): SolventRead | undefined {
  const name = row.needed("solvent", "ethanol 95 %");
  if (name === "") return undefined;
  const read = readSolvent(name, row.text("strength"), row.match("strength")?.unit ?? null);
  if (read !== "strength-unreadable") {
    if (read.takenAsPure)
      row.remark(row.notes, "solvent", `No strength is written: ${name} is taken as pure.`);
    return read;
  }
  const field = row.text("strength") === "" ? "solvent" : "strength";
  row.remark(row.problems, field, `“${row.text(field)}” is no strength. “95 %” or “190 proof” would do.`);
  return undefined;
}

const amountsOfJar = ["resin-amount", "solvent-amount", "cut", "makes", "left"] as const;

/**
 * Reads one row by the columns' matches.
 *
 * @param row      as a spreadsheet counts it
 * @param cells    in the columns' order
 * @param matches  what each column is
 * @returns        the jar, or what is wrong with each cell; and what was taken for granted
 */
export function readRow(
  row: number,
  cells: readonly string[],
  matches: readonly ColumnMatch[],
  context: ReadingContext,
): RowRead {
  const reader = new RowReader(row, cells, matches);
  const code = reader.needed("code", "L1");
  const mixed = readMixed(reader, context.today);
  const resin = reader.needed("resin", "Dewaxed lemon");
  const solvent = readLiquid(reader);
  const read = amountsOfJar.map((field) => [field, readAmount(reader, field, context.gallon)] as const);
  const { problems, notes } = reader;
  if (problems.length > 0 || solvent === undefined) return { jar: undefined, problems, notes };
  return {
    jar: {
      row,
      cells: reader.allCells(),
      code,
      mixed,
      resin,
      solvent,
      amounts: Object.fromEntries(read.filter(([, reading]) => reading !== undefined)),
      vessel: reader.text("vessel"),
      note: reader.text("note"),
    },
    problems,
    notes,
  };
}
