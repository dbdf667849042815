import { notebookFile } from "../core/notebook/notebook-file.ts";
import type { NotebookStore } from "../store/notebook-store.ts";
import { CliError } from "./cli-error.ts";
import { defineCommand } from "./command.ts";
import { dataOption, withNotebooks } from "./data-folder.ts";

const page = 5_000;

export const command = defineCommand({
  usage: "export [NOTEBOOK] > notebook.json",
  positionals: 1,
  options: dataOption,
  async run({ values, positionals }, effects) {
    await withNotebooks({ data: values.data, mayBegin: false }, effects, async (store, folder) => {
      const texts = await allTexts(store, await asked(store, positionals[0]));
      effects.stdout(notebookFile(texts));
      effects.stderr(
        `${texts.length} entries, each as it was written. Photographs stay in ${folder}/photographs.\n`,
      );
    });
  },
});

/** The notebook that was named, or the only one. */
async function asked(store: NotebookStore, id: string | undefined): Promise<string> {
  const known = await store.notebooks();
  const [only] = known;
  if (id === undefined && only !== undefined && known.length === 1) return only.id;
  const found = known.find((notebook) => notebook.id === id);
  if (found !== undefined) return found.id;
  const list = known.map((notebook) => `  ${notebook.id}  ${notebook.name}`).join("\n");
  const why = id === undefined ? "Which notebook? Name one:" : `There is no notebook ${id} here. There are:`;
  throw new CliError(`${why}\n${list}`, 2);
}

async function allTexts(store: NotebookStore, notebook: string): Promise<readonly string[]> {
  const texts: string[] = [];
  for (let cursor: string | null = null; ; ) {
    const arrivals = await store.after(notebook, cursor, page);
    texts.push(...arrivals.entries);
    if (arrivals.entries.length < page) return texts;
    cursor = arrivals.cursor;
  }
}
