import { join } from "node:path";
import type { KeptEntry } from "../core/notebook/entry.ts";
import {
  type AppendPlan,
  type Held,
  type Incoming,
  idsConcerned,
  photographOf,
  planAppend,
  readIncoming,
} from "./append-plan.ts";
import { nameOf } from "./notebook-name.ts";
import {
  type AppendReport,
  type Arrivals,
  arrivalOfCursor,
  type NotebookStore,
  type NotebookSummary,
} from "./notebook-store.ts";
import { openSqlite } from "./open-sqlite.ts";
import { PhotographFiles, sha256OfBytes } from "./photograph-files.ts";
import { type Database, inTransaction } from "./sqlite-driver.ts";

function prepareAll(database: Database) {
  return {
    notebooks: database.prepare("SELECT id, arrivals FROM notebooks ORDER BY id"),
    arrivals: database.prepare("SELECT arrivals FROM notebooks WHERE id = ?"),
    begin: database.prepare("INSERT INTO notebooks (id, arrivals) VALUES (?, 0) ON CONFLICT DO NOTHING"),
    count: database.prepare("UPDATE notebooks SET arrivals = ? WHERE id = ?"),
    text: database.prepare("SELECT text FROM entries WHERE notebook = ? AND id = ?"),
    ofKind: database.prepare("SELECT text FROM entries WHERE notebook = ? AND kind = ? ORDER BY arrival"),
    after: database.prepare(
      "SELECT arrival, text FROM entries WHERE notebook = ? AND arrival > ? ORDER BY arrival LIMIT ?",
    ),
    insert: database.prepare(
      "INSERT INTO entries (notebook, arrival, id, kind, photograph, text) VALUES (?, ?, ?, ?, ?, ?)",
    ),
    empty: database.prepare("UPDATE entries SET text = ?, photograph = NULL WHERE notebook = ? AND id = ?"),
    isWithdrawn: database.prepare("SELECT 1 FROM withdrawn WHERE notebook = ? AND id = ?"),
    withdraw: database.prepare("INSERT INTO withdrawn (notebook, id) VALUES (?, ?) ON CONFLICT DO NOTHING"),
    withdrawPhotograph: database.prepare(
      "INSERT INTO withdrawn_photographs (sha256) VALUES (?) ON CONFLICT DO NOTHING",
    ),
    photographIsUsed: database.prepare("SELECT 1 FROM entries WHERE photograph = ? LIMIT 1"),
    photographIsWithdrawn: database.prepare("SELECT 1 FROM withdrawn_photographs WHERE sha256 = ?"),
    unusedPhotographs: database.prepare(
      "SELECT sha256 FROM withdrawn_photographs WHERE sha256 NOT IN (SELECT photograph FROM entries WHERE photograph IS NOT NULL)",
    ),
  };
}

/** Notebooks in an SQLite file, photographs as files beside it: one folder, which can be copied. */
export class SqliteStore implements NotebookStore {
  readonly #database: Database;
  readonly #sql: ReturnType<typeof prepareAll>;
  readonly #files: PhotographFiles;

  private constructor(folder: string) {
    this.#database = openSqlite(folder);
    this.#sql = prepareAll(this.#database);
    this.#files = new PhotographFiles(join(folder, "photographs"));
  }

  /** @throws DatabaseRefused for a database that is not ours, is damaged, or cannot be written */
  static async open(folder: string): Promise<SqliteStore> {
    const store = new SqliteStore(folder);
    await store.#dropUnusedPhotographs(); // a process that was killed may have left some
    return store;
  }

  async notebooks(): Promise<readonly NotebookSummary[]> {
    const rows = this.#sql.notebooks.all() as { id: string; arrivals: number }[];
    return rows.map(({ id, arrivals }) => {
      const ofKind = (kind: string) => this.#sql.ofKind.all(id, kind) as { text: string }[];
      const name = nameOf(id, (kind) => ofKind(kind).map((row) => row.text));
      return { id, ...name, entries: arrivals };
    });
  }

  async has(notebook: string): Promise<boolean> {
    return this.#sql.arrivals.get(notebook) !== undefined;
  }

  async append(notebook: string, texts: readonly string[]): Promise<AppendReport> {
    const incoming = readIncoming(texts);
    const plan = inTransaction(this.#database, () => {
      const planned = planAppend(notebook, incoming, this.#held(notebook, incoming));
      this.#write(notebook, planned);
      return planned;
    });
    if (plan.empty.length > 0) {
      this.#database.exec("PRAGMA wal_checkpoint(TRUNCATE)"); // the texts are not to stay in the log either
      await this.#dropUnusedPhotographs();
    }
    return plan.report;
  }

  async after(notebook: string, cursor: string | null, limit: number): Promise<Arrivals> {
    const from = arrivalOfCursor(cursor);
    const rows = this.#sql.after.all(notebook, from, limit) as { arrival: number; text: string }[];
    return { entries: rows.map((row) => row.text), cursor: String(rows.at(-1)?.arrival ?? from) };
  }

  async putPhotograph(sha256: string, bytes: Uint8Array): Promise<"kept" | "hash-differs" | "withdrawn"> {
    if (sha256OfBytes(bytes) !== sha256) return "hash-differs";
    const isWithdrawn = this.#sql.photographIsWithdrawn.get(sha256) !== undefined;
    if (isWithdrawn && this.#sql.photographIsUsed.get(sha256) === undefined) return "withdrawn";
    await this.#files.put(sha256, bytes);
    return "kept";
  }

  photograph(sha256: string): Promise<Uint8Array | null> {
    return this.#files.get(sha256);
  }

  async close(): Promise<void> {
    this.#database.close();
  }

  #held(notebook: string, incoming: readonly Incoming[]): Held {
    const texts = new Map<string, string>();
    const withdrawn = new Set<string>();
    for (const id of idsConcerned(incoming)) {
      const row = this.#sql.text.get(notebook, id) as { text: string } | undefined;
      if (row !== undefined) texts.set(id, row.text);
      if (this.#sql.isWithdrawn.get(notebook, id) !== undefined) withdrawn.add(id);
    }
    return { begun: this.#sql.arrivals.get(notebook) !== undefined, texts, withdrawn };
  }

  #write(notebook: string, plan: AppendPlan): void {
    if (plan.insert.length > 0) this.#insert(notebook, plan.insert);
    for (const { entry, text } of plan.empty) this.#sql.empty.run(text, notebook, entry.id);
    for (const id of plan.withdraw) this.#sql.withdraw.run(notebook, id);
    for (const sha256 of plan.photographs) this.#sql.withdrawPhotograph.run(sha256);
  }

  #insert(notebook: string, insert: readonly KeptEntry[]): void {
    this.#sql.begin.run(notebook);
    let { arrivals } = this.#sql.arrivals.get(notebook) as { arrivals: number };
    for (const kept of insert) {
      const { id, kind } = kept.entry;
      this.#sql.insert.run(notebook, ++arrivals, id, kind, photographOf(kept), kept.text);
    }
    this.#sql.count.run(arrivals, notebook);
  }

  async #dropUnusedPhotographs(): Promise<void> {
    for (const { sha256 } of this.#sql.unusedPhotographs.all() as { sha256: string }[])
      await this.#files.drop(sha256);
  }
}
