import { DomainError } from "../domain-error.ts";
import { type Kilogram, kilogram, type MassFraction } from "../units.ts";
import type { Component } from "./component.ts";
import { type Composition, type Liquid, shareOf } from "./composition.ts";

/**
 * How much of another strength to add for a strength between the two.
 *
 *     x = m·(w1 − w)/(w − w2)
 *
 * @param from     what is there
 * @param adding   what is added, mass fractions
 * @param alcohol  whose strength is meant
 * @param target   mass fraction wanted [kg/kg], scalar
 * @returns        mass to add [kg], scalar
 * @throws DomainError `out-of-range` for a target that does not lie between the two strengths
 *
 * Valid:    one alcohol in water
 * Accuracy: exact
 * Source:   conservation of mass
 * @example
 * amountForStrength({ mass: kilogram(1), composition: { ethanol: massFraction(1) } }, { water: massFraction(1) }, "ethanol", massFraction(0.8)) // => 0.25
 */
export function amountForStrength(
  from: Liquid,
  adding: Composition,
  alcohol: Component,
  target: MassFraction,
): Kilogram {
  const [there, added] = [shareOf(from.composition, alcohol), shareOf(adding, alcohol)];
  if (!(Math.min(there, added) < target && target < Math.max(there, added)) && target !== there)
    throw new DomainError({
      code: "out-of-range",
      field: "massFraction",
      value: target,
      limits: { min: Math.min(there, added), max: Math.max(there, added) },
      because: "A blend lies between the strengths that it is made of.",
    });
  return kilogram((from.mass * (there - target)) / (target - added || 1));
}
