import { inRange } from "../../domain-error.ts";

/**
 * Holm's adjustment: p-values of several questions, each as large as it must be for the chance of one false alarm
 * among all of them to stay where it was meant.
 *
 *     p̃₍ᵢ₎ = max over j ≤ i of min(1, (m − j + 1) p₍ⱼ₎)
 *
 * @param pValues  m numbers from 0 to 1
 * @returns        m adjusted numbers, in the same order
 * @throws DomainError for a number outside 0 to 1, and NaN
 *
 * Valid:    any dependence between the questions
 * Accuracy: exact
 * Source:   S. Holm, Scand. J. Statist. 6 (1979) 65
 * @example
 * holmAdjusted([0.01, 0.04, 0.03])[1] // => 0.06
 */
export function holmAdjusted(pValues: readonly number[]): number[] {
  for (const p of pValues) inRange("pValue", p, { min: 0, max: 1 });
  const order = pValues.map((_, i) => i).sort((a, b) => (pValues[a] as number) - (pValues[b] as number));
  const adjusted = new Array<number>(pValues.length).fill(1);
  let least = 0;
  order.forEach((place, rank) => {
    least = Math.max(least, Math.min(1, (pValues.length - rank) * (pValues[place] as number))); // places of pValues
    adjusted[place] = least;
  });
  return adjusted;
}
