import type { NotebookEntry } from "./entry.ts";

/**
 * What a view may ask of a notebook. A view is a pure function of a reader; the notebook remembers what it read
 * and computes it again only when an entry touches that.
 */
export interface NotebookReader {
  /** Any entry, live or struck. */
  entry(id: string): NotebookEntry | undefined;
  isLive(id: string): boolean;
  /** The live entry that makes the thing `id`: the entry of that id, or the live correction that stands in for it. */
  making(id: string): NotebookEntry | undefined;
  /** The id of the thing that this entry makes or corrects: its own, or that of the first entry in the chain of corrections. */
  thingOf(entry: NotebookEntry): string;
  /** Live entries that have this id or are about it, in the notebook's order. */
  touching(id: string): readonly NotebookEntry[];
  /** Live entries of a kind, in the notebook's order. */
  ofKind(kind: string): readonly NotebookEntry[];
  /** Another view, remembered under `key` and tracked as part of this one. */
  derive<T>(key: string, compute: (read: NotebookReader) => T): T;
}
