import { photographsTold } from "../../core/notebook/photographs-in-file.ts";
import type { Fetch } from "../book-store/api.ts";
import type { OpenBook } from "../book-store/open-book.ts";
import {
  countWaiting,
  dropPicture,
  dropUnnamed,
  isNoKeep,
  picturesToSend,
  settlePictures,
} from "./picture-keep.ts";

const withdrawn = 410;
/** Long enough for the largest over a slow network; a house that went out of reach half-way may never say so. */
const patienceMs = 120_000;

/** Takes the photographs of a notebook to its house, one after another, when the house has just answered. */
export class PhotographSender {
  readonly #book: OpenBook;
  readonly #fetch: Fetch;
  #going = false;
  #withdrawals = -1;

  constructor(book: OpenBook, fetch: Fetch) {
    this.#book = book;
    this.#fetch = fetch;
  }

  /** What does not go now goes in a later round. */
  async round(): Promise<void> {
    if (this.#going) return;
    this.#going = true;
    try {
      await this.#dropWithdrawn();
      for (const { sha256, bytes } of await picturesToSend(this.#book.id)) {
        const answer = await this.#fetch(`/api/photographs/${sha256}`, {
          method: "PUT",
          body: new Uint8Array(bytes),
          signal: AbortSignal.timeout(patienceMs),
        });
        if (answer.ok) await settlePictures(this.#book.id, [sha256], "sent");
        else if (answer.status === withdrawn) await dropPicture(this.#book.id, sha256);
      }
      await countWaiting(this.#book.id); // another page of this browser may have sent some
    } catch (error) {
      if (!isNoKeep(error)) throw error; // no answer, or a browser that keeps nothing
    } finally {
      this.#going = false;
    }
  }

  /** What was withdrawn leaves this device too. */
  async #dropWithdrawn(): Promise<void> {
    const notebook = this.#book.whole();
    const { length } = notebook.ofKind("withdrawn");
    if (length === this.#withdrawals) return;
    const named = new Set(photographsTold(notebook.ordered()).map((one) => one.sha256));
    await dropUnnamed(this.#book.id, named);
    this.#withdrawals = length;
  }
}
