/** One uncertain quantity that a result depends on. */
export interface UncertainInput<Name extends string = string, Source extends string = string> {
  readonly quantity: Name;
  /** Where its uncertainty comes from: two readings of one scale have one source. */
  readonly source: Source;
  readonly standardUncertainty: number;
  /** How far the quantity may be moved before it stops making sense (a fraction below 0, a temperature outside a table). */
  readonly least?: number;
  readonly most?: number;
}

export interface Contribution<Source extends string = string> {
  readonly source: Source;
  /** Of the variance; the shares sum to one. */
  readonly share: number;
}

export interface Propagated<Source extends string = string> {
  readonly standardUncertainty: number;
  /** The largest first; what contributes nothing is left out. */
  readonly contributions: readonly Contribution<Source>[];
}

/**
 * Combined standard uncertainty of a result from independent uncertain quantities.
 *
 *     Zi = ½ [f(xi + ui) − f(xi − ui)],   uc² = Σ Zi²
 *
 * Where a bound lies nearer than ui, the step is cut short and the slope kept.
 *
 * @param result  the result when each quantity is moved by so much from its value
 * @param inputs  n independent quantities; those of one source are shown as one contribution
 * @returns       the standard uncertainty and each source's share of the variance
 *
 * Valid:    results that are near a straight line over ±ui
 * Accuracy: first order; the third-order term of f is in Zi too
 * Source:   JCGM 100:2008 (GUM), 5.1.2 and the numerical form in 5.1.3, note 2
 * @example
 * propagated((moved) => 3 * moved.x + 4 * moved.y, [{ quantity: "x", source: "scale", standardUncertainty: 1 }, { quantity: "y", source: "jug", standardUncertainty: 1 }]).standardUncertainty // => 5
 */
export function propagated<Name extends string, Source extends string>(
  result: (moved: Readonly<Record<Name, number>>) => number,
  inputs: readonly UncertainInput<Name, Source>[],
): Propagated<Source> {
  const variances = new Map<Source, number>();
  const moved = Object.fromEntries(inputs.map((i) => [i.quantity, 0])) as Record<Name, number>;
  const resultWith = (quantity: Name, by: number): number => {
    moved[quantity] = by;
    const found = result(moved);
    moved[quantity] = 0;
    return found;
  };
  for (const { quantity, source, standardUncertainty: u, least, most } of inputs) {
    if (u === 0) continue;
    const up = Math.min(u, most ?? Number.POSITIVE_INFINITY);
    const down = Math.max(-u, least ?? Number.NEGATIVE_INFINITY);
    const slope = (resultWith(quantity, up) - resultWith(quantity, down)) / (up - down);
    variances.set(source, (variances.get(source) ?? 0) + (slope * u) ** 2);
  }
  return combinedVariances(variances);
}

/**
 * Variances by their source, as one standard uncertainty and each source's share of its square.
 *
 *     u² = Σ Vi
 *
 * Valid:    independent sources
 * Source:   JCGM 100:2008 (GUM), 5.1.2
 */
export function combinedVariances<Source extends string>(
  variances: ReadonlyMap<Source, number>,
): Propagated<Source> {
  let variance = 0;
  for (const part of variances.values()) variance += part;
  const contributions: Contribution<Source>[] = [];
  for (const [source, part] of variances)
    if (part > 0) contributions.push({ source, share: part / variance });
  contributions.sort((a, b) => b.share - a.share);
  return { standardUncertainty: Math.sqrt(variance), contributions };
}
