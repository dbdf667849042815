import type { KeptEntry, NotebookEntry } from "./entry.ts";
import { Fold } from "./fold.ts";
import { closure } from "./link-order.ts";
import type { Listing } from "./listing.ts";
import { otherNotebook, type Refusal } from "./meeting.ts";
import { inOrder, type Placed } from "./placed.ts";
import { isReadable } from "./readable.ts";
import type { NotebookReader } from "./reader.ts";
import { type NotebookReport, reportOfRing, reportOfUnderstanding, reportsOfNumbers } from "./reports.ts";
import { Tracking } from "./tracking.ts";
import { understand } from "./understanding.ts";

/** What became of the entries that were added. */
export interface AddReport {
  readonly added: readonly string[];
  /** Already here, saying the same. */
  readonly known: readonly string[];
  readonly refused: readonly Refusal[];
  /** Whose text was withdrawn now: a device drops theirs from its own store and keeps `kept(id)`. */
  readonly emptied: readonly string[];
}

/**
 * A notebook: the fold of its entries. Entries may be added in any order, any number of times, in any parts; what comes out
 * depends only on which were added.
 */
export class Notebook implements NotebookReader {
  readonly id: string;
  readonly #fold = new Fold();
  readonly #refused = new Map<string, Refusal>();
  readonly #listeners = new Set<(report: AddReport) => void>();
  readonly #tracking = new Tracking();
  #reports: { version: number; list: readonly NotebookReport[] } | undefined;

  constructor(id: string) {
    this.id = id;
  }

  /** Goes up with every `add`. */
  get version(): number {
    return this.#fold.version;
  }

  get size(): number {
    return this.#fold.all.members().length;
  }

  /**
   * Takes entries in. One that is already here counts once; one with the id of another and other content, or of another
   * notebook, is refused and reported.
   */
  add(incoming: readonly KeptEntry[]): AddReport {
    const fresh: Placed[] = [];
    const known: string[] = [];
    const refused: Refusal[] = [];
    const emptied: string[] = [];
    this.#fold.version++;
    for (const kept of incoming) {
      const { id, notebook } = kept.entry;
      const taken = notebook === this.id ? this.#fold.take(kept) : otherNotebook(id, notebook, this.id);
      if (taken === "known") known.push(id);
      else if (taken === "emptied") emptied.push(id);
      else if ("slot" in taken) fresh.push(taken);
      else refused.push(taken);
    }
    emptied.push(...this.#fold.withdraw(fresh));
    this.#fold.settle(fresh);
    for (const refusal of refused) this.#refused.set(refusal.id, refusal);
    const report = { added: fresh.map((node) => node.slot.id), known, refused, emptied };
    if (fresh.length + emptied.length + refused.length > 0)
      for (const listener of this.#listeners) listener(report);
    return report;
  }

  /** Calls `listener` after every `add` that changed something; returns how to stop that. */
  onChange(listener: (report: AddReport) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** The entry with the text in which it came, for a store, a server or an export. */
  kept(id: string): KeptEntry | undefined {
    return this.#fold.node(id)?.kept;
  }

  /** Every entry, struck and withdrawn ones too, in the notebook's order. */
  ordered(): readonly NotebookEntry[] {
    this.#tracking.read(() => this.#fold.all);
    return this.#fold.all.every();
  }

  /** The live entries that strike this one, in the notebook's order. */
  struckBy(id: string): readonly NotebookEntry[] {
    this.#readsThing(id);
    const strikers = this.#fold.node(id)?.slot.strikers ?? [];
    for (const { slot } of strikers) this.#readsThing(slot.id);
    const live = strikers.filter((striker) => striker.live);
    return live.sort(inOrder).map((striker) => striker.kept.entry);
  }

  entry(id: string): NotebookEntry | undefined {
    this.#readsThing(id);
    return this.#fold.node(id)?.kept.entry;
  }

  isLive(id: string): boolean {
    this.#readsThing(id);
    return this.#fold.node(id)?.live ?? false;
  }

  making(id: string): NotebookEntry | undefined {
    this.#readsThing(id);
    const made = this.#fold.node(id);
    if (made === undefined) return undefined;
    const standIns = [...this.#corrections(made)].filter((node) => node.live && isReadable(node));
    const isSuperseded = (node: Placed): boolean => {
      const later = this.#corrections(node);
      return standIns.some((other) => other !== node && later.has(other));
    };
    const latest = standIns.length > 1 ? standIns.filter((node) => !isSuperseded(node)) : standIns;
    return (latest.length > 0 ? latest : standIns).sort(inOrder).at(-1)?.kept.entry;
  }

  thingOf(entry: NotebookEntry): string {
    const passed = new Set<string>();
    for (let first = entry; ; ) {
      passed.add(first.id);
      this.#readsThing(first.id);
      const struck = [...first.strikes].sort().map((id) => this.#fold.node(id)?.kept.entry);
      const before = struck.find((e) => e !== undefined && e.kind === entry.kind && !passed.has(e.id));
      if (before === undefined) return first.id;
      first = before;
    }
  }

  touching(id: string): readonly NotebookEntry[] {
    return this.#read(() => this.#fold.thing(id)).live();
  }

  ofKind(kind: string): readonly NotebookEntry[] {
    return this.#read(() => this.#fold.kind(kind)).live();
  }

  derive<T>(key: string, compute: (read: NotebookReader) => T): T {
    return this.#tracking.derive(
      key,
      () => this.version,
      () => compute(this),
    );
  }

  /** What a person should know of: rings, gaps, entries refused or not understood. */
  get reports(): readonly NotebookReport[] {
    if (this.#reports?.version !== this.version)
      this.#reports = { version: this.version, list: this.#report() };
    return this.#reports.list;
  }

  #report(): NotebookReport[] {
    const kept = this.#fold.all.members().map((node) => node.kept);
    const odd = kept.map(({ entry, understanding }) =>
      reportOfUnderstanding(entry, understanding ?? understand(entry)),
    );
    return [
      ...this.#fold.linkRings.map((ring) => reportOfRing("link-ring", ring)),
      ...this.#fold.strikeRings.map((ring) => reportOfRing("strike-ring", ring)),
      ...odd.filter((report) => report !== null),
      ...[...this.#refused.values()].map((refusal) => ({ about: "refused" as const, ...refusal })),
      ...reportsOfNumbers(kept.map(({ entry }) => entry)),
    ];
  }

  /** This entry and those of its kind that strike it, and those that strike them, and so on. */
  #corrections(node: Placed): Set<Placed> {
    const { kind } = node.kept.entry;
    const corrections = closure([node], (n) =>
      n.slot.strikers.filter((striker) => striker.kept.entry.kind === kind),
    );
    for (const { slot } of corrections) this.#readsThing(slot.id);
    return corrections;
  }

  #readsThing(id: string): void {
    this.#tracking.read(() => this.#fold.thing(id));
  }

  #read(listing: () => Listing): Listing {
    this.#tracking.read(listing);
    return listing();
  }
}
