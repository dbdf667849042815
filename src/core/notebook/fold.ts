import type { KeptEntry } from "./entry.ts";
import { closure, placeAfter, placeAgain } from "./link-order.ts";
import { Listing } from "./listing.ts";
import { judgeLiveness } from "./liveness.ts";
import { meeting, otherContent, type Refusal } from "./meeting.ts";
import { type Placed, place } from "./placed.ts";
import { understand } from "./understanding.ts";
import { isStub, stubbable, stubOf, withdraws } from "./withdrawal.ts";

const none: readonly Placed[] = [];

/** Of a kind whose body cannot be read as its kind promises, or with none: not for views. Unknown kinds harm none. */
function isReadable(kept: KeptEntry): boolean {
  const understanding = kept.understanding ?? understand(kept.entry);
  if (understanding.as === "not-understood") return understanding.unknown === "kind";
  return understanding.as === "understood" && !isStub(kept.entry);
}

const push = <K, V>(lists: Map<K, V[]>, key: K, value: V): void => {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
};

/** What became of one entry that came in. */
export type Taken = "added" | "known" | "emptied" | Refusal;

/**
 * The entries with their places, what strikes what, and lists by thing and by kind, kept up to date entry by entry: a new
 * one costs what it touches.
 */
export class Fold {
  readonly nodes = new Map<string, Placed>();
  readonly all = new Listing();
  readonly #things = new Map<string, Listing>();
  readonly #kinds = new Map<string, Listing>();
  readonly #strikers = new Map<string, Placed[]>();
  readonly #withdrawn = new Set<string>();
  linkRings: readonly Placed[][] = [];
  strikeRings: readonly Placed[][] = [];
  version = 0;

  /** Takes in one entry of this notebook; `settle` puts it into its place. */
  take(incoming: KeptEntry): Taken {
    const { id } = incoming.entry;
    const here = this.nodes.get(id);
    if (here !== undefined) {
      const outcome = meeting(here.kept, incoming);
      if (outcome === "replace") this.#empty(here, incoming);
      return outcome === "refuse" ? otherContent(id) : outcome === "keep" ? "known" : "emptied";
    }
    const gone = this.#withdrawn.has(id) && stubbable(incoming.entry);
    const kept = gone ? stubOf(incoming) : incoming;
    const node = place(kept, isReadable(kept));
    this.nodes.set(id, node);
    this.#list(node);
    for (const struck of new Set(kept.entry.strikes)) push(this.#strikers, struck, node);
    return "added";
  }

  /** Drops the texts that these entries withdraw; returns the ids of those that had one. */
  withdraw(fresh: readonly Placed[]): string[] {
    const emptied: string[] = [];
    for (const node of fresh) {
      for (const id of withdraws(node.kept)) {
        this.#withdrawn.add(id);
        const target = this.nodes.get(id);
        if (target === undefined || isStub(target.kept.entry) || !stubbable(target.kept.entry)) continue;
        this.#empty(target, stubOf(target.kept));
        emptied.push(id);
      }
    }
    return emptied;
  }

  /** Puts entries just taken into the order, and works out what is live. */
  settle(fresh: readonly Placed[]): void {
    this.#link(fresh);
    this.#strike(fresh);
  }

  strikersOf(id: string): readonly Placed[] {
    return this.#strikers.get(id) ?? none;
  }

  /** The list of entries that have this id or are about it. */
  thing(id: string): Listing {
    let listing = this.#things.get(id);
    if (listing === undefined) {
      listing = new Listing();
      this.#things.set(id, listing);
      const own = this.nodes.get(id);
      if (own !== undefined) listing.add(own, this.version);
    }
    return listing;
  }

  kind(kind: string): Listing {
    let listing = this.#kinds.get(kind);
    if (listing === undefined) {
      listing = new Listing();
      this.#kinds.set(kind, listing);
    }
    return listing;
  }

  #list(node: Placed): void {
    const { kind, about } = node.kept.entry;
    this.all.add(node, this.version);
    this.kind(kind).add(node, this.version);
    this.#things.get(node.id)?.add(node, this.version);
    about.forEach((id, i) => {
      if (id !== node.id && about.indexOf(id) === i) this.thing(id).add(node, this.version);
    });
  }

  #empty(node: Placed, stub: KeptEntry): void {
    node.kept = stub;
    node.readable = false;
    this.#tell(node, "changed");
  }

  #tell(node: Placed, what: "changed" | "moved"): void {
    const { kind, about } = node.kept.entry;
    this.all[what](this.version);
    this.kind(kind)[what](this.version);
    this.#things.get(node.id)?.[what](this.version);
    for (const id of about) this.#things.get(id)?.[what](this.version);
  }

  readonly #before = (node: Placed): Placed[] => {
    const before: Placed[] = [];
    for (const id of node.kept.entry.about) {
      const there = this.nodes.get(id);
      if (there !== undefined && there !== node) before.push(there);
    }
    return before;
  };

  readonly #after = (node: Placed): readonly Placed[] => this.#things.get(node.id)?.nodes() ?? none;

  #link(fresh: readonly Placed[]): void {
    const disturbed: Placed[] = [];
    for (const node of fresh) {
      placeAfter(node, this.#before(node));
      if (this.#after(node).some((later) => later !== node)) disturbed.push(node);
    }
    if (disturbed.length === 0) return;
    const hanging = closure(disturbed, this.#after);
    const { moved, rings } = placeAgain(hanging, this.#before);
    for (const node of moved) this.#tell(node, "moved");
    this.linkRings = [...this.linkRings.filter((ring) => !ring.some((n) => hanging.has(n))), ...rings];
  }

  readonly #struckBy = (node: Placed): Placed[] => {
    const struck: Placed[] = [];
    for (const id of node.kept.entry.strikes) {
      const there = this.nodes.get(id);
      if (there !== undefined) struck.push(there);
    }
    return struck;
  };

  #strike(fresh: readonly Placed[]): void {
    const concerned = fresh.filter((n) => n.kept.entry.strikes.length > 0 || this.#strikers.has(n.id));
    if (concerned.length === 0) return;
    const hanging = closure(concerned, this.#struckBy);
    const strikersOf = (node: Placed) => this.strikersOf(node.id);
    const { changed, rings } = judgeLiveness(hanging, strikersOf, this.#struckBy);
    for (const node of changed) this.#tell(node, "changed");
    // What a correction stands for depends on what it strikes, which may only have come now.
    for (const node of concerned) for (const striker of strikersOf(node)) this.#tell(striker, "changed");
    this.strikeRings = [...this.strikeRings.filter((ring) => !ring.some((n) => hanging.has(n))), ...rings];
  }
}
