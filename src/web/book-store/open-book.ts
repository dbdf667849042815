import { type Accessor, createMemo, createSignal } from "solid-js";
import type { KeptEntry, NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body, Kind } from "../../core/notebook/kinds/all.ts";
import { Notebook } from "../../core/notebook/notebook.ts";
import { readKeptEntry, readOwnEntry } from "../../core/notebook/parse-entry.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import { type EntryDraft, writeEntry } from "../../core/notebook/write-entry.ts";
import type { SendAnswer } from "./api.ts";
import type { Keep, Row, Written } from "./keep.ts";
import { Keeper } from "./keeper.ts";
import { Outbox, type RefusedEntry, type ToSend } from "./outbox.ts";
import type { Tabs } from "./tabs.ts";
import { writer } from "./writer.ts";

/** What a page says happened; the envelope is put around it here. */
export type Draft<K extends Kind> = Omit<EntryDraft<K>, "notebook">;

export interface BookEffects {
  readonly now: () => string;
  readonly randomBytes: (length: number) => Uint8Array;
  readonly zone: string;
  readonly tabs: Tabs;
}

export interface Status {
  readonly toSend: number;
  readonly refused: number;
  /** This browser keeps what is written over a visit. */
  readonly keeps: boolean;
  /** It would, but has no room left. */
  readonly noRoom: boolean;
  /** Written a moment ago and not on the disk yet. */
  readonly unkept: number;
  /** How many of those to be sent are on this page alone. */
  readonly pageAlone: number;
  readonly reachable: boolean;
  /** The house answers, and does not let this device in (any more). */
  readonly barred: boolean;
}

/** What became of texts that came in. */
export interface Adopted {
  readonly added: number;
  readonly known: number;
  readonly refused: readonly string[];
}

interface Taken {
  readonly fresh: readonly string[];
  readonly known: readonly string[];
  readonly refused: readonly string[];
}

/**
 * One notebook, open: the fold of its entries for the pages to read, and the way of what is written here. An entry is
 * in the fold before `write` returns; keeping and sending it follow by themselves.
 */
export class OpenBook {
  readonly id: string;
  readonly zone: string;
  readonly device: string;
  readonly #effects: BookEffects;
  readonly #keeper: Keeper;
  #notebook: Notebook;
  #outbox: Outbox;
  #seq: number;
  readonly #unkept = new Set<string>();
  readonly #pageAlone = new Set<string>();
  readonly #version = createSignal(0);
  readonly #status;
  /** Called when there is something to send. */
  onSomethingToSend: () => void = () => undefined;

