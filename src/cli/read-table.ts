import Papa from "papaparse";
import { refused } from "./cli-error.ts";

export type Cells = Readonly<Record<string, string>>;

/** A table with a header line; what it must have a column for is named. */
export function readTable(
  text: string,
  file: string,
  needs: readonly string[],
  allowed: readonly string[],
): { readonly columns: readonly string[]; readonly rows: readonly Cells[] } {
  const { data, meta, errors } = Papa.parse<Cells>(text.trim(), { header: true, skipEmptyLines: true });
  const [first] = errors.filter((e) => e.type !== "Delimiter");
  if (first !== undefined) throw unreadable(file, `Row ${(first.row ?? 0) + 1}: ${first.message}.`);
  const columns = meta.fields ?? [];
  const missing = needs.find((column) => !columns.includes(column));
  if (missing !== undefined)
    throw refused({
      code: "missing",
      field: missing,
      message: `${file} has no column "${missing}". It has ${columns.join(", ")}.`,
      value: null,
      limits: { allowed },
    });
  return { columns, rows: data };
}

const unreadable = (file: string, because: string) =>
  refused({
    code: "unreadable",
    field: file,
    message: `${file} cannot be read as a table. ${because}`,
    value: null,
    limits: null,
  });
