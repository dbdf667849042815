import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { entryText, notebookStoreContract } from "./notebook-store.contract.ts";
import { SqliteStore } from "./sqlite-store.ts";

const root = mkdtempSync(join(tmpdir(), "lacbench-store-"));
afterAll(() => rmSync(root, { recursive: true }));
const newFolder = (): string => mkdtempSync(join(root, "data-"));

notebookStoreContract("SqliteStore", () => SqliteStore.open(newFolder()));

const notebook = JSON.parse(entryText(0)).notebook as string;
const begun = entryText(0, { kind: "notebook-begun", body: { name: "Shop" } });

test("what was kept is there when the folder is opened again", async () => {
  const folder = newFolder();
  const first = await SqliteStore.open(folder);
  await first.append(notebook, [begun, entryText(1)]);
  await first.close();
  const second = await SqliteStore.open(folder);
  expect((await second.after(notebook, null, 9)).entries).toEqual([begun, entryText(1)]);
  await second.close();
});

test("a withdrawn text is nowhere in the folder any more", async () => {
  const folder = newFolder();
  const store = await SqliteStore.open(folder);
  await store.append(notebook, [begun, entryText(1, { body: { text: "Mrs Underhill, 4 Mill Lane" } })]);
  const inFiles = () =>
    readdirSync(folder).some((name) => readFileSync(join(folder, name)).includes("Underhill"));
  expect(inFiles()).toBe(true);
  const { id } = JSON.parse(entryText(1));
  await store.append(notebook, [entryText(2, { kind: "withdrawn", body: { entries: [id] } })]);
  expect(inFiles()).toBe(false);
  await store.close();
});

test("two stores on one folder see each other's entries", async () => {
  const folder = newFolder();
  const [one, two] = [await SqliteStore.open(folder), await SqliteStore.open(folder)];
  await one.append(notebook, [begun]);
  await two.append(notebook, [entryText(1)]);
  await one.append(notebook, [entryText(2)]);
  const texts = [begun, entryText(1), entryText(2)];
  for (const store of [one, two]) expect((await store.after(notebook, null, 9)).entries).toEqual(texts);
  await one.close();
  await two.close();
});
