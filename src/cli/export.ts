import { notebookFile } from "../core/notebook/notebook-file.ts";
import { photographText } from "../core/notebook/photographs-in-file.ts";
import { defineCommand } from "./command.ts";
import { dataOption, notebookAsked, textsOf, withNotebooks } from "./data-folder.ts";
import { photographLine, photographsNamed, photographsOf } from "./photographs.ts";

export const command = defineCommand({
  usage: "export [NOTEBOOK] > notebook.json",
  positionals: 1,
  options: dataOption,
  async run({ values, positionals }, effects) {
    await withNotebooks({ data: values.data, mayBegin: false }, effects, async (store) => {
      const texts = await textsOf(store, await notebookAsked(store, positionals[0]));
      const { here, lacking } = await photographsOf(store, texts);
      effects.stdout(notebookFile([...texts, ...here.map(photographText)]));
      effects.stderr(
        `${texts.length} entries, each as it was written, and ${photographsNamed(here.length)}.\n`,
      );
      if (lacking.length === 0) return;
      effects.stderr(`${photographsNamed(lacking.length)} not here, perhaps still on a phone:\n`);
      effects.stderr(`${lacking.map(photographLine).join("\n")}\n`);
    });
  },
});
