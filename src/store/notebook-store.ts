/** What is told of a notebook without folding it. */
export interface NotebookSummary {
  readonly id: string;
  readonly name: string;
  /** A demo: its data is made up. */
  readonly invented: boolean;
  readonly entries: number;
}

/** An entry that was not taken in, and why. `id` is null where the text had none that could be read. */
export interface AppendRefusal {
  readonly id: string | null;
  readonly code: string;
  readonly message: string;
  readonly field?: string;
  readonly value?: unknown;
}

export interface AppendReport {
  /** On disk now, or before: in the order in which they came. */
  readonly accepted: readonly string[];
  readonly refused: readonly AppendRefusal[];
}

export interface Arrivals {
  /** Exact texts in the order in which the store received them. */
  readonly entries: readonly string[];
  /** Where to go on from; the same again when nothing new has come. */
  readonly cursor: string;
}

/**
 * Where notebooks are kept. Everything is a promise, so that a store may be another process or another machine.
 *
 * Arrival numbers are given in the order in which commits become visible: a reader that has seen n never misses n − 1.
 */
export interface NotebookStore {
  notebooks(): Promise<readonly NotebookSummary[]>;
  has(notebook: string): Promise<boolean>;
  /**
   * Keeps entries, and drops the texts that they withdraw. Answers only after they are on disk. The same entry may come
   * any number of times. The first entries of a new notebook must hold its `notebook-begun`.
   */
  append(notebook: string, texts: readonly string[]): Promise<AppendReport>;
  /** The next entries after `cursor`, from the first where it is null. Throws `UnknownCursor` for one not given out here. */
  after(notebook: string, cursor: string | null, limit: number): Promise<Arrivals>;
  /** Keeps a photograph under its hash. Answers only after it is on disk. */
  putPhotograph(sha256: string, bytes: Uint8Array): Promise<"kept" | "hash-differs" | "withdrawn">;
  photograph(sha256: string): Promise<Uint8Array | null>;
  close(): Promise<void>;
}

export class UnknownCursor extends Error {
  override readonly name = "UnknownCursor";
  readonly cursor: string;
  constructor(cursor: string) {
    super(`The cursor ${cursor} was not given out by this store.`);
    this.cursor = cursor;
  }
}

/** An arrival number as a cursor, and back. */
export function arrivalOfCursor(cursor: string | null): number {
  if (cursor === null) return 0;
  if (!/^(0|[1-9]\d{0,14})$/.test(cursor)) throw new UnknownCursor(cursor);
  return Number(cursor);
}
