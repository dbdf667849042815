import { DomainError } from "../domain-error.ts";
import { type Kilogram, kilogram } from "../units.ts";
import type { Solution } from "./solution.ts";

/**
 * A jar that lost liquid to the air: resin does not leave.
 *
 * What left is taken to be of the liquid's own composition. Of a mixture the faster part leaves first, so the rest is
 * a little slower and wetter than this says; ethanol of 95 % by volume loses almost evenly, since it lies near its azeotrope.
 *
 * @param s     what was in the jar
 * @param lost  [kg], scalar, less than its liquid
 * @returns     what is in it now
 * @throws DomainError `out-of-range` when as much is lost as there was liquid
 *
 * Valid:    losses that are small beside the liquid
 * Accuracy: the mass of liquid exactly; its composition as said above
 * Source:   conservation of mass
 * @example
 * afterLoss(solutionOfCut(cutFromPoundsPerUsGallon(2), { ethanol: massFraction(1) }, { mass: kilogram(1) }), kilogram(0.1)).liquid.mass // => 0.6671
 */
export function afterLoss(s: Solution, lost: Kilogram): Solution {
  if (!(lost >= 0 && lost < s.liquid.mass))
    throw new DomainError({
      code: Number.isNaN(lost) ? "not-a-number" : "out-of-range",
      field: "lostG",
      value: lost * 1e3,
      limits: { min: 0, max: s.liquid.mass * 1e3 },
      because: "Only the liquid leaves, and some of it is still there.",
    });
  return { ...s, liquid: { ...s.liquid, mass: kilogram(s.liquid.mass - lost) } };
}
