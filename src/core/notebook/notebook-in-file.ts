import type { Problem } from "../registry/problem.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Body } from "./kinds/all.ts";
import { Notebook } from "./notebook.ts";
import { readKeptEntry } from "./parse-entry.ts";
import { type Photograph, type PhotographTold, partsOfFile, photographsTold } from "./photographs-in-file.ts";

/** What a file turned out to hold, before any of it is kept. */
export interface NotebookInFile {
  readonly id: string;
  /** Empty when the entry that begins the notebook is not in the file. */
  readonly name: string;
  readonly invented: boolean;
  readonly entries: readonly { readonly id: string; readonly text: string }[];
  /** Why an entry could not be read, in words, one for each. */
  readonly refused: readonly string[];
  /** Numbers that a device gave and that are not in the file. */
  readonly missing: number;
  readonly photographs: readonly Photograph[];
  /** Photographs that entries speak of and whose bytes are not in the file, or not as they were. */
  readonly lacking: readonly (PhotographTold & { readonly spoiled: boolean })[];
}

const noNotebook = (message: string): Problem => ({
  code: "unreadable",
  field: "file",
  message,
  value: null,
  limits: null,
});

/**
 * Opens a notebook file to be looked at: whose it is, what of it can be read, and what is missing.
 *
 * @param text  the file's text
 * @returns     the notebook with its entries as they stand, or the problem `unreadable` when the file is cut off, is something else,
 *              holds no entry, or entries of several notebooks
 */
export function notebookInFile(text: string): Result<NotebookInFile, Problem> {
  const parts = partsOfFile(text);
  if (!parts.ok) return parts;
  const { texts, photographs, spoiled } = parts.value;
  const read = texts.map(readKeptEntry);
  const kept = read.flatMap((one) => (one.ok ? [one.value] : []));
  const [first] = kept;
  if (first === undefined) return fail(noNotebook("No entry in it can be read."));
  const id = first.entry.notebook;
  if (kept.some((one) => one.entry.notebook !== id))
    return fail(noNotebook("It holds entries of several notebooks; a file saved from one of them would do."));
  const notebook = new Notebook(id);
  const added = notebook.add(kept);
  const whole = new Set(photographs.map((one) => one.sha256));
  const cover = notebook.ofKind("notebook-begun")[0]?.body as Body<"notebook-begun"> | undefined;
  return ok({
    id,
    name: cover?.name ?? "",
    invented: cover?.invented === true,
    entries: added.added.map((one) => ({ id: one, text: notebook.kept(one)?.text ?? "" })),
    refused: [
      ...read.flatMap((one) => (one.ok ? [] : [one.error.message])),
      ...added.refused.map((one) => one.message),
    ],
    missing: notebook.reports.reduce((sum, one) => sum + (one.code === "gap" ? one.to - one.from + 1 : 0), 0),
    photographs,
    lacking: photographsTold(notebook.ordered())
      .filter((one) => !whole.has(one.sha256))
      .map((one) => ({ ...one, spoiled: spoiled.includes(one.sha256) })),
  });
}
