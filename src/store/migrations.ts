import type { Database } from "./sqlite-driver.ts";

/** One step of the tables; steps are only ever added, and each runs once. */
export type Migration = (database: Database) => void;

/** The tables at version n are made by the first n of these. */
export const migrations: readonly Migration[] = [
  (database) =>
    database.exec(`
      CREATE TABLE notebooks (
        id TEXT PRIMARY KEY,
        arrivals INTEGER NOT NULL
      ) WITHOUT ROWID;
      CREATE TABLE entries (
        notebook TEXT NOT NULL REFERENCES notebooks (id),
        arrival INTEGER NOT NULL,
        id TEXT NOT NULL,
        kind TEXT NOT NULL,
        photograph TEXT,
        text TEXT NOT NULL
      );
      CREATE UNIQUE INDEX entries_by_arrival ON entries (notebook, arrival);
      CREATE UNIQUE INDEX entries_by_id ON entries (notebook, id);
      CREATE INDEX entries_by_kind ON entries (notebook, kind);
      CREATE INDEX entries_by_photograph ON entries (photograph) WHERE photograph IS NOT NULL;
      CREATE TABLE withdrawn (
        notebook TEXT NOT NULL REFERENCES notebooks (id),
        id TEXT NOT NULL,
        PRIMARY KEY (notebook, id)
      ) WITHOUT ROWID;
      CREATE TABLE withdrawn_photographs (sha256 TEXT PRIMARY KEY) WITHOUT ROWID;
    `),
];
