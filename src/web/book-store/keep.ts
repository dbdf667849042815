/** Where an entry stands on its way from this browser to the notebook's house. */
export type RowState = "to-send" | "sent" | "refused";

/** An entry as this browser keeps it: its exact text and where it stands. */
export interface Row {
  readonly notebook: string;
  readonly id: string;
  readonly text: string;
  readonly state: RowState;
  /** Why the house refused it, in its words. */
  readonly refusal?: string;
  /** The order in which this browser got it; what is to be sent goes in this order. */
  readonly order: number;
}

/** What this browser knows of a notebook besides its entries. */
export interface NotebookCard {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  /** How far arrivals were fetched. */
  readonly cursor: string | null;
  /** The last number this device gave in this notebook. */
  readonly seq: number;
}

/** A text just written here, with the number that it was given in the hurry. */
export interface Written {
  readonly id: string;
  readonly seq: number;
  readonly text: string;
}

export interface KeptWritten {
  readonly texts: readonly Written[];
  /** Another tab had given one of these numbers already, so the texts were numbered anew. */
  readonly renumbered: boolean;
}

/** What a browser remembers between two visits; `MemoryKeep` is the one for a browser that keeps nothing. */
export interface Keep {
  readonly lasting: boolean;
  device(): Promise<string>;
  cards(): Promise<readonly NotebookCard[]>;
  /** Adds a notebook, or changes what is told of a known one. */
  putCard(card: Pick<NotebookCard, "id"> & Partial<NotebookCard>): Promise<void>;
  rows(notebook: string): Promise<readonly Row[]>;
  /** Keeps what was written here, to be sent. Numbers are settled in one transaction, whatever other tabs do. */
  keepWritten(notebook: string, written: readonly Written[]): Promise<KeptWritten>;
  /** Keeps what came from elsewhere; a row that is there already stays, but counts as sent from now on. */
  keepArrived(
    notebook: string,
    texts: readonly { readonly id: string; readonly text: string }[],
  ): Promise<void>;
  /** Keeps what was read from a file, to be sent. Rows that are there already stay. */
  keepImported(
    notebook: string,
    texts: readonly { readonly id: string; readonly text: string }[],
  ): Promise<void>;
  settle(notebook: string, id: string, state: RowState, refusal?: string): Promise<void>;
  /** The house has these, all of them in one transaction. */
  settleSent(notebook: string, ids: readonly string[]): Promise<void>;
  /** Puts the stub of a withdrawn entry in the place of its text. */
  replaceText(notebook: string, id: string, text: string): Promise<void>;
}

export const emptyCard = (id: string): NotebookCard => ({
  id,
  name: "",
  invented: false,
  cursor: null,
  seq: 0,
});

/** The same entry under another number. It was written in this browser a moment ago and sent nowhere. */
export function renumber(written: Written, seq: number): Written {
  if (written.seq === seq) return written;
  const entry = JSON.parse(written.text) as Record<string, unknown>;
  return { id: written.id, seq, text: JSON.stringify({ ...entry, seq }) };
}

/** The numbers that follow `last`, given to these texts in their order. */
export function numberAfter(last: number, written: readonly Written[]): KeptWritten {
  const texts = written.map((one, i) => renumber(one, last + 1 + i));
  return { texts, renumbered: texts.some((one, i) => one !== written[i]) };
}
