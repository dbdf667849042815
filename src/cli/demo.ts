import { demoEntries } from "../core/demo/demo.ts";
import { instantSchema } from "../core/notebook/entry.ts";
import { notebookFile } from "../core/notebook/notebook-file.ts";
import { refused } from "./cli-error.ts";
import { defineCommand } from "./command.ts";

const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

function checkedZone(zone: string): string {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
    return zone;
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const message = `--zone ${zone} is not a time zone. A name such as Europe/Berlin would do.`;
    throw refused({ code: "unknown-name", field: "--zone", message, value: zone, limits: null });
  }
}

function checkedInstant(now: string): string {
  if (instantSchema.safeParse(now).success) return now;
  const message = `--now ${now} is not an instant. UTC as 2026-10-05T18:30:00Z would do.`;
  throw refused({ code: "wrong-type", field: "--now", message, value: now, limits: null });
}

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
    const now = checkedInstant(values.now ?? new Date().toISOString());
    const entries = demoEntries({
      seed: values.seed ?? "1",
      now,
      zone: checkedZone(values.zone ?? ownZone()),
    });
    effects.stdout(notebookFile(entries.map((kept) => kept.text)));
    effects.stderr(`${entries.length} entries, all of them made up. "lacbench import" takes them in.\n`);
  },
});
