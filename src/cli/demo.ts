import { demoEntries } from "../core/demo/demo.ts";
import { notebookFile } from "../core/notebook/notebook-file.ts";
import { defineCommand } from "./command.ts";
import { nowOf, zoneOf } from "./when-options.ts";

export const command = defineCommand({
  usage: "demo [--seed N] > demo.json",
  positionals: 0,
  options: {
    seed: { type: "string", value: "N", description: "another number makes another month; 1 unless told" },
    now: {
      type: "string",
      value: "INSTANT",
      description: "the day that the month ends on, UTC; today unless told",
    },
    zone: {
      type: "string",
      value: "NAME",
      description: "whose evenings they are, as Europe/Berlin; your own unless told",
    },
  },
  run({ values }, effects) {
    const now = nowOf(values.now);
    const entries = demoEntries({
      seed: values.seed ?? "1",
      now,
      zone: zoneOf(values.zone),
    });
    effects.stdout(notebookFile(entries.map((kept) => kept.text)));
    effects.stderr(`${entries.length} entries, all of them made up. "lacbench import" takes them in.\n`);
  },
});
