import { type NotebookApi, NotLetIn, OutOfReach, Refused, type SendAnswer } from "./api.ts";
import { backoffMs } from "./backoff.ts";
import type { OpenBook } from "./open-book.ts";
import type { ToSend } from "./outbox.ts";

const entriesAtOnce = 200;
const arrivalsAtOnce = 500;
const pollMs = 4_000;

export interface CourierEffects {
  readonly wait: (ms: number, then: () => void) => () => void;
  /** Nobody looks at this page just now: then nothing is asked, and only what is written is sent. */
  readonly hidden: () => boolean;
}

/** Goes between this browser and the notebook's house: sends what is written, fetches what is new, and waits longer after each failure. */
export class Courier {
  readonly #book: OpenBook;
  readonly #api: NotebookApi;
  readonly #effects: CourierEffects;
  #cursor: string | null;
  #failures = 0;
  #going = false;
  #again = false;
  #stopped = false;
  #toldEverything = false;
  #cancel: () => void = () => undefined;
  /** Called when the house has just answered a whole round. */
  onAnswered: () => void = () => undefined;
  /** Called when the house turned out to know nothing of what it was sent. */
  onForgotten: () => Promise<void> = async () => undefined;

  constructor(book: OpenBook, api: NotebookApi, cursor: string | null, effects: CourierEffects) {
    this.#book = book;
    this.#api = api;
    this.#cursor = cursor;
    this.#effects = effects;
    book.onSomethingToSend = () => this.nudge();
  }

  /** Goes now, or once more when already on the way. Something has changed, so failures are counted anew. */
  nudge(): void {
    if (this.#stopped) return;
    this.#failures = 0;
    if (this.#going) {
      this.#again = true;
      return;
    }
    this.#cancel();
    void this.round();
  }

  stop(): void {
    this.#stopped = true;
    this.#cancel();
  }

  /** One way there and back, then the next is set. */
  async round(): Promise<void> {
    this.#going = true;
    this.#again = false;
    try {
      await this.#send();
      if (!this.#effects.hidden()) await this.#fetch();
      this.#failures = 0;
      this.#book.setReach(true, false);
      this.onAnswered();
    } catch (error) {
      if (!(error instanceof OutOfReach)) throw error;
      this.#failures++;
      this.#book.setReach(false, error instanceof NotLetIn);
    } finally {
      this.#going = false;
      this.#setNext();
    }
  }

  #setNext(): void {
    if (this.#stopped) return;
    const wait = this.#failures > 0 ? backoffMs(this.#failures) : this.#again ? 0 : pollMs;
    this.#cancel = this.#effects.wait(wait, () => void this.round());
  }

  async #send(): Promise<void> {
    for (;;) {
      const some = this.#book.toSend.slice(0, entriesAtOnce);
      if (some.length === 0) return;
      try {
        await this.#sendSome(some);
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        await this.#tellEverything();
      }
    }
  }

  /** The house knows no such notebook, or no such cursor: it was given another folder. Tell it everything again. */
  async #tellEverything(): Promise<void> {
    this.#toldEverything = true;
    this.#cursor = null;
    await this.#book.sendEverything();
    await this.onForgotten();
  }

  /** What a house says that has never heard of this notebook. */
  #isStranger(refused: Refused): boolean {
    return refused.code === "no-such-notebook" && !this.#toldEverything;
  }

  /** When the house refuses a whole parcel, each half is tried by itself, so that one bad entry holds up no other. */
  async #sendSome(some: readonly ToSend[]): Promise<void> {
    const answer = await this.#answerTo(some);
    const spoken = new Set([...answer.accepted, ...answer.refused.map((r) => r.id)]);
    if (some.every((one) => spoken.has(one.id))) return this.#book.answered(answer);
    const [only, ...others] = some;
    if (only === undefined) return;
    if (others.length === 0) {
      const message = answer.refused[0]?.message ?? "";
      return this.#book.answered({ accepted: [], refused: [{ id: only.id, code: "", message }] });
    }
    const half = Math.ceil(some.length / 2);
    await this.#sendSome(some.slice(0, half));
    await this.#sendSome(some.slice(half));
  }

  /** A parcel refused as a whole is an answer that names none of its entries. */
  async #answerTo(some: readonly ToSend[]): Promise<SendAnswer> {
    try {
      return await this.#api.send(
        this.#book.id,
        some.map((one) => one.text),
      );
    } catch (error) {
      if (!(error instanceof Refused) || this.#isStranger(error)) throw error;
      return { accepted: [], refused: [{ id: null, code: error.code, message: error.message }] };
    }
  }

  async #fetch(): Promise<void> {
    for (;;) {
      const arrivals = await this.#arrivals();
      if (arrivals === undefined) return;
      if (arrivals.texts.length > 0 || arrivals.cursor !== this.#cursor) {
        await this.#book.arrived(arrivals.texts, arrivals.cursor);
        this.#cursor = arrivals.cursor;
      }
      if (arrivals.texts.length < arrivalsAtOnce) return;
    }
  }

  async #arrivals() {
    try {
      return await this.#api.arrivals(this.#book.id, this.#cursor, arrivalsAtOnce);
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      if (this.#cursor !== null) {
        await this.#tellEverything();
        this.#again = true;
      }
      return undefined;
    }
  }
}
