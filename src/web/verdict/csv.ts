import Papa from "papaparse";
import type { VerdictInput } from "./questions.ts";

/** Every row of a verdict as a table that any program reads; a cell that a spreadsheet would run is disarmed. */
export function rowsAsCsv(input: VerdictInput): string {
  const factors = Object.keys(input.rows[0]?.factors ?? {});
  const table = input.rows.map((r) => ({
    patch: r.patch,
    jar: r.jar,
    plank: r.plank,
    block: r.block,
    judge: r.judge,
    occasion: r.occasion,
    daysSinceCoat: r.daysSinceCoat ?? "",
    ...Object.fromEntries(factors.map((f) => [f, r.factors[f] ?? ""])),
    value: r.value,
  }));
  return Papa.unparse(table, { escapeFormulae: true, newline: "\r\n" });
}
