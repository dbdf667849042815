import { DomainError } from "../../domain-error.ts";
import { studentizedRangeCdf } from "../distribution/studentized-range.ts";
import { sum } from "../numeric/vector.ts";
import { dunnettCdf, dunnettMultiplier } from "./dunnett.ts";
import { tukeyMultiplier } from "./tukey.ts";

export interface Difference {
  readonly estimate: number;
  readonly variance: number;
  readonly degreesOfFreedom: number;
}

export interface HeldDifference extends Difference {
  readonly a: string;
  readonly b: string;
  /** Simultaneous over the family, 95 %. */
  readonly interval: readonly [number, number];
  /** What the standard error was multiplied by. */
  readonly multiplier: number;
}

export interface Family {
  readonly differences: readonly HeldDifference[];
  /** Of no difference at all: that of the one farthest from nought, all allowed for. */
  readonly pValue: () => number;
}

type DifferenceOf = (a: string, b: string) => Difference;

/** Every two levels, in their order. */
export const pairsOf = (levels: readonly string[]): (readonly [string, string])[] =>
  levels.flatMap((a, i) => levels.slice(i + 1).map((b) => [a, b] as const));

function held(a: string, b: string, d: Difference, multiplier: number): HeldDifference {
  const reach = multiplier * Math.sqrt(d.variance);
  return { a, b, ...d, multiplier, interval: [d.estimate - reach, d.estimate + reach] };
}

/**
 * Approximate degrees of freedom, a little fewer so that pairs of one trial share their multiplier: quantiles cost
 * more than all the rest of a verdict.
 */
const fewer = (freedom: number): number =>
  freedom >= 20 ? Math.floor(freedom) : Math.max(1, Math.floor(freedom * 10) / 10);

const errorsAway = (d: Difference): number => Math.abs(d.estimate) / Math.sqrt(d.variance);

const farthest = (differences: readonly HeldDifference[]): HeldDifference =>
  differences.reduce((most, d) => (errorsAway(d) > errorsAway(most) ? d : most));

/**
 * All pairs of levels with Tukey–Kramer intervals.
 *
 *     d ± q(0.95; k, ν)/√2 · se(d)
 *
 * @param levels      k names
 * @param difference  of two of them
 * @returns           one difference a pair, and p of no difference at all
 *
 * Valid:  k ≥ 2; with unequal errors it covers at least as often as it says
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.1; A. J. Hayter, Ann. Statist. 12 (1984) 61
 */
export function allPairs(levels: readonly string[], difference: DifferenceOf): Family {
  const differences = pairsOf(levels).map(([a, b]) => {
    const d = difference(a, b);
    return held(a, b, d, tukeyMultiplier(levels.length, fewer(d.degreesOfFreedom)));
  });
  const far = farthest(differences);
  const range = errorsAway(far) * Math.SQRT2;
  const pValue = (): number => 1 - studentizedRangeCdf(range, levels.length, far.degreesOfFreedom);
  return { differences, pValue };
}

/**
 * Each level against one control with Dunnett's intervals. How much of an error is the control's own is read from the
 * variances of the differences, v(a, c) + v(b, c) − v(a, b) = 2 v(c), so that unequal numbers are allowed for.
 *
 *     d ± D(0.95; n₁ … nₖ₋₁, n₀, ν) · se(d)
 *
 * @param levels      k names
 * @param control     one of them
 * @param difference  of two of them
 * @returns           k − 1 differences, the control second, and p of no difference at all
 * @throws DomainError for a control that is not among the levels
 *
 * Valid:  k ≥ 2
 * Source: C. W. Dunnett, J. Am. Statist. Assoc. 50 (1955) 1096
 */
export function againstControl(levels: readonly string[], control: string, difference: DifferenceOf): Family {
  if (!levels.includes(control))
    throw new DomainError({
      code: "unknown-name",
      field: "control",
      value: control,
      limits: { allowed: levels },
    });
  const others = levels.filter((level) => level !== control);
  const found = others.map((level) => ({ level, d: difference(level, control) }));
  const shared = pairsOf(others).map(([a, b]) => {
    const variance = (level: string): number => found.find((f) => f.level === level)?.d.variance ?? 0;
    return (variance(a) + variance(b) - difference(a, b).variance) / 2;
  });
  const own = shared.length === 0 ? Number.NaN : sum(shared) / shared.length;
  const sizes = found.map(({ d }) => own / (d.variance - own));
  const even = !sizes.every((n) => n > 0 && Number.isFinite(n));
  const weights = even ? others.map(() => 1) : sizes;
  const differences = found.map(({ level, d }) =>
    held(level, control, d, dunnettMultiplier(weights, 1, fewer(d.degreesOfFreedom))),
  );
  const far = farthest(differences);
  const pValue = (): number => 1 - dunnettCdf(errorsAway(far), weights, 1, far.degreesOfFreedom);
  return { differences, pValue };
}
