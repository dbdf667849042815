import { inRange } from "../../domain-error.ts";
import { meanOverScale } from "../distribution/chi-square.ts";
import { normalCdf, normalDensity } from "../distribution/normal.ts";
import { integral } from "../numeric/gauss-legendre.ts";
import { rootOfIncreasing } from "../numeric/root.ts";

/**
 * The probability that none of several differences from one control exceeds d standard errors either way.
 *
 *     P(d) = E[∫ φ(z) Π {Φ((λᵢz + ds)/√(1 − λᵢ²)) − Φ((λᵢz − ds)/√(1 − λᵢ²))} dz],   λᵢ² = nᵢ/(nᵢ + n₀),   s = √(χ²/ν)
 *
 * @param d                 scalar
 * @param sizes             nᵢ of the levels held against the control
 * @param controlSize       n₀, scalar
 * @param degreesOfFreedom  ν, scalar
 * @returns                 probability, scalar
 * @throws DomainError for d < 0, ν < 1, and NaN
 *
 * Valid:    independent means
 * Accuracy: 1e-9 absolute
 * Source:   C. W. Dunnett, J. Am. Statist. Assoc. 50 (1955) 1096
 * @example
 * dunnettCdf(2.5136, [4, 5], 6, 12) // => 0.95
 */
export function dunnettCdf(
  d: number,
  sizes: readonly number[],
  controlSize: number,
  degreesOfFreedom: number,
): number {
  inRange("d", d, { min: 0, max: Number.POSITIVE_INFINITY });
  inRange("degreesOfFreedom", degreesOfFreedom, { min: 1, max: Number.POSITIVE_INFINITY });
  const slopes = sizes.map((n) => {
    const squared = n / (n + controlSize);
    return { along: Math.sqrt(squared / (1 - squared)), across: 1 / Math.sqrt(1 - squared) };
  });
  const allWithin = (reach: number): number =>
    integral(
      (z) =>
        slopes.reduce(
          (product, { along, across }) =>
            product * (normalCdf(along * z + across * reach) - normalCdf(along * z - across * reach)),
          normalDensity(z),
        ),
      -8.5,
      8.5,
      6,
    );
  return Math.min(
    1,
    meanOverScale((s) => allWithin(d * s), degreesOfFreedom),
  );
}

/** The d that Dunnett's probability reaches `probability` at. */
export const dunnettQuantile = (
  probability: number,
  sizes: readonly number[],
  controlSize: number,
  degreesOfFreedom: number,
): number =>
  Math.exp(
    rootOfIncreasing(
      (w) => dunnettCdf(Math.exp(w), sizes, controlSize, degreesOfFreedom) - probability,
      1,
      0.25,
    ),
  );

/** Multipliers asked for before, as for Tukey's. */
const known = new Map<string, number>();
const mostKnown = 1000;

/** `dunnettQuantile` at 95 %, kept: verdicts ask for the same few again and again. */
export function dunnettMultiplier(
  sizes: readonly number[],
  controlSize: number,
  degreesOfFreedom: number,
): number {
  const key = [...sizes.map((n) => (n / controlSize).toFixed(6)), degreesOfFreedom].join(" ");
  const before = known.get(key);
  if (before !== undefined) return before;
  const multiplier = dunnettQuantile(0.95, sizes, controlSize, degreesOfFreedom);
  if (known.size >= mostKnown) known.clear();
  known.set(key, multiplier);
  return multiplier;
}
