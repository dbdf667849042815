import type { KeptEntry } from "./entry.ts";

/** An entry in its place in the notebook. Only the notebook's own modules change one. */
export interface Placed {
  kept: KeptEntry;
  readonly id: string;
  /** When it happened, in a spelling that compares as text. */
  readonly happened: string;
  /** The later of its own time and those of everything it is about: a use never comes before the making. */
  effective: string;
  /** Steps from the first entry about which it is at the same effective time. */
  depth: number;
  /** `happened`, but for a ring of links, whose entries share one time and fall back to their ids. */
  tie: string;
  live: boolean;
  /** Whether views may see it: not with a body of another shape than its kind promises, nor with none. */
  readable: boolean;
}

/** `2026-10-05T18:30:00.50Z` as `2026-10-05T18:30:00.5`: of equal instants equal, of others in order. */
const comparable = (instant: string): string =>
  instant.length === 20 ? instant.slice(0, 19) : instant.slice(0, -1).replace(/\.?0+$/, "");

export function place(kept: KeptEntry, readable: boolean): Placed {
  const happened = comparable(kept.entry.happened);
  return {
    ...{ kept, id: kept.entry.id, happened, effective: happened, depth: 0, tie: happened },
    ...{ live: true, readable },
  };
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The notebook's order: making before use whatever the clocks say, then time, then id. */
export const inOrder = (a: Placed, b: Placed): number =>
  compareText(a.effective, b.effective) ||
  a.depth - b.depth ||
  compareText(a.tie, b.tie) ||
  compareText(a.id, b.id);
