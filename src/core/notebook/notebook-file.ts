import type { Problem } from "../registry/problem.ts";
import { ok, type Result } from "../result.ts";
import { splitJsonArray } from "./json-text.ts";

/**
 * A notebook as a file: a JSON list of the entries' exact texts, one a line, and behind them its photographs (`photographText`).
 *
 * @param texts  entries as they are kept, and photographs, n
 * @returns      the file's text; `textsInFile` gives the same texts back, byte for byte
 * @example
 * notebookFile(['{"a": 1.0}', '{"b":2}']) // => '[\n{"a": 1.0},\n{"b":2}\n]\n'
 */
export const notebookFile = (texts: readonly string[]): string => `[\n${texts.join(",\n")}\n]\n`;

/**
 * The texts in a notebook file, photographs among them; also in one that holds an entry a line without the list around
 * them. They are cut out, not judged.
 *
 * @param text  the file's text
 * @returns     the entries' texts, n, or the problem `unreadable`
 * @example
 * textsInFile('{"a": 1.0}\n{"b":2}\n') // => { ok: true, value: ['{"a": 1.0}', '{"b":2}'] }
 */
export function textsInFile(text: string): Result<readonly string[], Problem> {
  if (!text.trimStart().startsWith("{")) return splitJsonArray(text);
  return ok(
    text
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line !== ""),
  );
}
