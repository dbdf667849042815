import { bench } from "./en/bench.ts";
import { book } from "./en/book.ts";
import { controls } from "./en/controls.ts";
import { shell } from "./en/shell.ts";
import { start } from "./en/start.ts";

/** Every text on the pages, in English, one part a place. Another language is another object of this shape. */
export const en = { shell, start, controls, bench, book };
