import type { KeptEntry } from "./entry.ts";
import { compareInstants } from "./instant.ts";
import type { Listing } from "./listing.ts";

/** An id that something names, whether or not its entry has come yet. */
export interface Slot {
  readonly id: string;
  node: Placed | undefined;
  /** The entries that have this id or are about it, once there is more than the one. */
  listing: Listing | undefined;
  /** The entries that strike this one. */
  readonly strikers: Placed[];
  /** Whether its text was withdrawn, and must not come back. */
  withdrawn: boolean;
}

/** An entry in its place in the notebook. Only the notebook's own modules change one. */
export interface Placed {
  kept: KeptEntry;
  readonly slot: Slot;
  /** The slots of what it is about, each once, without its own. */
  readonly about: readonly Slot[];
  readonly strikes: readonly Slot[];
  /** The later of its own time and those of everything it is about: a use never comes before the making. */
  effective: string;
  /** Steps from the first entry about which it is at the same effective time. */
  depth: number;
  /** When it happened; entries whose links form a ring share the latest, and fall back to their ids. */
  tie: string;
  live: boolean;
  /** Whether views may see it, as `isReadable` worked it out; undefined until somebody looks. */
  readable: boolean | undefined;
}

/** The notebook's order: making before use whatever the clocks say, then time, then id. */
export const inOrder = (a: Placed, b: Placed): number =>
  compareInstants(a.effective, b.effective) ||
  a.depth - b.depth ||
  compareInstants(a.tie, b.tie) ||
  (a.slot.id < b.slot.id ? -1 : a.slot.id > b.slot.id ? 1 : 0);

/** The entries named by `slots` that have come. */
export function come(slots: readonly Slot[]): Placed[] {
  const nodes: Placed[] = [];
  for (const { node } of slots) if (node !== undefined) nodes.push(node);
  return nodes;
}
