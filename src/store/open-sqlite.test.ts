import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import type { RefusalReason } from "./database-refused.ts";
import { type Migration, migrations } from "./migrations.ts";
import { openSqlite } from "./open-sqlite.ts";
import { type Database, inTransaction, openDatabase, pragma } from "./sqlite-driver.ts";

const root = mkdtempSync(join(tmpdir(), "lacbench-open-"));
afterAll(() => rmSync(root, { recursive: true }));
const newFolder = (): string => mkdtempSync(join(root, "data-"));
const fileIn = (folder: string): string => join(folder, "lacbench.sqlite");

/** A database with enough pages to be damaged in the middle. */
function filled(folder: string): Buffer {
  const database = openSqlite(folder);
  database.exec("INSERT INTO notebooks VALUES ('n', 0)");
  const insert = database.prepare("INSERT INTO entries VALUES ('n', ?, ?, 'note', NULL, ?)");
  inTransaction(database, () => {
    for (let i = 1; i <= 400; i++) insert.run(i, `id ${i}`, "x".repeat(300));
  });
  database.close();
  return readFileSync(fileIn(folder));
}

function foreign(folder: string): void {
  const database = openDatabase(fileIn(folder), "write");
  database.exec("CREATE TABLE recipes (name TEXT)");
  database.close();
}

function newer(folder: string): void {
  const database = openSqlite(folder);
  database.exec("PRAGMA user_version = 99");
  database.close();
}

const overwrite = (folder: string, change: (bytes: Buffer) => Buffer): void =>
  writeFileSync(fileIn(folder), change(filled(folder)));

const cases: readonly [string, RefusalReason, (folder: string) => void][] = [
  ["a text file", "not-a-database", (folder) => writeFileSync(fileIn(folder), "two pounds of flakes\n")],
  ["a file of another program", "foreign", foreign],
  ["a file of a newer version", "newer", newer],
  [
    "a file cut short",
    "damaged",
    (folder) => overwrite(folder, (bytes) => bytes.subarray(0, bytes.length / 2)),
  ],
  [
    "a file with a page overwritten",
    "damaged",
    (folder) => overwrite(folder, (bytes) => bytes.fill(0xa5, 8192, 12288)),
  ],
];

test.each(cases)("%s is refused as %s, with what to do, and not touched", (_, reason, make) => {
  const folder = newFolder();
  make(folder);
  const hash = () =>
    createHash("sha256")
      .update(readFileSync(fileIn(folder)))
      .digest("hex");
  const before = hash();
  const open = () => openSqlite(folder);
  expect(open).toThrow(expect.objectContaining({ name: "DatabaseRefused", reason }));
  expect(open).toThrow(/was left as it is: .*LACBENCH_DATA\.$/);
  expect(hash()).toBe(before);
});

test("a folder that cannot be one is refused with what to do", () => {
  const file = join(newFolder(), "taken");
  writeFileSync(file, "");
  for (const folder of [file, join(file, "below")])
    expect(() => openSqlite(folder)).toThrow(expect.objectContaining({ reason: "no-permission" }));
});

test("an empty file, as a stopped first start leaves it, is begun anew", () => {
  const folder = newFolder();
  writeFileSync(fileIn(folder), "");
  openSqlite(folder).close();
  expect(readFileSync(fileIn(folder)).toString("latin1", 0, 15)).toBe("SQLite format 3");
});

test("every commit waits for the disk", () => {
  const database = openSqlite(newFolder());
  expect(pragma(database, "journal_mode")).toBe("wal");
  expect(pragma(database, "synchronous")).toBe(2); // FULL
  database.close();
});

const addPlaces: Migration = (database) =>
  database.exec("ALTER TABLE notebooks ADD COLUMN place TEXT DEFAULT 'shop'");
const fails: Migration = (database) => database.exec("CREATE TABLE half (x); SELECT * FROM nowhere");
const rows = (database: Database, sql: string): unknown[] => database.prepare(sql).all();

test("a later version brings the tables up to date and copies the original first", () => {
  const folder = newFolder();
  filled(folder);
  const database = openSqlite(folder, [...migrations, addPlaces]);
  expect(rows(database, "SELECT * FROM notebooks")).toEqual([{ id: "n", arrivals: 0, place: "shop" }]);
  database.close();
  expect(readdirSync(folder).sort()).toEqual(["lacbench.sqlite", "lacbench.sqlite.before-version-2"]);
  const copy = openDatabase(`${fileIn(folder)}.before-version-2`, "read");
  expect(rows(copy, "SELECT * FROM notebooks")).toEqual([{ id: "n", arrivals: 0 }]);
  expect(rows(copy, "SELECT count(*) AS n FROM entries")).toEqual([{ n: 400 }]);
  copy.close();
  openSqlite(folder, [...migrations, addPlaces]).close(); // runs nothing twice
});

test("a step that fails leaves the tables as they were", () => {
  const folder = newFolder();
  filled(folder);
  expect(() => openSqlite(folder, [...migrations, addPlaces, fails])).toThrow();
  const database = openSqlite(folder);
  expect(rows(database, "SELECT * FROM notebooks")).toEqual([{ id: "n", arrivals: 0 }]);
  expect(rows(database, "SELECT name FROM sqlite_schema WHERE name = 'half'")).toEqual([]);
  database.close();
  expect(existsSync(`${fileIn(folder)}.before-version-2`)).toBe(true);
});
