import { inRange } from "../../domain-error.ts";
import { binomialAtLeast, clopperPearson } from "../distribution/binomial.ts";
import { normalCdf, normalDensity } from "../distribution/normal.ts";
import { integral } from "../numeric/gauss-legendre.ts";
import { rootBetween } from "../numeric/root.ts";
import type { Guessing } from "./difference-count.ts";

export const differenceForms = [
  "triangle",
  "duo-trio",
  "two-afc",
  "three-afc",
  "tetrad",
  "paired-two-sided",
] as const;
export type DifferenceForm = (typeof differenceForms)[number];

/** How guessing answers each form. */
export const guessingOf: Readonly<Record<DifferenceForm, Guessing>> = {
  triangle: { guessing: 1 / 3, tails: 1 },
  "duo-trio": { guessing: 1 / 2, tails: 1 },
  "two-afc": { guessing: 1 / 2, tails: 1 },
  "three-afc": { guessing: 1 / 3, tails: 1 },
  tetrad: { guessing: 1 / 3, tails: 1 },
  "paired-two-sided": { guessing: 1 / 2, tails: 2 },
};

/** ∫ f(z) dz of something that carries a normal density between −9 and `to`. */
const overNormal = (f: (z: number) => number, to = 9): number => integral(f, -9, to, 10);

const [rootTwo, rootThree, rootSix] = [Math.SQRT2, Math.sqrt(3), Math.sqrt(6)];

const triangle = (d: number): number =>
  2 *
  integral(
    (z) =>
      (normalCdf(-z * rootThree + (d * rootTwo) / rootThree) +
        normalCdf(-z * rootThree - (d * rootTwo) / rootThree)) *
      normalDensity(z),
    0,
    9,
    10,
  );

function duoTrio(d: number): number {
  const [a, b] = [normalCdf(d / rootTwo), normalCdf(d / rootSix)];
  return 1 - a - b + 2 * a * b;
}

const threeAfc = (d: number): number => overNormal((z) => normalDensity(z) * normalCdf(z + d) ** 2);

const tetrad = (d: number): number =>
  1 -
  2 *
    overNormal((z) => {
      const shifted = normalCdf(z - d);
      return normalDensity(z) * shifted * (2 * normalCdf(z) - shifted);
    });

const psychometric: Readonly<Record<DifferenceForm, (d: number) => number>> = {
  triangle,
  "duo-trio": duoTrio,
  "two-afc": (d) => normalCdf(d / rootTwo),
  "three-afc": threeAfc,
  tetrad,
  "paired-two-sided": (d) => normalCdf(d / rootTwo),
};

/**
 * The share of right answers when two things lie d′ standard deviations apart to the judge.
 *
 * @param form    triangle, duo-trio, two-afc, three-afc, tetrad or paired-two-sided
 * @param dPrime  d′, scalar; below 0 only for paired-two-sided
 * @returns       share, scalar
 * @throws DomainError for NaN and |d′| > 40
 *
 * Valid:    0 ≤ d′ ≤ 40
 * Accuracy: 1e-10 absolute
 * Source:   D. M. Ennis, J. Sens. Stud. 8 (1993) 353
 * @example
 * shareFromDPrime("triangle", 1) // => 0.41804667
 */
export function shareFromDPrime(form: DifferenceForm, dPrime: number): number {
  inRange("dPrime", dPrime, { min: guessingOf[form].tails === 2 ? -40 : 0, max: 40 });
  return psychometric[form](dPrime);
}

const farthest = 40;

/** d′ from the share of right answers; null where it has no end (every answer right, or every one wrong). */
export function dPrimeFromShare(form: DifferenceForm, share: number): number | null {
  const { guessing, tails } = guessingOf[form];
  if (tails === 2 && share < guessing) {
    const mirrored = dPrimeFromShare(form, 1 - share);
    return mirrored === null ? null : -mirrored;
  }
  if (share <= guessing) return 0;
  if (share >= psychometric[form](farthest) - 1e-12) return null; // within the rounding of the integral
  return rootBetween((d) => psychometric[form](d) - share, 0, farthest);
}

export interface DifferenceEstimate {
  /** Exact, that guessing does as well (for two tails, as far off either way). */
  readonly pValue: number;
  /** Of right answers, raised to the guessing rate. */
  readonly share: number;
  readonly shareInterval: readonly [number, number];
  /** Share of people who can tell, (pc − p₀)/(1 − p₀). */
  readonly discriminators: number;
  readonly discriminatorsInterval: readonly [number, number];
  readonly dPrime: number | null;
  readonly dPrimeInterval: readonly [number | null, number | null];
  /** Null at the guessing rate; that of d′ also where every answer is right. */
  readonly standardErrors: {
    readonly share: number | null;
    readonly discriminators: number | null;
    readonly dPrime: number | null;
  };
}

/** dPc/dd′ by a central difference: the curves are smooth, and 1e-3 leaves 1e-7 of it. */
const slopeAt = (form: DifferenceForm, d: number): number =>
  (psychometric[form](d + 1e-3) - psychometric[form](d - 1e-3)) / 2e-3;

function standardErrors(
  form: DifferenceForm,
  share: number,
  trials: number,
  dPrime: number | null,
): DifferenceEstimate["standardErrors"] {
  const { guessing, tails } = guessingOf[form];
  if (tails === 1 && share <= guessing) return { share: null, discriminators: null, dPrime: null };
  const error = Math.sqrt((share * (1 - share)) / trials);
  return {
    share: error,
    discriminators: error / (1 - guessing),
    dPrime: dPrime === null ? null : error / slopeAt(form, dPrime),
  };
}

/**
 * What a count of right answers says: the exact test, and how far apart the things are to those who judged.
 *
 * Limits are Clopper–Pearson's, raised to the guessing rate and carried to the other scales. With two tails (which of
 * two is more so, when either may be) nothing is raised, and below 0 means the other one.
 *
 * @param form     of the test
 * @param correct  x, whole number, scalar
 * @param trials   n, whole number, scalar
 * @returns        p-value, shares and d′ with 95 % limits
 * @throws DomainError for x outside [0, n], and NaN
 *
 * Valid:    n ≥ 1
 * Accuracy: p-value 1e-12 relative; d′ 1e-8
 * Source:   ISO 4120:2021; ISO 10399:2017; ISO 5495:2005; D. M. Ennis, J. Sens. Stud. 8 (1993) 353
 * @example
 * differenceEstimate("triangle", 13, 30).dPrime // => 1.09505875
 */
export function differenceEstimate(
  form: DifferenceForm,
  correct: number,
  trials: number,
): DifferenceEstimate {
  const { guessing, tails } = guessingOf[form];
  const limits = clopperPearson(correct, trials);
  const raised = (share: number): number => (tails === 1 ? Math.max(guessing, share) : share);
  const discriminators = (share: number): number => (share - guessing) / (1 - guessing);
  const share = raised(correct / trials);
  const shareInterval = [raised(limits[0]), raised(limits[1])] as const;
  const dPrime = dPrimeFromShare(form, share);
  return {
    pValue:
      tails === 1
        ? binomialAtLeast(correct, trials, guessing)
        : Math.min(1, 2 * binomialAtLeast(Math.max(correct, trials - correct), trials, guessing)),
    share,
    shareInterval,
    discriminators: discriminators(share),
    discriminatorsInterval: [discriminators(shareInterval[0]), discriminators(shareInterval[1])],
    dPrime,
    dPrimeInterval: [dPrimeFromShare(form, shareInterval[0]), dPrimeFromShare(form, shareInterval[1])],
    standardErrors: standardErrors(form, share, trials, dPrime),
  };
}