  constructor(
    id: string,
    device: string,
    keep: Keep,
    rows: readonly Row[],
    seq: number,
    effects: BookEffects,
  ) {
    this.id = id;
    this.device = device;
    this.zone = effects.zone;
    this.#effects = effects;
    this.#seq = seq;
    this.#outbox = Outbox.of(rows);
    this.#keeper = new Keeper(id, keep, {
      kept: (written, renumbered) => this.#wasKept(written, renumbered),
      keepsNoMore: (why) => this.#tellStatus({ keeps: false, noRoom: why === "no-room" }),
      keepsAgain: () => {
        this.#pageAlone.clear();
        this.#tellStatus({ keeps: true, noRoom: false });
      },
    });
    this.#notebook = new Notebook(id);
    const kept = rows.map((row) => readOwnEntry(row.text));
    this.#dropTexts(this.#notebook.add(kept).emptied);
    for (const { entry } of kept) this.#raiseSeq(entry);
    this.#status = createSignal<Status>({
      ...{ toSend: 0, refused: 0, keeps: keep.lasting, noRoom: false, unkept: 0, pageAlone: 0 },
      ...{ reachable: true, barred: false },
    });
    this.#tellStatus({});
    effects.tabs.listen((news) => {
      if (news.notebook !== id) return;
      if (news.say === "written") this.#hearWritten(news.texts);
      else this.#settled(news.sent, news.refused);
    });
  }

  /** A view of the notebook, computed again only when something that it read has changed. */
  view<T>(key: string, compute: (read: NotebookReader) => T): Accessor<T> {
    return createMemo(() => this.look(key, compute));
  }

  /** The same inside a computation of the caller's own; tracked there. */
  look<T>(key: string, compute: (read: NotebookReader) => T): T {
    this.#version[0]();
    // A view of the core may remember its own answer under the very same key.
    return this.#notebook.derive(`page:${key}`, compute);
  }

  /** The whole notebook, tracked: for the Book, an export, the reports. */
  whole(): Notebook {
    this.#version[0]();
    return this.#notebook;
  }

  readonly status = (): Status => this.#status[0]();
  readonly invented = (): boolean => this.#cover()?.invented === true;
  readonly name = (): string => this.#cover()?.name ?? "";

  /** Writes down what happened and returns the new entry's id. It shows at once and is sent when it can be. */
  write<K extends Kind>(draft: Draft<K>): string {
    const kept = writeEntry<K>(
      { ...draft, notebook: this.id },
      { ...this.#effects, device: this.device, by: writer(), nextSeq: () => ++this.#seq },
    );
    this.#dropTexts(this.#notebook.add([kept]).emptied);
    this.#outbox.put(kept.entry.id, kept.text);
    this.#unkept.add(kept.entry.id);
    this.#changed();
    this.#keeper.keep({ id: kept.entry.id, seq: kept.entry.seq, text: kept.text });
    return kept.entry.id;
  }

  /** Strikes entries out: they stay readable, with a line through. Undo everywhere is this. */
  strike(ids: readonly string[], why?: string): string {
    const about = new Set(ids.flatMap((id) => this.#notebook.entry(id)?.about ?? []));
    return this.write({
      kind: "struck",
      about: [...about],
      strikes: ids,
      body: why === undefined ? {} : { why },
    });
  }

  /** What is not kept yet stays: another tab may have taken its number, and then its text changes. */
  get toSend(): readonly ToSend[] {
    return this.#outbox.toSend.filter(({ id }) => !this.#unkept.has(id));
  }

  refused(): readonly RefusedEntry[] {
    this.status();
    return this.#outbox.refused;
  }

  sendAgain(id: string): void {
    const text = this.#outbox.textOf(id);
    if (text === undefined) return;
    this.#outbox.put(id, text);
    this.#keeper.settle(id, "to-send");
    this.#tellStatus({});
    this.onSomethingToSend();
  }

  /** The house's answer to what was sent. */
  async answered(answer: SendAnswer): Promise<void> {
    const refused = answer.refused.flatMap(({ id, message }) => (id === null ? [] : [{ id, message }]));
    this.#settled(answer.accepted, refused);
    this.#effects.tabs.tell({ say: "settled", notebook: this.id, sent: answer.accepted, refused });
    await this.#keeper.settleSent(answer.accepted);
    for (const { id, message } of refused) await this.#keeper.settle(id, "refused", message);
  }

  /** The person's own file now holds all that is here: with no house that is where it was to go. */
  inOwnFile(): Promise<void> {
    return this.answered({ accepted: this.toSend.map(({ id }) => id), refused: [] });
  }

  /** Takes in what the house told; it is kept before `cursor` is. */
  async arrived(texts: readonly string[], cursor: string | null): Promise<void> {
    const { fresh, known } = this.#take(texts);
    if (fresh.length > 0) this.#changed();
    await this.#keeper.arrived(this.#asKept([...fresh, ...known]), cursor);
  }

  /** Takes in texts from a file and sends them on. */
  async imported(texts: readonly string[]): Promise<Adopted> {
    const { fresh, known, refused } = this.#take(texts);
    for (const id of fresh) this.#outbox.put(id, this.#textOf(id));
    this.#changed();
    await this.#keeper.imported(this.#asKept(fresh));
    this.onSomethingToSend();
    return { added: fresh.length, known: known.length, refused };
  }

  /** Nothing that was sent is known in the house (another folder, say): all of it is to be sent anew, its beginning first. */
  async sendEverything(): Promise<void> {
    const all = this.#notebook.ordered();
    const begins = all.filter((entry) => entry.kind === "notebook-begun");
    this.#outbox = new Outbox();
    for (const { id } of [...begins, ...all]) {
      this.#outbox.put(id, this.#textOf(id));
      await this.#keeper.settle(id, "to-send");
    }
    this.#tellStatus({});
  }

  /** Whether the house answers, and lets this device in. */
  setReach(reachable: boolean, barred: boolean): void {
    const was = this.status();
    if (was.reachable !== reachable || was.barred !== barred) this.#tellStatus({ reachable, barred });
  }

  /** Has the browser try again to keep what is on this page alone. */
  keepAgain(): Promise<void> {
    return this.#keeper.tryAgain();
  }

  /** Settled once all that was written so far is kept. */
  settledHere(): Promise<void> {
    return this.#keeper.idle();
  }

  #cover(): Body<"notebook-begun"> | undefined {
    return this.look("cover", (read) => read.ofKind("notebook-begun")[0]?.body as Body<"notebook-begun">);
  }

  #textOf(id: string): string {
    return this.#notebook.kept(id)?.text ?? "";
  }

  /** As the fold has them now: of one that was withdrawn meanwhile, only the stub. */
  #asKept(ids: readonly string[]): readonly { readonly id: string; readonly text: string }[] {
    return ids.map((id) => ({ id, text: this.#textOf(id) }));
  }

  #take(texts: readonly string[]): Taken {
    const refused: string[] = [];
    const kept = new Map<string, KeptEntry>();
    for (const text of texts) {
      const read = readKeptEntry(text);
      if (!read.ok) refused.push(read.error.message);
      else kept.set(read.value.entry.id, read.value);
    }
    const report = this.#notebook.add([...kept.values()]);
    this.#dropTexts(report.emptied);
    for (const one of kept.values()) this.#raiseSeq(one.entry);
    return {
      fresh: report.added,
      known: report.known,
      refused: [...refused, ...report.refused.map((r) => r.message)],
    };
  }

  /** What was withdrawn leaves its stub, in what the browser keeps and in what is still to be sent. */
  #dropTexts(ids: readonly string[]): void {
    for (const id of ids) {
      if (this.#outbox.textOf(id) !== undefined) this.#outbox.put(id, this.#textOf(id));
      void this.#keeper.replaceText(id, this.#textOf(id));
    }
  }

  #raiseSeq(entry: NotebookEntry): void {
    if (entry.device === this.device) this.#seq = Math.max(this.#seq, entry.seq);
  }

  #hearWritten(texts: readonly string[]): void {
    for (const id of this.#take(texts).fresh) this.#outbox.put(id, this.#textOf(id));
    this.#changed();
  }

  #settled(
    sent: readonly string[],
    refused: readonly { readonly id: string; readonly message: string }[],
  ): void {
    for (const id of sent) {
      this.#outbox.sent(id);
      this.#pageAlone.delete(id);
    }
    for (const { id, message } of refused) this.#outbox.refuse(id, this.#textOf(id), message);
    this.#tellStatus({});
  }

  /** Kept here. When another tab took a number first, the fold is made again from the texts as they are now kept. */
  #wasKept(written: readonly Written[], renumbered: boolean): void {
    for (const { id } of written) this.#unkept.delete(id);
    if (renumbered) {
      const now = new Map(written.map((one) => [one.id, one.text]));
      const all = this.#notebook.ordered().map((entry) => now.get(entry.id) ?? this.#textOf(entry.id));
      this.#notebook = new Notebook(this.id);
      this.#take(all);
      for (const one of written) this.#outbox.put(one.id, one.text);
      this.#changed();
    }
    if (!this.status().keeps) for (const { id } of written) this.#pageAlone.add(id);
    this.#tellStatus({});
    this.#effects.tabs.tell({ say: "written", notebook: this.id, texts: written.map((one) => one.text) });
    this.onSomethingToSend();
  }

  #changed(): void {
    this.#version[1]((n) => n + 1);
    this.#tellStatus({});
  }

  #tellStatus(change: Partial<Status>): void {
    const { count, refused } = this.#outbox;
    const [unkept, pageAlone] = [this.#unkept.size, this.#pageAlone.size];
    this.#status[1]((was) => ({
      ...{ ...was, ...change },
      ...{ toSend: count, refused: refused.length, unkept, pageAlone },
    }));
  }
}
