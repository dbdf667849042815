import { bench } from "./en/bench.ts";
import { book } from "./en/book.ts";
import { cautions } from "./en/cautions.ts";
import { controls } from "./en/controls.ts";
import { drying } from "./en/drying.ts";
import { film } from "./en/film.ts";
import { jars } from "./en/jars.ts";
import { keeping } from "./en/keeping.ts";
import { pairing } from "./en/pairing.ts";
import { pieces } from "./en/pieces.ts";
import { plan } from "./en/plan.ts";
import { shelf } from "./en/shelf.ts";
import { shell } from "./en/shell.ts";
import { start } from "./en/start.ts";
import { trialImport } from "./en/trial-import.ts";
import { trials } from "./en/trials.ts";
import { vapour } from "./en/vapour.ts";
import { verdict } from "./en/verdict.ts";
import { wood } from "./en/wood.ts";

/** Every text on the pages, in English, one part a place. Another language is another object of this shape. */
export const en = {
  shell,
  shelf,
  start,
  cautions,
  controls,
  bench,
  drying,
  keeping,
  pairing,
  film,
  jars,
  pieces,
  plan,
  book,
  trials,
  trialImport,
  vapour,
  verdict,
  wood,
};
