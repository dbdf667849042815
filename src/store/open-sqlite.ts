import { closeSync, mkdirSync, openSync, readSync, renameSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { type RefusalReason, refuseDatabase } from "./database-refused.ts";
import { type Migration, migrations } from "./migrations.ts";
import { type Database, inTransaction, openDatabase, pragma, sqliteCodeOf } from "./sqlite-driver.ts";

/** "LACB", in the header field that SQLite keeps for the program that a file belongs to. */
const applicationId = 0x4c414342;
const sqliteHeader = "SQLite format 3\0";

const reasonOfCode: Readonly<Record<string, RefusalReason>> = {
  SQLITE_NOTADB: "not-a-database",
  SQLITE_CORRUPT: "damaged",
  SQLITE_CANTOPEN: "no-permission",
  SQLITE_READONLY: "no-permission",
  SQLITE_PERM: "no-permission",
  SQLITE_FULL: "no-room",
  SQLITE_BUSY: "busy",
  SQLITE_LOCKED: "busy",
  EACCES: "no-permission",
  EPERM: "no-permission",
  EROFS: "no-permission",
  ENOTDIR: "no-permission",
  EEXIST: "no-permission",
  ENOSPC: "no-room",
};

/** Runs `work`; what the disk or the database has against it becomes one sentence. Other errors pass. */
function orRefuse<T>(path: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    const code = sqliteCodeOf(error) ?? (error as NodeJS.ErrnoException).code ?? "";
    const reason = reasonOfCode[code] ?? reasonOfCode[code.split("_").slice(0, 2).join("_")];
    if (reason === undefined) throw error;
    throw refuseDatabase(reason, path);
  }
}

function firstBytes(file: string, count: number): string {
  const handle = openSync(file, "r");
  try {
    const bytes = Buffer.alloc(count);
    return bytes.toString("latin1", 0, readSync(handle, bytes, 0, count, 0));
  } finally {
    closeSync(handle);
  }
}

/** Looks at a file without writing to it; throws for one that is not ours to write to. */
function inspect(file: string, known: number): void {
  const size = statSync(file, { throwIfNoEntry: false })?.size ?? 0;
  if (size === 0) return; // absent, or made and not yet written to
  if (firstBytes(file, sqliteHeader.length) !== sqliteHeader) throw refuseDatabase("not-a-database", file);
  const database = openDatabase(file, "read");
  try {
    if (pragma(database, "application_id") !== applicationId) throw refuseDatabase("foreign", file);
    if (Number(pragma(database, "user_version")) > known) throw refuseDatabase("newer", file);
    if (pragma(database, "quick_check(1)") !== "ok") throw refuseDatabase("damaged", file);
  } finally {
    database.close();
  }
}

/** Copies the whole of an open database to a file beside it, which appears when it is complete. */
function copyBeside(database: Database, file: string, version: number): void {
  const copy = `${file}.before-version-${version + 1}`;
  const unfinished = `${copy}.unfinished`;
  rmSync(unfinished, { force: true });
  database.exec(`VACUUM INTO '${unfinished.replaceAll("'", "''")}'`);
  renameSync(unfinished, copy);
}

/** Brings the tables up to date, all steps in one transaction; the original is copied first. */
function migrate(database: Database, file: string, steps: readonly Migration[]): void {
  const version = (): number => Number(pragma(database, "user_version"));
  const before = version();
  if (before > 0 && before < steps.length) copyBeside(database, file, before);
  inTransaction(database, () => {
    for (let at = version(); at < steps.length; at++) steps[at]?.(database); // another process may have been first
    database.exec(`PRAGMA application_id = ${applicationId}; PRAGMA user_version = ${steps.length}`);
  });
}

/**
 * Opens the database in `folder`, and makes both where they are not there yet. Every commit is on the disk before it is
 * answered; what is deleted is overwritten.
 *
 * @throws DatabaseRefused for a file that is not ours, is damaged, or cannot be written; it is left as it is
 */
export function openSqlite(folder: string, steps: readonly Migration[] = migrations): Database {
  const file = join(folder, "lacbench.sqlite");
  orRefuse(folder, () => mkdirSync(folder, { recursive: true }));
  return orRefuse(file, () => {
    inspect(file, steps.length);
    const database = openDatabase(file, "write");
    try {
      database.exec("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA fullfsync = ON");
      database.exec("PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON");
      if (pragma(database, "user_version") !== steps.length) migrate(database, file, steps);
      return database;
    } catch (error) {
      database.close();
      throw error;
    }
  });
}
