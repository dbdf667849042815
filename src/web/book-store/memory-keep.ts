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

/** For a browser that refuses to keep anything: the same behaviour for as long as the page is open. */
export class MemoryKeep implements Keep {
  readonly lasting: boolean = false;
  readonly #device: string;
  readonly #cards = new Map<string, NotebookCard>();
  readonly #rows = new Map<string, Map<string, Row>>();
  #order = 0;

  constructor(device: string) {
    this.#device = device;
  }

  async device(): Promise<string> {
    return this.#device;
  }

  async cards(): Promise<readonly NotebookCard[]> {
    return [...this.#cards.values()];
  }

  async putCard(card: Pick<NotebookCard, "id"> & Partial<NotebookCard>): Promise<void> {
    this.#cards.set(card.id, { ...emptyCard(card.id), ...this.#cards.get(card.id), ...card });
  }

  async rows(notebook: string): Promise<readonly Row[]> {
    return [...this.#of(notebook).values()];
  }

  async keepWritten(notebook: string, written: readonly Written[]): Promise<KeptWritten> {
    const card = this.#cards.get(notebook) ?? emptyCard(notebook);
    const numbered = numberAfter(card.seq, written);
    for (const one of numbered.texts) this.#add(notebook, one, "to-send");
    this.#cards.set(notebook, { ...card, seq: card.seq + written.length });
    return numbered;
  }

  async keepArrived(notebook: string, texts: readonly IdAndText[]): Promise<void> {
    for (const one of texts) {
      const row = this.#of(notebook).get(one.id);
      if (row === undefined) this.#add(notebook, one, "sent");
      else this.#of(notebook).set(one.id, { ...row, state: "sent" });
    }
  }

  async keepImported(notebook: string, texts: readonly IdAndText[]): Promise<void> {
    for (const one of texts) if (!this.#of(notebook).has(one.id)) this.#add(notebook, one, "to-send");
  }

  async settle(notebook: string, id: string, state: RowState, refusal?: string): Promise<void> {
    const row = this.#of(notebook).get(id);
    if (row !== undefined)
      this.#of(notebook).set(id, { ...row, state, ...(refusal === undefined ? {} : { refusal }) });
  }

  async settleSent(notebook: string, ids: readonly string[]): Promise<void> {
    for (const id of ids) await this.settle(notebook, id, "sent");
  }

  async replaceText(notebook: string, id: string, text: string): Promise<void> {
    const row = this.#of(notebook).get(id);
    if (row !== undefined) this.#of(notebook).set(id, { ...row, text });
  }

  #of(notebook: string): Map<string, Row> {
    const rows = this.#rows.get(notebook) ?? new Map<string, Row>();
    this.#rows.set(notebook, rows);
    return rows;
  }

  #add(notebook: string, one: IdAndText, state: RowState): void {
    this.#of(notebook).set(one.id, { notebook, id: one.id, text: one.text, state, order: ++this.#order });
  }
}
