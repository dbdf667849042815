import { hasHouse } from "../has-house.ts";
import * as words from "../words/words.ts";

/** What is said of where things are kept, with a house and without. */
export const keepingWords: typeof words.keeping = hasHouse
  ? words.keeping
  : { ...words.keeping, ...words.keepingAlone };
