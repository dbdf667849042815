import Papa from "papaparse";
import { fail, ok, type Result } from "../../core/result.ts";
import type { Table } from "../../core/table.ts";

/** Why a text is no list: nothing in it, headings and no rows, one column, or quotes that do not close. */
export type NoTable = "empty" | "no-rows" | "one-column" | "unreadable";

const marks = ["\t", ";", ","] as const;

/** What separates the headings most often separates the cells: a comma may stand in a cell for a decimal point. */
function markOf(text: string): string {
  const [heading = ""] = text.split(/\r?\n/);
  const bare = heading.replace(/"[^"]*"/g, "");
  const count = (mark: string): number => bare.split(mark).length;
  return marks.reduce<string>((best, mark) => (count(mark) > count(best) ? mark : best), marks[0]);
}

/** A list as it was pasted or saved from a spreadsheet: separated by commas, semicolons or tabs. */
export function tableOf(text: string): Result<Table, NoTable> {
  if (text.trim() === "") return fail("empty");
  const plain = text.replace(/^\uFEFF/, "");
  const read = Papa.parse<string[]>(plain, { delimiter: markOf(plain), skipEmptyLines: false });
  if (read.errors.some((error) => error.type === "Quotes")) return fail("unreadable");
  const [header = [], ...rows] = read.data;
  if (header.length < 2) return fail("one-column");
  const filled = rows.some((row) => row.some((cell) => cell.trim() !== ""));
  return filled ? ok({ header: header.map((cell) => cell.trim()), rows }) : fail("no-rows");
}
