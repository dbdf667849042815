import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { entryText } from "../../src/store/notebook-store.contract.ts";
import { inTransaction, openDatabase } from "../../src/store/sqlite-driver.ts";
import { SqliteStore } from "../../src/store/sqlite-store.ts";

const root = mkdtempSync(join(tmpdir(), "lacbench-arrival-"));
afterAll(() => rmSync(root, { recursive: true }));
const newFolder = (): string => mkdtempSync(join(root, "data-"));

const template = entryText(0);
const notebook = JSON.parse(template).notebook as string;
const begun = entryText(0, { kind: "notebook-begun", body: { name: "Shop" } });
const writerScript = fileURLToPath(new URL("writer.mjs", import.meta.url));

function startWriter(folder: string, first: number, count: number): Promise<unknown[]> {
  const args = [writerScript, folder, String(first), String(count), template];
  return once(spawn(process.execPath, args, { stdio: ["ignore", "inherit", "inherit"] }), "exit");
}

test("a reader that follows two writing processes misses nothing and sees nothing twice", async () => {
  const folder = newFolder();
  const store = await SqliteStore.open(folder);
  await store.append(notebook, [begun]);
  const count = 150;
  const writers = Promise.all([startWriter(folder, 1_000, count), startWriter(folder, 5_000, count)]);
  let isWriting = true;
  writers.finally(() => {
    isWriting = false;
  });
  const followed: string[] = [];
  let cursor: string | null = null;
  for (let more = true; more; ) {
    const wasWriting = isWriting;
    const page: { entries: readonly string[]; cursor: string } = await store.after(notebook, cursor, 10);
    followed.push(...page.entries);
    cursor = page.cursor;
    more = wasWriting || page.entries.length > 0;
    await pause(1);
  }
  expect(await writers).toEqual([
    [0, null],
    [0, null],
  ]);
  const ids = followed.map((text) => JSON.parse(text).id as string);
  expect(ids).toHaveLength(1 + 2 * count);
  expect(new Set(ids).size).toBe(ids.length);
  expect(followed).toEqual((await store.after(notebook, null, 1_000)).entries);
  const [from1000, from5000] = [
    ids.filter((id) => id < entryId(5_000)),
    ids.filter((id) => id >= entryId(5_000)),
  ];
  for (const own of [from1000, from5000]) expect(own).toEqual([...own].sort()); // each writer's own order
  await store.close();
});

const entryId = (i: number): string => `01a00000-0000-7000-8000-${i.toString(16).padStart(12, "0")}`;

test("a writer waits while another's transaction is open, and numbers follow the commits", async () => {
  const folder = newFolder();
  const store = await SqliteStore.open(folder);
  await store.append(notebook, [begun]);
  const other = openDatabase(join(folder, "lacbench.sqlite"), "write");
  let isDone = false;
  other.exec("BEGIN IMMEDIATE");
  other
    .prepare("INSERT INTO entries (notebook, arrival, id, kind, text) VALUES (?, 2, ?, 'note', ?)")
    .run(notebook, entryId(1), entryText(1));
  other.prepare("UPDATE notebooks SET arrivals = 2 WHERE id = ?").run(notebook);
  const waiting = startWriter(folder, 2, 1);
  waiting.finally(() => {
    isDone = true;
  });
  await pause(1_500);
  expect(isDone).toBe(false);
  expect((await store.after(notebook, null, 10)).entries).toEqual([begun]);
  other.exec("COMMIT");
  expect(await waiting).toEqual([0, null]);
  const { entries, cursor } = await store.after(notebook, "1", 10);
  expect(entries.map((text) => JSON.parse(text).id)).toEqual([entryId(1), entryId(2)]);
  expect(cursor).toBe("3");
  other.close();
  await store.close();
});

test("a transaction that fails leaves no number behind", async () => {
  const folder = newFolder();
  const store = await SqliteStore.open(folder);
  await store.append(notebook, [begun]);
  const other = openDatabase(join(folder, "lacbench.sqlite"), "write");
  const failing = () =>
    inTransaction(other, () => {
      other.prepare("UPDATE notebooks SET arrivals = 7 WHERE id = ?").run(notebook);
      throw new RangeError("changed my mind");
    });
  expect(failing).toThrow("changed my mind");
  await store.append(notebook, [entryText(1)]);
  expect((await store.after(notebook, "1", 10)).cursor).toBe("2");
  other.close();
  await store.close();
});
