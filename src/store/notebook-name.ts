import { Notebook } from "../core/notebook/notebook.ts";
import { readKeptEntry } from "../core/notebook/parse-entry.ts";

/** The kinds that must be read to know a notebook's name: its beginnings, and what may have struck one of them. */
export const namingKinds = ["notebook-begun", "struck"] as const;

/** What a notebook is called now, from its entries of `namingKinds`. */
export function nameOf(notebook: string, texts: readonly string[]): { name: string; invented: boolean } {
  const fold = new Notebook(notebook);
  fold.add(
    texts
      .map(readKeptEntry)
      .filter((read) => read.ok)
      .map((read) => read.value),
  );
  const body = fold.ofKind("notebook-begun").at(-1)?.body;
  return { name: typeof body?.name === "string" ? body.name : "", invented: body?.invented === true };
}
