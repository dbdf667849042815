import { Notebook } from "../core/notebook/notebook.ts";
import { readKeptEntry } from "../core/notebook/parse-entry.ts";

/**
 * What a notebook is called now: by its beginning, or by the correction of it that stands.
 *
 * @param textsOf  the notebook's entries of a kind; strikes are many, and asked for only where there is a choice
 */
export function nameOf(
  notebook: string,
  textsOf: (kind: "notebook-begun" | "struck") => readonly string[],
): { name: string; invented: boolean } {
  const begun = textsOf("notebook-begun");
  const texts = begun.length > 1 ? [...begun, ...textsOf("struck")] : begun;
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
