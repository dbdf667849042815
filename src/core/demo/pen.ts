import { DomainError } from "../domain-error.ts";
import type { KeptEntry } from "../notebook/entry.ts";
import type { Body, Kind } from "../notebook/kinds/all.ts";
import type { TypedQuantity } from "../notebook/kinds/parts.ts";
import { Notebook } from "../notebook/notebook.ts";
import { type EntryDraft, writeEntry } from "../notebook/write-entry.ts";
import { parseQuantity } from "../quantity/parse-quantity.ts";
import type { Dimension } from "../quantity/unit-table.ts";
import { type Random, randomFromSeed } from "../random.ts";

/** A quantity as somebody would type it, read as the pages read it. */
export function typed(text: string, dimension: Dimension, instrument?: string): TypedQuantity {
  const read = parseQuantity(text, { dimensions: [dimension] });
  if (!read.ok) throw new DomainError({ code: "wrong-type", field: "typed", value: text });
  const { unit, si } = read.value;
  return { typed: text, unit, si, ...(instrument === undefined ? {} : { instrument }) };
}

/** What may be said of an entry beside its body. */
export type Around = Omit<EntryDraft<Kind>, "notebook" | "kind" | "body" | "happened">;

const uuidFrom = (random: Random): string => {
  const hex = Array.from({ length: 32 }, () => Math.floor(random() * 16).toString(16)).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
};

/** Writes a notebook's entries one after another, all from one seed: the same seed gives the same bytes. */
export class Pen {
  readonly notebook: string;
  readonly entries: KeptEntry[] = [];
  /** What is written so far, folded. */
  readonly book: Notebook;
  readonly #random: Random;
  readonly #device: string;
  readonly #zone: string;
  readonly #by: string | null;

  constructor(seed: string, zone: string, by: string | null = null) {
    this.#random = randomFromSeed(`pen ${seed}`);
    this.notebook = uuidFrom(this.#random);
    this.book = new Notebook(this.notebook);
    this.#device = uuidFrom(this.#random);
    this.#zone = zone;
    this.#by = by;
  }

  /** Writes down what happened at an instant, at once unless told, and returns the entry's id. */
  write<K extends Kind>(at: string, kind: K, body: Body<K>, around: Around = {}, recorded = at): string {
    const kept = writeEntry<K>(
      { ...around, notebook: this.notebook, kind, body, happened: at },
      {
        now: () => recorded,
        randomBytes: (length) => Uint8Array.from({ length }, () => Math.floor(this.#random() * 256)),
        zone: this.#zone,
        device: this.#device,
        nextSeq: () => this.entries.length + 1,
        by: this.#by,
      },
    );
    this.entries.push(kept);
    this.book.add([kept]);
    return kept.entry.id;
  }
}
