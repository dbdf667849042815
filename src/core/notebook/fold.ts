import type { KeptEntry } from "./entry.ts";
import { closure, placeAfter, placeAgain } from "./link-order.ts";
import { Listing } from "./listing.ts";
import { judgeLiveness } from "./liveness.ts";
import { meeting, otherContent, type Refusal } from "./meeting.ts";
import { come, type Placed, type Slot } from "./placed.ts";
import { isStub, stubbable, stubOf, withdraws } from "./withdrawal.ts";

/** What became of one entry that came in. */
export type Taken = Placed | "known" | "emptied" | Refusal;

const about = (node: Placed): readonly Placed[] => node.slot.listing?.members() ?? [];
const struckBy = (node: Placed): readonly Placed[] => come(node.strikes);
const strikersOf = (node: Placed): readonly Placed[] => node.slot.strikers;

/** The rings that stand, once those that touch `nodes` were looked for again. */
const ringsAfter = (
  old: readonly (readonly Placed[])[],
  nodes: ReadonlySet<Placed>,
  found: readonly (readonly Placed[])[],
): readonly (readonly Placed[])[] => [...old.filter((ring) => !ring.some((n) => nodes.has(n))), ...found];

/**
 * The entries with their places, what strikes what, and lists by thing and by kind, kept up to date entry by entry: a new
 * one costs what it touches.
 */
export class Fold {
  readonly all = new Listing();
  readonly #slots = new Map<string, Slot>();
  readonly #kinds = new Map<string, Listing>();
  /** Taken in after entries about them, whose places are to be worked out again. */
  #late: Placed[] = [];
  linkRings: readonly (readonly Placed[])[] = [];
  strikeRings: readonly (readonly Placed[])[] = [];
  version = 0;

  /** Takes in one entry of this notebook; `settle` finishes what several have in common. */
  take(incoming: KeptEntry): Taken {
    const slot = this.#slot(incoming.entry.id);
    const here = slot.node;
    if (here === undefined) return this.#newNode(slot, incoming);
    const outcome = meeting(here.kept, incoming);
    if (outcome === "replace") this.#empty(here, incoming);
    return outcome === "refuse" ? otherContent(slot.id) : outcome === "keep" ? "known" : "emptied";
  }

  /** Drops the texts that these entries withdraw; returns the ids of those that had one. */
  withdraw(fresh: readonly Placed[]): string[] {
    const emptied: string[] = [];
    for (const node of fresh) {
      for (const id of withdraws(node.kept)) {
        const slot = this.#slot(id);
        slot.withdrawn = true;
        const kept = slot.node?.kept;
        if (slot.node === undefined || kept === undefined || isStub(kept.entry) || !stubbable(kept.entry))
          continue;
        this.#empty(slot.node, stubOf(kept));
        emptied.push(id);
      }
    }
    return emptied;
  }

  /** Puts entries just taken into the order, and works out what is live. */
  settle(fresh: readonly Placed[]): void {
    this.#placeLate();
    this.#strike(fresh);
  }

  node(id: string): Placed | undefined {
    return this.#slots.get(id)?.node;
  }

  /** The list of entries that have this id or are about it. */
  thing(id: string): Listing {
    return this.#listing(this.#slot(id));
  }

  kind(kind: string): Listing {
    let listing = this.#kinds.get(kind);
    if (listing === undefined) {
      listing = new Listing();
      this.#kinds.set(kind, listing);
    }
    return listing;
  }

  #slot(id: string): Slot {
    let slot = this.#slots.get(id);
    if (slot === undefined) {
      slot = { id, node: undefined, listing: undefined, strikers: [], withdrawn: false };
      this.#slots.set(id, slot);
    }
    return slot;
  }

  #listing(slot: Slot): Listing {
    if (slot.listing === undefined) {
      slot.listing = new Listing();
      if (slot.node !== undefined) slot.listing.add(slot.node, this.version);
    }
    return slot.listing;
  }

  #slotsOf(ids: readonly string[], own: Slot | null): readonly Slot[] {
    const slots: Slot[] = [];
    for (const id of ids) {
      const slot = this.#slot(id);
      if (slot !== own && !slots.includes(slot)) slots.push(slot);
    }
    return slots;
  }

  #newNode(slot: Slot, incoming: KeptEntry): Placed {
    const kept = slot.withdrawn && stubbable(incoming.entry) ? stubOf(incoming) : incoming;
    const { happened, about: aboutIds, strikes } = kept.entry;
    const node: Placed = {
      kept,
      slot,
      about: this.#slotsOf(aboutIds, slot),
      strikes: this.#slotsOf(strikes, null),
      effective: happened,
      depth: 0,
      tie: happened,
      live: true,
      readable: undefined,
    };
    if (slot.listing !== undefined && slot.listing.members().length > 0) this.#late.push(node);
    placeAfter(node, come(node.about), happened);
    slot.node = node;
    slot.listing?.add(node, this.version);
    for (const thing of node.about) this.#listing(thing).add(node, this.version);
    this.all.add(node, this.version);
    this.kind(kept.entry.kind).add(node, this.version);
    for (const struck of node.strikes) struck.strikers.push(node);
    return node;
  }

  #empty(node: Placed, stub: KeptEntry): void {
    node.kept = stub;
    node.readable = false;
    this.#changed(node);
  }

  #changed(node: Placed): void {
    this.all.changed(node, this.version);
    this.kind(node.kept.entry.kind).changed(node, this.version);
    node.slot.listing?.changed(node, this.version);
    for (const thing of node.about) thing.listing?.changed(node, this.version);
  }

  #placeLate(): void {
    if (this.#late.length === 0) return;
    const hanging = closure(this.#late, about);
    this.#late = [];
    const { moved, rings } = placeAgain(hanging);
    for (const node of moved) this.#changed(node);
    this.linkRings = ringsAfter(this.linkRings, hanging, rings);
  }

  #strike(fresh: readonly Placed[]): void {
    const concerned = fresh.filter((node) => node.strikes.length > 0 || node.slot.strikers.length > 0);
    if (concerned.length === 0) return;
    const hanging = closure(concerned, struckBy);
    const { changed, rings } = judgeLiveness(hanging, strikersOf, struckBy);
    // What stands for a thing, and what a correction stands for, depends on the strikes themselves.
    const besides = concerned.flatMap((node) => [...struckBy(node), ...strikersOf(node)]);
    for (const node of new Set([...changed, ...besides])) this.#changed(node);
    this.strikeRings = ringsAfter(this.strikeRings, hanging, rings);
  }
}
