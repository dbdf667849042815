import { type Random, randomNormal } from "../random.ts";
import { type Propagated, summaryOfDraws } from "../uncertainty/propagate.ts";
import type { Instruments } from "./instruments.ts";
import { cutIfMoved, type Measurement, type Quantity, quantities, uncertainInputs } from "./measured-mix.ts";

const level = 0.95;

/**
 * The cut of a mix drawn many times over, each reading and each thing taken for granted off by a normal error of its
 * standard uncertainty: what the law of propagation is checked against, and what stands where it bends.
 *
 * What cannot be (moisture below none, a strength above pure) is drawn as the nearest that can.
 *
 * @param measurement  the mix as it is measured out
 * @param instruments  standard uncertainties
 * @param how          number of draws, and the generator
 * @returns            mean and standard deviation of the cut [kg/m³], and the intervals that hold 95 %
 * @throws DomainError as `mixFrom`
 *
 * Valid:    normal errors
 * Accuracy: with n draws the mean is good to u/√n, u to u/√(2n)
 * Source:   JCGM 101:2008, clause 7
 */
export function drawnCuts(
  measurement: Measurement,
  instruments: Instruments,
  { draws, random }: { readonly draws: number; readonly random: Random },
): Propagated {
  const inputs = uncertainInputs(measurement, instruments).filter((i) => i.standardUncertainty > 0);
  const cut = cutIfMoved(measurement);
  const moved = Object.fromEntries(quantities.map((name) => [name, 0])) as Record<Quantity, number>;
  const results = new Float64Array(draws);
  for (let k = 0; k < draws; k++) {
    for (const { quantity, standardUncertainty, least, most } of inputs) {
      const off = standardUncertainty * randomNormal(random);
      moved[quantity] = Math.max(least ?? off, Math.min(most ?? off, off));
    }
    results[k] = cut(moved);
  }
  return summaryOfDraws(results, level);
}
