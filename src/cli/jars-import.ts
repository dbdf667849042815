import { randomBytes, randomUUID } from "node:crypto";
import Papa from "papaparse";
import { type JarField, jarFields } from "../core/jar-import/fields.ts";
import { type ColumnMatch, proposeColumns } from "../core/jar-import/match-columns.ts";
import { type ImportPlan, planImport } from "../core/jar-import/plan-import.ts";
import { type DayOrder, dayOrders } from "../core/jar-import/read-day.ts";
import { writeImport } from "../core/jar-import/write-import.ts";
import type { Notebook } from "../core/notebook/notebook.ts";
import { writeEntry } from "../core/notebook/write-entry.ts";
import { calendarDay } from "../core/pieces/calendar-day.ts";
import { formatQuantity } from "../core/quantity/format-quantity.ts";
import { unitNamed, units } from "../core/quantity/unit-table.ts";
import { poundsPerUsGallon } from "../core/registry/cut-names.ts";
import type { Table } from "../core/table.ts";
import { jarIds, jarView } from "../core/views/jar.ts";
import { materialIds, materialView } from "../core/views/material.ts";
import type { NotebookStore } from "../store/notebook-store.ts";
import { CliError, refused } from "./cli-error.ts";
import type { OptionSpecs } from "./command.ts";
import type { Effects } from "./effects.ts";
import { tableText } from "./shop-words.ts";

export const importOptions = {
  import: {
    type: "string",
    value: "FILE.csv",
    description: "a list of jars, with a heading over each column",
  },
  "dry-run": { type: "boolean", description: "says what would be written, and writes nothing" },
  column: {
    type: "string",
    multiple: true,
    value: "HEADING=FIELD",
    description: `what a column is: ${jarFields.join(", ")} or none; a unit may follow, as Alcohol=solvent-amount:floz-us`,
  },
  "day-order": {
    type: "string",
    value: "day-month-year",
    description: "how dates such as 5/10/2026 are meant",
  },
  "leave-out": { type: "string", value: "3,7", description: "rows that stay out, the headings being row 1" },
  gallon: {
    type: "string",
    value: "us",
    description: "whose pints and ounces: us (unless told) or imperial",
  },
} as const satisfies OptionSpecs;

interface Values {
  readonly import?: string;
  readonly "dry-run"?: boolean;
  readonly column?: readonly string[];
  readonly "day-order"?: string;
  readonly "leave-out"?: string;
  readonly gallon?: string;
  readonly json?: boolean;
}

interface Asked {
  readonly values: Values;
  readonly notebook: Notebook;
  readonly store: NotebookStore;
  readonly now: string;
}

const wrong = (option: string, value: string, wouldDo: string, allowed?: readonly string[]) =>
  refused({
    code: "unknown-name",
    field: `--${option}`,
    message: `--${option} is ${value}: ${wouldDo} would do.`,
    value,
    limits: allowed === undefined ? null : { allowed },
  });

