import type { Keep, RowState, Written } from "./keep.ts";
import { MemoryKeep } from "./memory-keep.ts";

type IdAndText = { readonly id: string; readonly text: string };

export interface KeeperNews {
  readonly kept: (written: readonly Written[], renumbered: boolean) => void;
  /** The browser refused to keep (no room, storage taken away); the page goes on in memory. */
  readonly keepsNoMore: () => void;
}

/**
 * Carries what was written to what the browser keeps, in order, one transaction after another. What is written while
 * one runs goes together in the next.
 */
export class Keeper {
  readonly #notebook: string;
  readonly #news: KeeperNews;
  #keep: Keep;
  #waiting: Written[] = [];
  #work: Promise<void> = Promise.resolve();

  constructor(notebook: string, keep: Keep, news: KeeperNews) {
    this.#notebook = notebook;
    this.#keep = keep;
    this.#news = news;
  }

  keep(written: Written): void {
    this.#waiting.push(written);
    if (this.#waiting.length === 1) this.#next(() => this.#keepWaiting());
  }

  settle(id: string, state: RowState, refusal?: string): Promise<void> {
    return this.#next(() => this.#keep.settle(this.#notebook, id, state, refusal));
  }

  replaceText(id: string, text: string): Promise<void> {
    return this.#next(() => this.#keep.replaceText(this.#notebook, id, text));
  }

  imported(texts: readonly IdAndText[]): Promise<void> {
    return this.#next(() => this.#keep.keepImported(this.#notebook, texts));
  }

  arrived(texts: readonly IdAndText[], cursor: string | null): Promise<void> {
    return this.#next(async () => {
      if (texts.length > 0) await this.#keep.keepArrived(this.#notebook, texts);
      await this.#keep.putCard({ id: this.#notebook, cursor });
    });
  }

  idle(): Promise<void> {
    return this.#work;
  }

  async #keepWaiting(): Promise<void> {
    const written = this.#waiting;
    this.#waiting = [];
    const { texts, renumbered } = await this.#keep
      .keepWritten(this.#notebook, written)
      .catch(async (error: unknown) => {
        await this.#goOnInMemory(error);
        await this.#keep.putCard({ id: this.#notebook, seq: (written[0] as Written).seq - 1 });
        return this.#keep.keepWritten(this.#notebook, written);
      });
    this.#news.kept(texts, renumbered);
  }

  #next(step: () => Promise<void>): Promise<void> {
    const done = this.#work.then(step).catch(async (error: unknown) => {
      await this.#goOnInMemory(error);
      await step();
    });
    this.#work = done.catch(() => undefined); // the caller hears of it; what comes after goes on
    return done;
  }

  async #goOnInMemory(error: unknown): Promise<void> {
    if (!this.#keep.lasting || !(error instanceof DOMException)) throw error;
    this.#keep = new MemoryKeep("");
    this.#news.keepsNoMore();
  }
}
