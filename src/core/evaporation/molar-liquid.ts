import type { Component } from "../solution/component.ts";
import type { Composition } from "../solution/composition.ts";
import type { MolarLiquid } from "./vapour-liquid.ts";
import { propertiesOf, type Volatile } from "./volatiles.ts";

/**
 * A liquid by mole fractions, from its mass fractions.
 *
 *     xi = (wi/Mi)/Σ (wj/Mj)
 *
 * @param composition  mass fractions, without a part that has no name
 * @returns            components with their mole fractions
 *
 * Valid:    any
 * Accuracy: exact
 * Source:   arithmetic, so common practice
 * @example
 * molarLiquid({ ethanol: massFraction(0.956), water: massFraction(0.044) }).moleFractions[0] // => 0.8947
 */
export function molarLiquid(composition: Composition): MolarLiquid {
  const shares = (Object.entries(composition) as [Component, number][]).filter(
    (entry): entry is [Volatile, number] => entry[1] > 0 && entry[0] !== "unknown",
  );
  const moles = shares.map(([component, share]) => share / propertiesOf(component).molarMass);
  const total = moles.reduce((sum, n) => sum + n, 0);
  return {
    components: shares.map(([component]) => component),
    moleFractions: moles.map((n) => n / total),
  };
}
