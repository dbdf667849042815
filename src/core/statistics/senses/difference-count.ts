import { DomainError, inRange } from "../../domain-error.ts";
import { binomialAtLeast, binomialAtMost } from "../distribution/binomial.ts";

/** A test by counting right answers: what guessing gives, and whether either direction counts. */
export interface Guessing {
  readonly guessing: number;
  readonly tails: 1 | 2;
}

const rounding = 1 + 1e-12; // a tail that equals alpha but for its last digit is enough

/**
 * The fewest right answers that guessing reaches with probability at most alpha.
 *
 *     least x with P(X ≥ x) ≤ α/tails,   X ~ Bin(n, p₀)
 *
 * @param trials  n, whole number, scalar
 * @param test    {guessing: p₀, tails}
 * @param alpha   scalar
 * @returns       whole number, or null when not even n is enough
 * @throws DomainError for alpha outside (0, 1), and NaN
 *
 * Valid:    n ≥ 1
 * Accuracy: exact
 * Source:   ISO 4120:2021, table A.1; ISO 10399:2017, table A.1
 * @example
 * criticalCount(30, { guessing: 1 / 3, tails: 1 }, 0.05) // => 15
 */
export function criticalCount(trials: number, { guessing, tails }: Guessing, alpha: number): number | null {
  inRange("alpha", alpha, { min: Number.MIN_VALUE, max: 1 });
  for (let x = Math.floor(trials * guessing); x <= trials; x++)
    if (binomialAtLeast(x, trials, guessing) <= (alpha / tails) * rounding) return x;
  return null;
}

/** The share of right answers when a share pd of people can tell: p₀ + pd (1 − p₀). */
export const correctShare = (guessing: number, discriminators: number): number =>
  guessing + inRange("discriminators", discriminators, { min: 0, max: 1 }) * (1 - guessing);

/**
 * The exact probability that the test shows a difference when a share of people can tell; 0 when no count is enough.
 *
 *     P(X ≥ c), and P(X ≤ n − c) with two tails,   X ~ Bin(n, p₀ + pd (1 − p₀))
 *
 * @param trials          n, whole number, scalar
 * @param test            {guessing: p₀, tails}
 * @param alpha           scalar
 * @param discriminators  pd, scalar
 * @returns               probability, scalar
 * @throws DomainError for pd outside [0, 1], and NaN
 *
 * Valid:    n ≥ 1
 * Accuracy: 1e-12 absolute
 * Source:   ISO 4120:2021, annex A
 * @example
 * countPower(12, { guessing: 1 / 3, tails: 1 }, 0.05, 0.2) // => 0.1358845268
 */
export function countPower(trials: number, test: Guessing, alpha: number, discriminators: number): number {
  const critical = criticalCount(trials, test, alpha);
  if (critical === null) return 0;
  const share = correctShare(test.guessing, discriminators);
  const above = binomialAtLeast(critical, trials, share);
  return test.tails === 1 ? above : above + binomialAtMost(trials - critical, trials, share);
}

/**
 * The most right answers that still speak for a similarity: they would be as few as that with probability at most
 * beta if a share pd of people could tell.
 *
 *     greatest x with P(X ≤ x) ≤ β,   X ~ Bin(n, p₀ + pd (1 − p₀))
 *
 * @param trials          n, whole number, scalar
 * @param guessing        p₀, scalar
 * @param discriminators  pd, scalar
 * @param beta            scalar
 * @returns               whole number, or null when none speaks for it
 * @throws DomainError for pd outside [0, 1], and NaN
 *
 * Valid:    n ≥ 1
 * Accuracy: exact
 * Source:   ISO 4120:2021, table A.2
 * @example
 * similarityCount(18, 1 / 3, 0.2, 0.05) // => 4
 */
export function similarityCount(
  trials: number,
  guessing: number,
  discriminators: number,
  beta: number,
): number | null {
  const share = correctShare(guessing, discriminators);
  let x = -1;
  while (x < trials && binomialAtMost(x + 1, trials, share) <= beta * rounding) x++;
  return x < 0 ? null : x;
}

export interface SampleSize {
  /** The first number of trials whose power is enough: what the printed tables give. */
  readonly first: number;
  /** From here on it stays enough: the power of a count goes up in saw teeth. */
  readonly stable: number;
}

const mostTrials = 5000;

/**
 * How many trials show, with power 1 − β, that a share pd of people can tell.
 *
 * @param test            {guessing: p₀, tails}
 * @param discriminators  pd, scalar
 * @param alpha           scalar
 * @param beta            scalar
 * @returns               {first, stable}
 * @throws DomainError when 5000 trials would not do
 *
 * Valid:    pd > 0
 * Accuracy: exact
 * Source:   ISO 4120:2021, table A.3
 * @example
 * trialsNeeded({ guessing: 1 / 3, tails: 1 }, 0.3, 0.05, 0.05).first // => 66
 */
export function trialsNeeded(
  test: Guessing,
  discriminators: number,
  alpha: number,
  beta: number,
): SampleSize {
  const enough = (n: number): boolean => countPower(n, test, alpha, discriminators) >= (1 - beta) / rounding;
  let first = 1;
  while (!enough(first)) {
    first += 1;
    if (first > mostTrials)
      throw new DomainError({
        code: "out-of-range",
        field: "discriminators",
        value: discriminators,
        because: `Not even ${mostTrials} trials would show it.`,
      });
  }
  // A tooth is a few trials long and its dip shrinks with n: none reaches back from beyond twice the first.
  let stable = first;
  for (let n = first + 1; n <= 2 * first + 50; n++) if (!enough(n)) stable = n + 1;
  return { first, stable };
}
