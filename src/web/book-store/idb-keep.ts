import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from "idb";
import {
  emptyCard,
  type Keep,
  type KeptWritten,
  type NotebookCard,
  numberAfter,
  type Row,
  type RowState,
  type Written,
} from "./keep.ts";

type IdAndText = { readonly id: string; readonly text: string };

interface Stores extends DBSchema {
  device: { key: string; value: string };
  cards: { key: string; value: NotebookCard };
  /** `order` is given by the database: what was kept first is sent first. */
  rows: {
    key: number;
    value: Omit<Row, "order"> & { order?: number };
    indexes: { "by-notebook": string; "by-id": [string, string] };
  };
}
type Writing = IDBPTransaction<Stores, ("cards" | "rows")[], "readwrite">;

/** What this browser keeps in IndexedDB. Every method is one transaction, so two tabs never tear one another's work. */
export class IdbKeep implements Keep {
  readonly lasting = true;
  readonly #db: IDBPDatabase<Stores>;

  private constructor(db: IDBPDatabase<Stores>) {
    this.#db = db;
  }

  /** `overtaken` is called when a newer version of the pages, in another tab, has to change the database. */
  static async open(newDevice: () => string, overtaken: () => void): Promise<IdbKeep> {
    const db = await openDB<Stores>("lacbench", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("device");
        fresh.createObjectStore("cards", { keyPath: "id" });
        const rows = fresh.createObjectStore("rows", { keyPath: "order", autoIncrement: true });
        rows.createIndex("by-notebook", "notebook");
        rows.createIndex("by-id", ["notebook", "id"], { unique: true });
      },
      blocking(_, __, event) {
        (event.target as IDBDatabase).close(); // the event is the database's own
        overtaken();
      },
    });
    const tx = db.transaction("device", "readwrite");
    if ((await tx.store.get("device")) === undefined) await tx.store.put(newDevice(), "device");
    await tx.done;
    return new IdbKeep(db);
  }

  async device(): Promise<string> {
    return (await this.#db.get("device", "device")) as string; // put there when it was opened
  }

  async cards(): Promise<readonly NotebookCard[]> {
    return this.#db.getAll("cards");
  }

  async putCard(card: Pick<NotebookCard, "id"> & Partial<NotebookCard>): Promise<void> {
    const tx = this.#db.transaction("cards", "readwrite");
    await tx.store.put({ ...emptyCard(card.id), ...(await tx.store.get(card.id)), ...card });
    await tx.done;
  }

  async rows(notebook: string): Promise<readonly Row[]> {
    // All in one go: by the index a browser fetches each row on its own, and few devices keep a second notebook.
    const all = (await this.#db.getAll("rows")) as Row[]; // kept ones have an order
    return all.filter((row) => row.notebook === notebook);
  }

  /** On the disk before it counts as kept: nobody else has it yet. */
  async keepWritten(notebook: string, written: readonly Written[]): Promise<KeptWritten> {
    const tx = this.#writing("strict");
    const card = (await tx.objectStore("cards").get(notebook)) ?? emptyCard(notebook);
    const numbered = numberAfter(card.seq, written);
    for (const one of numbered.texts) await add(tx, notebook, one, "to-send");
    await tx.objectStore("cards").put({ ...card, seq: card.seq + written.length });
    await tx.done;
    return numbered;
  }

  async keepArrived(notebook: string, texts: readonly IdAndText[]): Promise<void> {
    const tx = this.#writing();
    for (const one of texts) {
      const row = await tx.objectStore("rows").index("by-id").get([notebook, one.id]);
      if (row === undefined) await add(tx, notebook, one, "sent");
      else if (row.state !== "sent") await tx.objectStore("rows").put({ ...row, state: "sent" });
    }
    await tx.done;
  }

  async keepImported(notebook: string, texts: readonly IdAndText[]): Promise<void> {
    const tx = this.#writing();
    for (const one of texts) {
      const known = await tx.objectStore("rows").index("by-id").getKey([notebook, one.id]);
      if (known === undefined) await add(tx, notebook, one, "to-send");
    }
    await tx.done;
  }

  async settle(notebook: string, id: string, state: RowState, refusal?: string): Promise<void> {
    await this.#change(notebook, id, { state, ...(refusal === undefined ? {} : { refusal }) });
  }

  async settleSent(notebook: string, ids: readonly string[]): Promise<void> {
    const tx = this.#writing();
    const rows = tx.objectStore("rows");
    for (const id of ids) {
      const row = await rows.index("by-id").get([notebook, id]);
      if (row !== undefined) await rows.put({ ...row, state: "sent" });
    }
    await tx.done;
  }

  async replaceText(notebook: string, id: string, text: string): Promise<void> {
    await this.#change(notebook, id, { text });
  }

  async #change(notebook: string, id: string, what: Partial<Row>): Promise<void> {
    const tx = this.#writing();
    const row = await tx.objectStore("rows").index("by-id").get([notebook, id]);
    if (row !== undefined) await tx.objectStore("rows").put({ ...row, ...what });
    await tx.done;
  }

  #writing(durability: IDBTransactionDurability = "default"): Writing {
    return this.#db.transaction(["cards", "rows"] as ("cards" | "rows")[], "readwrite", { durability });
  }
}

const add = (tx: Writing, notebook: string, one: IdAndText, state: RowState) =>
  tx.objectStore("rows").add({ notebook, id: one.id, text: one.text, state });
