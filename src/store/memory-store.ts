import { idsConcerned, photographOf, planAppend, readIncoming } from "./append-plan.ts";
import { nameOf } from "./notebook-name.ts";
import {
  type AppendReport,
  type Arrivals,
  arrivalOfCursor,
  type NotebookStore,
  type NotebookSummary,
} from "./notebook-store.ts";
import { sha256OfBytes } from "./photograph-files.ts";

interface Row {
  readonly kind: string;
  readonly photograph: string | null;
  readonly text: string;
}

interface Book {
  /** By id, in the order of arrival. */
  readonly rows: Map<string, Row>;
  readonly withdrawn: Set<string>;
}

/** Notebooks in memory: gone when the process ends. For tests, and for a look around. */
export class MemoryStore implements NotebookStore {
  readonly #books = new Map<string, Book>();
  readonly #photographs = new Map<string, Uint8Array>();
  readonly #withdrawnPhotographs = new Set<string>();

  async notebooks(): Promise<readonly NotebookSummary[]> {
    return [...this.#books].map(([id, { rows }]) => {
      const ofKind = (kind: string) => [...rows.values()].filter((row) => row.kind === kind);
      const name = nameOf(id, (kind) => ofKind(kind).map((row) => row.text));
      return { id, ...name, entries: rows.size };
    });
  }

  async has(notebook: string): Promise<boolean> {
    return this.#books.has(notebook);
  }

  async append(notebook: string, texts: readonly string[]): Promise<AppendReport> {
    const incoming = readIncoming(texts);
    const book = this.#books.get(notebook);
    const here = new Map<string, string>();
    for (const id of idsConcerned(incoming)) {
      const row = book?.rows.get(id);
      if (row !== undefined) here.set(id, row.text);
    }
    const held = { begun: book !== undefined, texts: here, withdrawn: book?.withdrawn ?? new Set<string>() };
    const plan = planAppend(notebook, incoming, held);
    if (plan.insert.length === 0 && plan.empty.length === 0) return plan.report;
    const { rows, withdrawn } = book ?? { rows: new Map<string, Row>(), withdrawn: new Set<string>() };
    this.#books.set(notebook, { rows, withdrawn });
    for (const kept of [...plan.insert, ...plan.empty]) {
      const { id, kind } = kept.entry;
      rows.set(id, { kind, photograph: photographOf(kept), text: kept.text }); // a Map keeps the place of a key it has
    }
    for (const id of plan.withdraw) withdrawn.add(id);
    for (const sha256 of plan.photographs) this.#withdrawPhotograph(sha256);
    return plan.report;
  }

  async after(notebook: string, cursor: string | null, limit: number): Promise<Arrivals> {
    const from = arrivalOfCursor(cursor);
    const rows = [...(this.#books.get(notebook)?.rows.values() ?? [])].slice(from, from + limit);
    return { entries: rows.map((row) => row.text), cursor: String(from + rows.length) };
  }

  async putPhotograph(sha256: string, bytes: Uint8Array): Promise<"kept" | "hash-differs" | "withdrawn"> {
    if (sha256OfBytes(bytes) !== sha256) return "hash-differs";
    if (this.#withdrawnPhotographs.has(sha256) && !this.#isUsed(sha256)) return "withdrawn";
    this.#photographs.set(sha256, bytes.slice());
    return "kept";
  }

  async photograph(sha256: string): Promise<Uint8Array | null> {
    return this.#photographs.get(sha256) ?? null;
  }

  async close(): Promise<void> {}

  #isUsed(sha256: string): boolean {
    return [...this.#books.values()].some(({ rows }) =>
      [...rows.values()].some((row) => row.photograph === sha256),
    );
  }

  #withdrawPhotograph(sha256: string): void {
    this.#withdrawnPhotographs.add(sha256);
    if (!this.#isUsed(sha256)) this.#photographs.delete(sha256);
  }
}
