import { compositionOf, type ResinMakeup } from "../jar/makeup.ts";
import type { Composition } from "../solution/composition.ts";
import { blendOfResins, plainResin, type ResinBlend } from "../solution/resin.ts";
import { massOfSolution, volumeOfSolution } from "../solution/solution.ts";
import { strengthAt20C } from "../solution/strength.ts";
import type { Table } from "../table.ts";
import { massFraction } from "../units.ts";
import { amountsOfRow, type JarAmounts } from "./jar-amounts.ts";
import type { ColumnMatch } from "./match-columns.ts";
import { type CellRemark, type JarRow, type ReadingContext, readRow } from "./read-row.ts";

/** What the notebook holds already: its shelf and its jars' codes. */
export interface ImportContext extends ReadingContext {
  readonly shelf: readonly {
    readonly id: string;
    readonly name: string;
    readonly form: string;
    readonly composition: Composition | null;
    readonly resin: Pick<ResinMakeup, "moisture" | "wax" | "insoluble"> | null;
  }[];
  readonly codes: readonly string[];
}

/** A jar that would be written, with what it is made from: off the shelf by id, or bought with this import. */
export interface PlannedJar {
  readonly row: JarRow;
  readonly amounts: JarAmounts;
  readonly composition: Composition;
  readonly resinOnShelf: string | null;
  readonly solventOnShelf: string | null;
  /** Kilograms of the jar that were used before this book. */
  readonly usedKg: number;
}

export interface ImportPlan {
  readonly jars: readonly PlannedJar[];
  /** While there is one, nothing is written: it is mended in the list, or its row is left out. */
  readonly problems: readonly CellRemark[];
  /** What was taken for granted. */
  readonly notes: readonly CellRemark[];
}

/** Names as a shelf has them: small letters and no spaces, so that "Ethanol 95 %" is "ethanol 95%". */
export const sameName = (name: string): string => name.toLowerCase().replace(/\s/g, "");

const onShelf = (context: ImportContext, name: string, form: string) =>
  context.shelf.find((material) => material.form === form && sameName(material.name) === sameName(name));

const remark = (row: JarRow, column: string, says: string): CellRemark => ({
  row: row.row,
  column,
  value: row.cells[column] ?? "",
  says: `Row ${row.row}, column “${column}”: ${says}`,
});

/** Flakes as the shelf knows them; a cut counts them dry. */
const flakesOf = (known: ImportContext["shelf"][number]["resin"] | undefined): ResinBlend =>
  blendOfResins([
    {
      ...plainResin,
      moisture: massFraction(known?.moisture ?? 0),
      wax: massFraction(known?.wax ?? 0),
      insoluble: massFraction(known?.insoluble ?? 0),
    },
  ]);

/** How much is gone from what it made; a problem when more is left than it made. */
function usedOf(row: JarRow, { mixed }: JarAmounts): number | undefined {
  const { left } = row.amounts;
  if (left === undefined) return 0;
  const mass = massOfSolution(mixed.solution);
  const whole = left.dimension === "mass" ? mass : volumeOfSolution(mixed.solution, strengthAt20C);
  const share = 1 - left.si / whole;
  return share < -1e-9 ? undefined : Math.max(0, share) * mass;
}

function planRow(row: JarRow, matches: readonly ColumnMatch[], context: ImportContext) {
  const heading = (field: ColumnMatch["field"]): string =>
    matches.find((match) => match.field === field)?.header ?? String(field);
  const shelfSolvent = onShelf(context, row.solvent.name, "solvent");
  const own = row.solvent.liquid === undefined ? undefined : compositionOf(row.solvent.liquid);
  if (own !== undefined && "problem" in own)
    return remark(row, heading("strength"), `“${row.solvent.name}” is no strength that this liquid has.`);
  const composition = shelfSolvent?.composition ?? own?.composition;
  if (composition === undefined)
    return remark(
      row,
      heading("solvent"),
      `“${row.solvent.name}” is not one liquid. Put it on the shelf under this name, with its data sheet, or write ethanol 95 %.`,
    );
  const shelfResin = onShelf(context, row.resin, "resin");
  const amounts = amountsOfRow(row, flakesOf(shelfResin?.resin), composition);
  if (!amounts.ok) return remark(row, heading("resin-amount"), amounts.error);
  const usedKg = usedOf(row, amounts.value);
  if (usedKg === undefined) return remark(row, heading("left"), "More is left than the jar was mixed to.");
  const planned: PlannedJar = {
    row,
    amounts: amounts.value,
    composition,
    resinOnShelf: shelfResin?.id ?? null,
    solventOnShelf: shelfSolvent?.id ?? null,
    usedKg,
  };
  return planned;
}

/** A code that stands already, here or in the book: a jar is known by it. */
function doubled(rows: readonly JarRow[], codes: readonly string[], column: string): readonly CellRemark[] {
  const first = new Map<string, number>();
  return rows.flatMap((row) => {
    const before = first.get(row.code);
    if (before === undefined) first.set(row.code, row.row);
    if (codes.includes(row.code))
      return [remark(row, column, `There is a jar ${row.code} in the book already.`)];
    return before === undefined
      ? []
      : [remark(row, column, `${row.code} is the jar of row ${before} as well.`)];
  });
}

/** A match that waits for a choice, once for its column instead of at every cell. */
const unchosen = (matches: readonly ColumnMatch[]): readonly CellRemark[] =>
  matches
    .filter((match) => match.field !== null && match.unitChoices.length > 0)
    .map(({ header }) => ({
      row: 1,
      column: header,
      value: header,
      says: `Row 1, column “${header}”: its unit can be ounces of weight or fluid ounces. “fl oz” or “oz by weight” would do.`,
    }));

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");

/**
 * A dry run: what an import would write, every row's problems, and what was taken for granted.
 *
 * @param table     headings and rows
 * @param matches   what each column is, as proposed or chosen
 * @param context   today, the gallon, the shelf and the codes that are taken
 * @param leaveOut  rows that are not brought over, as a spreadsheet counts them
 */
export function planImport(
  table: Table,
  matches: readonly ColumnMatch[],
  context: ImportContext,
  leaveOut: readonly number[] = [],
): ImportPlan {
  const asked = unchosen(matches);
  const settled = matches.filter((match) => match.unitChoices.length === 0);
  const read = table.rows
    .map((cells, i) => ({ cells, row: i + 2 }))
    .filter(({ cells, row }) => !isBlank(cells) && !leaveOut.includes(row))
    .map(({ cells, row }) => readRow(row, cells, settled, context));
  const rows = read.flatMap(({ jar }) => (jar === undefined || asked.length > 0 ? [] : [jar]));
  const planned = rows.map((row) => planRow(row, matches, context));
  const jars = planned.filter((one): one is PlannedJar => "amounts" in one);
  const codeColumn = matches.find((match) => match.field === "code")?.header ?? "code";
  return {
    jars,
    problems: [
      ...asked,
      ...read.flatMap((one) => one.problems),
      ...planned.filter((one): one is CellRemark => "says" in one),
      ...doubled(rows, context.codes, codeColumn),
    ].sort((a, b) => a.row - b.row),
    notes: [
      ...read.flatMap((one) => one.notes),
      ...jars.flatMap(({ row, amounts }) =>
        amounts.disagrees === null ? [] : [remark(row, codeColumn, amounts.disagrees)],
      ),
    ].sort((a, b) => a.row - b.row),
  };
}
