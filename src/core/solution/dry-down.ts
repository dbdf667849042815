import { DomainError } from "../domain-error.ts";
import { type Cut, cut as cutOf, type Kilogram, type MassFraction, massFraction } from "../units.ts";
import type { Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { strengthAt20C } from "./strength.ts";

export interface DryDown {
  readonly resin: MassFraction;
  readonly cut: Cut;
}

/**
 * The true cut from a spoonful weighed wet and weighed again dry.
 *
 *     w = dry/wet,   cut = w/(1 − w)·ρ(solvent, 20 °C)
 *
 * @param wet      [kg], scalar
 * @param dry      [kg], scalar, less than wet
 * @param solvent  what dried off, mass fractions
 * @returns        mass fraction of resin and the cut, scalars
 * @throws DomainError `out-of-range` when dry is not less than wet, or wet is none
 *
 * Valid:    a film that has come to constant weight; what it still holds of solvent counts as resin here
 * Accuracy: as the weighings and the density
 * Source:   conservation of mass
 * @example
 * cutFromDryDown(kilogram(0.01), kilogram(0.002), aqueous("ethanol", massFraction(0.924077))).resin // => 0.2
 */
export function cutFromDryDown(wet: Kilogram, dry: Kilogram, solvent: Composition): DryDown {
  if (!(wet > 0))
    throw new DomainError({ code: "out-of-range", field: "wetG", value: wet * 1e3, limits: { min: 0 } });
  if (!(dry >= 0 && dry < wet))
    throw new DomainError({
      code: "out-of-range",
      field: "dryG",
      value: dry * 1e3,
      limits: { min: 0, max: wet * 1e3 },
      because: "What dried weighs less than it did wet.",
    });
  const w = dry / wet;
  return {
    resin: massFraction(w),
    cut: cutOf((w / (1 - w)) * densityOfSolvent(solvent, strengthAt20C).value),
  };
}
