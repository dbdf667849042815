import type { NotebookEntry } from "../../core/notebook/entry.ts";
import type { Body } from "../../core/notebook/kinds/all.ts";
import { strikesToCorrect } from "../../core/notebook/write-entry.ts";
import { useBook } from "../book-store/use-book.tsx";

type OnShelf = "material-bought" | "instrument-described";

/**
 * Writes a thing down, or stands in for what is written of it: what the form does not ask stays as it is, and what is
 * corrected is what counts now, should another device have corrected it meanwhile.
 */
export function useWriting<K extends OnShelf>(
  kind: K,
  asked: readonly string[],
  old: NotebookEntry | undefined,
): (body: Body<K>) => string {
  const book = useBook();
  return (body) => {
    if (old === undefined) return book.write({ kind, body });
    const thing = book.whole().thingOf(old);
    const current = book.whole().making(thing) ?? old;
    const kept = Object.entries(current.body).filter(([name]) => !asked.includes(name));
    return book.write({
      kind,
      about: [thing],
      strikes: strikesToCorrect(current),
      body: { ...Object.fromEntries(kept), ...body },
    });
  };
}