function tableFrom(path: string, effects: Effects): Table {
  let text: string;
  try {
    text = effects.readFile(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
    throw new CliError(`${path} is not there.`, 2);
  }
  const { data } = Papa.parse<string[]>(text.replace(/^\ufeff/, ""));
  const [header, ...rows] = data;
  if (header === undefined || rows.length === 0)
    throw new CliError(`${path} holds no rows under its headings.`, 2);
  return { header: header.map((cell) => cell.trim()), rows };
}

const unitIds = units.map(({ id }) => id);

/** `HEADING=FIELD`, `HEADING=FIELD:UNIT`, `HEADING=none`: put over what was proposed. */
function chosen(matches: readonly ColumnMatch[], text: string): readonly ColumnMatch[] {
  const [, heading, field, unit] = /^(.+)=([a-z-]+)(?::(.+))?$/.exec(text) ?? [];
  const known = field === "none" || jarFields.some((one) => one === field);
  if (heading === undefined || field === undefined || !known)
    throw wrong("column", text, `HEADING=FIELD with one of ${jarFields.join(", ")} or none`, jarFields);
  if (!matches.some(({ header }) => header === heading))
    throw wrong("column", text, `a heading of the list, ${matches.map(({ header }) => header).join(", ")},`);
  if (unit !== undefined && unitNamed(unit) === undefined)
    throw wrong("column", text, `a unit such as ${unitIds.slice(0, 8).join(", ")}`, unitIds);
  const to = field === "none" ? null : (field as JarField); // one of them, checked above
  return matches.map((match) => {
    if (match.header !== heading) return match.field === to ? { ...match, field: null } : match;
    const choices = unit === undefined && match.field === to ? match.unitChoices : [];
    return {
      ...match,
      field: to,
      unit: unit ?? (match.field === to ? match.unit : null),
      unitChoices: choices,
    };
  });
}

function matchesFor(table: Table, values: Values): readonly ColumnMatch[] {
  const order = values["day-order"];
  if (order !== undefined && !dayOrders.some((one) => one === order))
    throw wrong("day-order", order, dayOrders.join(" or "), dayOrders);
  const matches = (values.column ?? []).reduce(chosen, proposeColumns(table));
  return order === undefined
    ? matches
    : matches.map((m) => (m.field === "mixed" ? { ...m, dayOrder: order as DayOrder } : m)); // checked above
}

function rowsLeftOut(text = ""): readonly number[] {
  const rows = text
    .split(",")
    .filter((one) => one.trim() !== "")
    .map(Number);
  if (rows.every((row) => Number.isInteger(row) && row > 1)) return rows;
  throw wrong("leave-out", text, "row numbers such as 3,7");
}

function planFor(
  { values, notebook, now }: Asked,
  table: Table,
  matches: readonly ColumnMatch[],
): ImportPlan {
  const { gallon = "us" } = values;
  if (gallon !== "us" && gallon !== "imperial") throw wrong("gallon", gallon, "us or imperial");
  const context = {
    today: calendarDay(now.slice(0, 10)),
    gallon,
    shelf: materialIds(notebook).flatMap((id) => materialView(notebook, id) ?? []),
    codes: jarIds(notebook).flatMap((id) => jarView(notebook, id)?.code ?? []),
  } as const;
  return planImport(table, matches, context, rowsLeftOut(values["leave-out"]));
}

const columnsText = (matches: readonly ColumnMatch[]): string =>
  tableText(
    matches.map(({ header, field, unit, sample }) => [
      header,
      field === null ? "not brought over" : `${field}${unit === null ? "" : `, ${unit}`}`,
      sample.join(" · "),
    ]),
  );

const jarsText = (plan: ImportPlan): string =>
  tableText(
    plan.jars.map(({ row, amounts }) => [
      `row ${row.row}`,
      row.code,
      `${row.resin} in ${row.solvent.name}`,
      `${poundsPerUsGallon(amounts.mixed.cut).toFixed(2)} lb`,
      formatQuantity(amounts.mixed.solutionVolume, "ml"),
      row.mixed ?? "no date",
    ]),
  );

/** Every entry is made before the first is kept, and all are handed over at once. */
async function keep(plan: ImportPlan, { notebook, store, now }: Asked): Promise<number> {
  const texts: string[] = [];
  const writing = {
    now: () => now,
    randomBytes: (length: number) => new Uint8Array(randomBytes(length)),
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    device: randomUUID(),
    nextSeq: () => texts.length + 1,
    by: null,
  };
  writeImport(plan, (draft) => {
    const kept = writeEntry({ ...draft, notebook: notebook.id }, writing);
    texts.push(kept.text);
    return kept.entry.id;
  });
  const { refused: notTaken } = await store.append(notebook.id, texts);
  const [first] = notTaken;
  if (first !== undefined)
    throw new CliError(`${notTaken.length} entries were not taken in: ${first.message}`);
  return texts.length;
}

/** Brings a list of jars into a notebook: columns proposed or told, every problem by row and column, all or nothing. */
export async function importJars(asked: Asked, effects: Effects): Promise<void> {
  const { values } = asked;
  const table = tableFrom(values.import ?? "", effects);
  const matches = matchesFor(table, values);
  const plan = planFor(asked, table, matches);
  if (values.json === true) effects.stdout(`${JSON.stringify({ matches, ...plan }, null, 2)}\n`);
  else effects.stdout(`${columnsText(matches)}\n${jarsText(plan)}`);
  for (const { says } of plan.notes) effects.stderr(`${says}\n`);
  if (plan.problems.length > 0)
    throw new CliError(
      [...plan.problems.map(({ says }) => says), "Nothing is written. --leave-out leaves rows out."].join(
        "\n",
      ),
      2,
    );
  if (values["dry-run"] === true) effects.stderr(`A dry run: ${plan.jars.length} jars would be written.\n`);
  else effects.stderr(`${plan.jars.length} jars are in the notebook, ${await keep(plan, asked)} entries.\n`);
}
