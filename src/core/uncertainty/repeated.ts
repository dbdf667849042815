import { DomainError } from "../domain-error.ts";
import type { Expression } from "./expression.ts";

/** Quantities that were read together, time after time. */
export interface RepeatedReadings {
  readonly names: readonly string[];
  readonly means: readonly number[];
  /** Standard uncertainties of the means. */
  readonly uncertainties: readonly number[];
  /** Covariances of the means, n×n in the order of `names`. */
  readonly covariances: readonly (readonly number[])[];
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, x) => sum + x, 0) / values.length;

/**
 * Means of quantities read together, with their uncertainties and how they hang together.
 *
 *     u(x̄ᵢ, x̄ⱼ) = Σₖ (xᵢₖ − x̄ᵢ)(xⱼₖ − x̄ⱼ)/(n(n − 1))
 *
 * @param readings  by name; each n ≥ 2, paired with the others
 * @returns         means, standard uncertainties and covariances of the means
 * @throws DomainError for fewer than two readings, or lists of unequal length
 *
 * Valid:    readings made under the same conditions
 * Accuracy: full digits
 * Source:   JCGM 100:2008, 4.2 and eq. 17
 */
export function meansOfRepeated(readings: Readonly<Record<string, readonly number[]>>): RepeatedReadings {
  const names = Object.keys(readings);
  const columns = Object.values(readings);
  const count = columns[0]?.length ?? 0;
  if (count < 2)
    throw new DomainError({ code: "not-enough-data", field: "readings", value: count, limits: { min: 2 } });
  const uneven = names.find((_, i) => columns[i]?.length !== count);
  if (uneven !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: uneven,
      value: readings[uneven]?.length,
      because: `There are ${count} of ${names[0]}.`,
    });
  const means = columns.map(meanOf);
  const deviations = columns.map((values, i) => values.map((x) => x - (means[i] as number)));
  const covariances = deviations.map((a) =>
    deviations.map((b) => a.reduce((sum, x, k) => sum + x * (b[k] as number), 0) / (count * (count - 1))),
  );
  return {
    names,
    means,
    uncertainties: covariances.map((row, i) => Math.sqrt(row[i] as number)),
    covariances,
  };
}

export interface CorrelatedResults {
  readonly values: readonly number[];
  readonly uncertainties: readonly number[];
  /** Correlations of the results, m×m. */
  readonly correlations: readonly (readonly number[])[];
}

/**
 * Several results computed from the same readings: values, uncertainties and correlations.
 *
 *     u(yₗ, yₘ) = Σᵢⱼ ∂yₗ/∂xᵢ·∂yₘ/∂xⱼ·u(xᵢ, xⱼ)
 *
 * @param readings  as `meansOfRepeated` gives them
 * @param results   m formulas in the readings' names
 * @returns         m values, m standard uncertainties, m×m correlations
 * @throws DomainError for a formula that names what was not read
 *
 * Valid:    formulas near enough to linear over the uncertainties
 * Accuracy: derivatives are exact but for rounding
 * Source:   JCGM 100:2008, eq. 13 and H.2
 */
export function correlatedResults(
  readings: RepeatedReadings,
  results: readonly Expression[],
): CorrelatedResults {
  const { names, means, covariances } = readings;
  const inputs = results.map((result) => result.names.map((name) => indexOf(names, name)));
  const at = (l: number) => (inputs[l] as readonly number[]).map((i) => means[i] as number);
  const gradients = results.map((result, l) => {
    const partial = result.gradient(at(l));
    return names.map((_, i) => partial[(inputs[l] as readonly number[]).indexOf(i)] ?? 0);
  });
  const covariance = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, x, i) => sum + x * b.reduce((s, y, j) => s + y * (covariances[i]?.[j] as number), 0), 0);
  const table = gradients.map((a) => gradients.map((b) => covariance(a, b)));
  const uncertainties = table.map((row, l) => Math.sqrt(row[l] as number));
  return {
    values: results.map((result, l) => result.value(at(l))),
    uncertainties,
    correlations: correlationsOf(table),
  };
}

function indexOf(names: readonly string[], name: string): number {
  const index = names.indexOf(name);
  if (index < 0)
    throw new DomainError({
      code: "unknown-name",
      field: "expression",
      value: name,
      limits: { allowed: names },
    });
  return index;
}

/**
 * Correlations from covariances.
 *
 *     rᵢⱼ = uᵢⱼ/√(uᵢᵢ·uⱼⱼ)
 *
 * @param covariances  n×n
 * @returns            n×n, each −1 to 1; NaN beside a quantity that does not vary
 *
 * Valid:    covariances of one set of quantities
 * Accuracy: full digits
 * Source:   JCGM 100:2008, eq. 14
 * @example
 * correlationsOf([[4, 3], [3, 9]]) // => [[1, 0.5], [0.5, 1]]
 */
export const correlationsOf = (covariances: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  covariances.map((row, i) =>
    row.map((c, j) => c / Math.sqrt((covariances[i]?.[i] as number) * (covariances[j]?.[j] as number))),
  );
