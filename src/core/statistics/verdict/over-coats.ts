import type { Word } from "./three-words.ts";

/** What was said of one pair after one coat. */
export interface CoatWord {
  readonly coat: number;
  readonly verdict: Word;
}

/**
 * The first coat from which on two recipes are as good as equal. Tested from the last coat backwards, and no further
 * than the first that is not equal: in that fixed order each test may use the whole 5 %, for an error in one can only
 * follow an error in none before it.
 *
 * @param words  one a coat, in any order
 * @returns      the coat; null when the last one is not equal
 *
 * Valid:    each coat's word from the patches as they were after that coat, so that a patch stands once in each test
 * Accuracy: exact
 * Source:   W. Maurer, L. Hothorn and W. Lehmacher, Multiple comparisons in drug clinical trials (1995), on tests in a fixed order
 * @example
 * equalFrom([{ coat: 1, verdict: "different" }, { coat: 2, verdict: "equal" }, { coat: 3, verdict: "equal" }]) // => 2
 */
export function equalFrom(words: readonly CoatWord[]): number | null {
  let from: number | null = null;
  for (const { coat, verdict } of [...words].sort((a, b) => b.coat - a.coat)) {
    if (verdict !== "equal") break;
    from = coat;
  }
  return from;
}
