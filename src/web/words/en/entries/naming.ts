import type { NotebookEntry } from "../../../../core/notebook/entry.ts";
import type { Body, Kind } from "../../../../core/notebook/kinds/all.ts";

/** How an entry's saying learns what things are called. */
export interface Naming {
  /** The name of a thing by its id: `L4`, `cherry 1`, `Lemon flakes`. */
  readonly of: (id: string | undefined) => string;
  /** The names of what the entry is about, as one text. */
  readonly about: string;
  /** The entry itself, for what its envelope says. */
  readonly entry: NotebookEntry;
}

/** For each kind, what an entry of it says in one plain sentence. A kind without a saying does not compile. */
export type Sayings<K extends Kind> = { readonly [P in K]: (body: Body<P>, name: Naming) => string };

export const list = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? "") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

/** `, with 320 paper`, or nothing. */
export const also = (lead: string, value: string | number | undefined): string =>
  value === undefined || value === "" ? "" : `${lead}${value}`;
