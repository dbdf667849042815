import type { Keep, RowState, Written } from "./keep.ts";
import { MemoryKeep } from "./memory-keep.ts";

type IdAndText = { readonly id: string; readonly text: string };

/** Why the browser does not keep just now: no room is left, or it takes nothing at all. */
export type NotKeeping = "no-room" | "refused";

export interface KeeperNews {
  readonly kept: (written: readonly Written[], renumbered: boolean) => void;
  /** The browser refused to keep; the page goes on in memory. */
  readonly keepsNoMore: (why: NotKeeping) => void;
  /** There is room again, and what was in memory alone is kept. */
  readonly keepsAgain: () => void;
}

/**
 * Carries what was written to what the browser keeps, in order, one transaction after another. What is written while
 * one runs goes together in the next. When the browser refuses, the page's memory takes its place, and each later
 * writing tries first to carry that over.
 */
export class Keeper {
  readonly #notebook: string;
  readonly #news: KeeperNews;
  readonly #lasting: Keep;
  #keep: Keep;
  #waiting: Written[] = [];
  #work: Promise<void> = Promise.resolve();

  constructor(notebook: string, keep: Keep, news: KeeperNews) {
    this.#notebook = notebook;
    this.#lasting = keep;
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

  settleSent(ids: readonly string[]): Promise<void> {
    return this.#next(() => this.#keep.settleSent(this.#notebook, ids));
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

  /** Tries whether there is room again for what is in memory alone. */
  tryAgain(): Promise<void> {
    return this.#next(() => this.#comeBack());
  }

  async #keepWaiting(): Promise<void> {
    const written = this.#waiting;
    this.#waiting = [];
    await this.#comeBack();
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
    this.#news.keepsNoMore(error.name === "QuotaExceededError" ? "no-room" : "refused");
  }

  /** Rows first, their states next and the last number at the end: stopped half-way it is simply tried again. */
  async #comeBack(): Promise<void> {
    if (this.#keep === this.#lasting || !this.#lasting.lasting) return;
    const rows = await this.#keep.rows(this.#notebook);
    const [card] = await this.#keep.cards();
    try {
      await this.#lasting.keepImported(this.#notebook, rows);
      for (const { id, state, refusal } of rows)
        if (state !== "to-send") await this.#lasting.settle(this.#notebook, id, state, refusal);
      const kept = (await this.#lasting.cards()).find(({ id }) => id === this.#notebook);
      const seq = Math.max(kept?.seq ?? 0, card?.seq ?? 0);
      await this.#lasting.putCard({ id: this.#notebook, seq });
    } catch (error) {
      if (error instanceof DOMException) return; // still no room
      throw error;
    }
    this.#keep = this.#lasting;
    this.#news.keepsAgain();
  }
}
