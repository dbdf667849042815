/** What can be said of a difference. */
export const words = ["different", "equal", "unclear"] as const;
export type Word = (typeof words)[number];

export interface Said {
  readonly verdict: Word;
  /** The interval leaves out 0: it is known which is more, if not by how much. */
  readonly directionSure: boolean;
}

/**
 * The one rule for every response, from the simultaneous 95 % interval I of a difference and the difference m that
 * matters: *different* when I lies wholly outside (−m, m), *equal* ("as good as equal") when I lies wholly inside,
 * *unclear* ("not enough to tell") otherwise.
 *
 * @param interval  [low, high], in the response's unit
 * @param matters   m, in the response's unit
 * @returns         {verdict, directionSure}
 *
 * Valid:  low ≤ high, m ≥ 0
 * Source: the project's own rule; the idea of an interval against a margin is that of equivalence testing,
 *         D. J. Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657
 * @example
 * threeWords([1, 4], 5).verdict // => "equal"
 */
export function threeWords([low, high]: readonly [number, number], matters: number): Said {
  const directionSure = low > 0 || high < 0;
  if (low >= matters || high <= -matters)
    return { verdict: directionSure ? "different" : "unclear", directionSure };
  return { verdict: low > -matters && high < matters ? "equal" : "unclear", directionSure };
}
