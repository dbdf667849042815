import { jarIds, jarView } from "../../core/views/jar.ts";
import type { OpenBook } from "../book-store/open-book.ts";

/** Codes of jars that still hold something: an emptied jar's code may be given again. */
export const codesTaken = (book: OpenBook): ReadonlySet<string> =>
  book.look("jar-codes", (read) => {
    const jars = jarIds(read).flatMap((id) => jarView(read, id) ?? []);
    return new Set(jars.filter((jar) => jar.emptied === null).map((jar) => jar.code));
  });

/** The next free number after a letter: `L2` taken, then `L3`. */
export function nextCode(letter: string, taken: ReadonlySet<string>): string {
  for (let n = 1; ; n++) if (!taken.has(`${letter}${n}`)) return `${letter}${n}`;
}

/** The letter that a jar's family goes by. */
export const letterOf = (text: string): string => (/[A-Za-z]/.exec(text)?.[0] ?? "J").toUpperCase();
