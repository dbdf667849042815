import { allPairs, type HeldDifference } from "../several/family-intervals.ts";
import { type Said, threeWords } from "../verdict/three-words.ts";
import type { Preferences } from "./preferences.ts";

export interface PreferencePair extends Said {
  readonly a: string;
  readonly b: string;
  /** P(a preferred) − P(b preferred), of answers to these two. */
  readonly difference: number;
  /** 95 %, all pairs allowed for. */
  readonly interval: readonly [number, number];
}

/**
 * By how much of the answers one of two is preferred to the other.
 *
 *     (πa − πb)/(πa + πb + ν·√(πa·πb))
 *
 * @param logRatio   ln(πa/πb), scalar
 * @param tieFactor  ν, scalar
 * @returns          from −1 to 1, scalar
 *
 * Valid:    all of them
 * Accuracy: exact
 * Source:   R. R. Davidson, J. Am. Statist. Assoc. 65 (1970) 317
 * @example
 * preferredBy(Math.log(3), 0) // => 0.5
 */
export const preferredBy = (logRatio: number, tieFactor: number): number => {
  const half = logRatio / 2;
  return (Math.exp(half) - Math.exp(-half)) / (Math.exp(half) + Math.exp(-half) + tieFactor);
};

/**
 * Every two things with the one rule for every response: by how much of the answers one is preferred, its interval and the word.
 *
 * @param fit      worths of k things
 * @param matters  the difference of shares that matters, scalar
 * @returns        one a pair; intervals are those of ln(πa/πb), taken over to shares at the ν that was found
 *
 * Valid:    as the fit; Wald intervals, too narrow for a dozen answers
 * Accuracy: as the fit
 * Source:   as `allPairs` and `threeWords`
 */
export function preferencePairs(fit: Preferences, matters: number): readonly PreferencePair[] {
  const names = fit.items.map(({ name }) => name);
  const share = (logRatio: number): number => preferredBy(logRatio, fit.tieFactor ?? 0);
  const { differences } = allPairs(names, (a, b) => ({
    ...fit.difference(a, b),
    degreesOfFreedom: Number.POSITIVE_INFINITY,
  }));
  return differences.map(({ a, b, estimate, interval: [low, high] }: HeldDifference) => {
    const interval = [share(low), share(high)] as const;
    return { a, b, difference: share(estimate), interval, ...threeWords(interval, matters) };
  });
}
