import type { Row } from "./keep.ts";

export interface ToSend {
  readonly id: string;
  readonly text: string;
}

export interface RefusedEntry extends ToSend {
  readonly message: string;
}

/** What is still to be sent, in the order in which it was kept, and what was refused. Plain data over a list of rows. */
export class Outbox {
  readonly #toSend = new Map<string, string>();
  readonly #refused = new Map<string, RefusedEntry>();

  static of(rows: readonly Row[]): Outbox {
    const box = new Outbox();
    for (const row of [...rows].sort((a, b) => a.order - b.order)) {
      if (row.state === "to-send") box.put(row.id, row.text);
      if (row.state === "refused") box.refuse(row.id, row.text, row.refusal ?? "");
    }
    return box;
  }

  get toSend(): readonly ToSend[] {
    return [...this.#toSend].map(([id, text]) => ({ id, text }));
  }

  get count(): number {
    return this.#toSend.size;
  }

  get refused(): readonly RefusedEntry[] {
    return [...this.#refused.values()];
  }

  put(id: string, text: string): void {
    this.#refused.delete(id);
    this.#toSend.set(id, text);
  }

  sent(id: string): void {
    this.#toSend.delete(id);
    this.#refused.delete(id);
  }

  refuse(id: string, text: string, message: string): void {
    this.#toSend.delete(id);
    this.#refused.set(id, { id, text, message });
  }

  textOf(id: string): string | undefined {
    return this.#toSend.get(id) ?? this.#refused.get(id)?.text;
  }
}
