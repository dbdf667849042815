import { defineCommand } from "./command.ts";
import { dataOption, withNotebooks } from "./data-folder.ts";

export const command = defineCommand({
  usage: "notebooks",
  positionals: 0,
  options: dataOption,
  async run({ values }, effects) {
    const list = await withNotebooks({ data: values.data, mayBegin: false }, effects, (store) =>
      store.notebooks(),
    );
    if (values.json === true) effects.stdout(`${JSON.stringify(list, null, 2)}\n`);
    else
      for (const { id, name, entries, invented } of list)
        effects.stdout(
          `${id}  ${String(entries).padStart(6)} entries  ${name}${invented ? " (invented)" : ""}\n`,
        );
  },
});
