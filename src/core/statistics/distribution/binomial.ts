import { inRange } from "../../domain-error.ts";
import { betaQuantile, incompleteBeta } from "./beta.ts";

const shareRange = { min: 0, max: 1 } as const;

/**
 * The probability of `least` or more successes.
 *
 *     P(X ≥ x) = I_p(x, n − x + 1)
 *
 * @param least   x, whole number, scalar
 * @param trials  n, whole number, scalar
 * @param share   p, scalar
 * @returns       probability, scalar
 * @throws DomainError for a share outside [0, 1], and NaN
 *
 * Valid:    any x: 1 for x ≤ 0, 0 for x > n
 * Accuracy: 1e-12 relative
 * Source:   NIST Digital Library of Mathematical Functions, 8.17.24
 * @example
 * binomialAtLeast(13, 30, 1 / 3) // => 0.166011027847
 */
export function binomialAtLeast(least: number, trials: number, share: number): number {
  inRange("share", share, shareRange);
  if (least <= 0) return 1;
  if (least > trials) return 0;
  return incompleteBeta(share, least, trials - least + 1).lower;
}

/** The probability of `most` or fewer successes. */
export function binomialAtMost(most: number, trials: number, share: number): number {
  inRange("share", share, shareRange);
  if (most < 0) return 0;
  if (most >= trials) return 1;
  return incompleteBeta(share, most + 1, trials - most).upper;
}

/**
 * Limits of a share by Clopper and Pearson: they cover at least as often as they say.
 *
 * @param successes   x, whole number, scalar
 * @param trials      n, whole number, scalar
 * @param confidence  scalar
 * @returns           [low, high]
 * @throws DomainError for successes outside [0, n], and NaN
 *
 * Valid:    n ≥ 1
 * Accuracy: 1e-11 relative
 * Source:   C. J. Clopper and E. S. Pearson, Biometrika 26 (1934) 404
 * @example
 * clopperPearson(13, 30)[1] // => 0.625726549
 */
export function clopperPearson(
  successes: number,
  trials: number,
  confidence = 0.95,
): readonly [number, number] {
  inRange("trials", trials, { min: 1, max: 1e9 });
  inRange("successes", successes, { min: 0, max: trials });
  const beyond = (1 - confidence) / 2;
  return [
    successes === 0 ? 0 : betaQuantile(beyond, successes, trials - successes + 1).x,
    successes === trials ? 1 : betaQuantile(beyond, successes + 1, trials - successes, "upper").x,
  ];
}
