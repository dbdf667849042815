import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { openKey, type SealedKey } from "../../src/core/notebook/blind-key.ts";
import { kinds } from "../../src/core/notebook/kinds/all.ts";
import { Notebook } from "../../src/core/notebook/notebook.ts";
import { notebookFile, textsInFile } from "../../src/core/notebook/notebook-file.ts";
import { parseEntry } from "../../src/core/notebook/parse-entry.ts";
import { MemoryStore } from "../../src/store/memory-store.ts";

const folder = new URL(".", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));
const textOf = (name: string): string => readFileSync(new URL(name, folder), "utf8");

function opened(name: string) {
  const texts = textsInFile(textOf(name));
  if (!texts.ok) throw new Error(texts.error.message);
  return texts.value.map((text) => {
    const read = parseEntry(text);
    if (!read.ok) throw new Error(`${read.error.message}\n${text}`);
    return read.value;
  });
}

test.each(files)("%s opens, folds, and goes through a store unchanged", async (name) => {
  const kept = opened(name);
  const id = kept[0]?.entry.notebook as string;
  const notebook = new Notebook(id);
  expect(notebook.add(kept).refused).toEqual([]);
  const withdrawn = kept.filter((one) => notebook.kept(one.entry.id)?.entry.withdrawn !== undefined);
  const store = new MemoryStore();
  const texts = kept.map((one) => one.text);
  expect((await store.append(id, texts)).refused).toEqual([]);
  const { entries } = await store.after(id, null, texts.length);
  expect(entries).toEqual(texts.map((text, i) => notebook.kept(kept[i]?.entry.id ?? "")?.text ?? text));
  expect(entries.filter((text, i) => text !== texts[i])).toHaveLength(withdrawn.length);
  expect(notebookFile(texts)).toBe(textOf(name));
});

test("every kind of day one is there and understood, and the one of a later version is kept", () => {
  const kept = opened("every-kind-schema-1.json");
  const understood = kept.filter((one) => one.understanding?.as === "understood");
  expect(new Set(understood.map((one) => one.entry.kind))).toEqual(new Set(Object.keys(kinds)));
  for (const one of understood) expect(one.understanding).toEqual({ as: "understood", unknownFields: [] });
  expect(kept.length - understood.length).toBe(1);
});

test("the key that was sealed by the first version opens to the text whose hash was laid down", () => {
  const kept = opened("every-kind-schema-1.json");
  const bodyOf = (kind: string) => kept.find((one) => one.entry.kind === kind)?.entry.body;
  const key = openKey(bodyOf("trial-key") as SealedKey, { passphrase: "oak gall" });
  expect(key).toEqual({ ok: true, value: bodyOf("key-opened")?.key });
  expect(bodyOf("trial-key")?.keySha256).toBe(bodyOf("trial-laid-out")?.keySha256);
});
