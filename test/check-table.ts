import { readFileSync } from "node:fs";

/** The cells of one row, by column. */
export type CheckRow = Readonly<Record<string, string>>;

/** Splits a line at commas outside quotes. */
const cells = (line: string): string[] =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, plain]) => quoted ?? plain ?? "",
  );

/** The rows of a table under test/check-values. */
export function checkTable(path: string): readonly CheckRow[] {
  const text = readFileSync(new URL(`check-values/${path}`, import.meta.url), "utf8");
  const [header = "", ...lines] = text.trim().split(/\r?\n/);
  const columns = cells(header);
  return lines.map((line) => Object.fromEntries(cells(line).map((cell, i) => [columns[i] ?? "", cell])));
}
