import { randomBytes } from "node:crypto";
import { demoEntries } from "../core/demo/demo.ts";
import type { KeptEntry } from "../core/notebook/entry.ts";
import { newEntryId } from "../core/notebook/entry-id.ts";
import { writeEntry } from "../core/notebook/write-entry.ts";
import type { NotebookStore } from "../store/notebook-store.ts";
import type { FirstNotebook } from "./settings.ts";

const now = (): string => new Date().toISOString();
const zone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** The first entry of a notebook that begins now. */
function emptyNotebook(): KeptEntry[] {
  const newId = () => newEntryId(now(), 0, randomBytes);
  const effects = { now, randomBytes, zone: zone(), device: newId(), nextSeq: () => 1, by: null };
  return [writeEntry({ notebook: newId(), kind: "notebook-begun", body: { name: "Bench book" } }, effects)];
}

const makers: Readonly<Record<FirstNotebook, () => readonly KeptEntry[]>> = {
  empty: emptyNotebook,
  demo: () => demoEntries({ seed: "1", now: now(), zone: zone() }),
};

/** Begins a notebook where the store has none; returns whether it did. */
export async function beginFirstNotebook(store: NotebookStore, which: FirstNotebook): Promise<boolean> {
  if ((await store.notebooks()).length > 0) return false;
  const entries = makers[which]();
  const notebook = entries[0]?.entry.notebook as string; // every maker writes at least notebook-begun
  await store.append(
    notebook,
    entries.map((kept) => kept.text),
  );
  return true;
}
