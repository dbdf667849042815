import { notebookFile } from "../core/notebook/notebook-file.ts";
import { defineCommand } from "./command.ts";
import { dataOption, notebookAsked, textsOf, withNotebooks } from "./data-folder.ts";

export const command = defineCommand({
  usage: "export [NOTEBOOK] > notebook.json",
  positionals: 1,
  options: dataOption,
  async run({ values, positionals }, effects) {
    await withNotebooks({ data: values.data, mayBegin: false }, effects, async (store, folder) => {
      const texts = await textsOf(store, await notebookAsked(store, positionals[0]));
      effects.stdout(notebookFile(texts));
      effects.stderr(
        `${texts.length} entries, each as it was written. Photographs stay in ${folder}/photographs.\n`,
      );
    });
  },
});
