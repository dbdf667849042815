import BetterSqlite3 from "better-sqlite3";

export type SqlValue = string | number | bigint | null | Uint8Array;

/** What the store asks of a prepared statement; rows come as plain objects. */
export interface Statement {
  run(...values: SqlValue[]): { readonly changes: number };
  get(...values: SqlValue[]): unknown;
  all(...values: SqlValue[]): unknown[];
}

/** What the store asks of an SQLite driver, and no more: this file alone knows which one it is. */
export interface Database {
  exec(sql: string): void;
  prepare(sql: string): Statement;
  close(): void;
}

/** How long one process waits for another that is writing, before it says that the database is busy. */
const waitMs = 5_000;

export function openDatabase(file: string, how: "read" | "write"): Database {
  const database = new BetterSqlite3(file, {
    readonly: how === "read",
    fileMustExist: how === "read",
    timeout: waitMs,
  });
  return {
    exec: (sql) => void database.exec(sql),
    prepare: (sql) => database.prepare<SqlValue[]>(sql),
    close: () => void database.close(),
  };
}

/** The driver's own word for what went wrong, such as SQLITE_CORRUPT; undefined for any other error. */
export const sqliteCodeOf = (error: unknown): string | undefined =>
  error instanceof BetterSqlite3.SqliteError ? error.code : undefined;

/** Runs `work` in one write transaction: all of it is on disk afterwards, or none. */
export function inTransaction<T>(database: Database, work: () => T): T {
  database.exec("BEGIN IMMEDIATE");
  try {
    const result = work();
    database.exec("COMMIT");
    return result;
  } catch (error) {
    try {
      database.exec("ROLLBACK");
    } catch (rollbackError) {
      if (sqliteCodeOf(rollbackError) === undefined) throw rollbackError; // SQLite has rolled back by itself
    }
    throw error;
  }
}

export function pragma(database: Database, name: string): unknown {
  const row = database.prepare(`PRAGMA ${name}`).get() as Record<string, unknown> | undefined;
  return row === undefined ? undefined : Object.values(row)[0];
}
