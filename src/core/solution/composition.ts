import { DomainError } from "../domain-error.ts";
import { type Kilogram, kilogram, type MassFraction, massFraction } from "../units.ts";
import type { Component } from "./component.ts";

/** What a liquid is made of: mass fractions that sum to one; a component that is absent has none. */
export type Composition = Readonly<Partial<Record<Component, MassFraction>>>;

/** An amount of liquid. */
export interface Liquid {
  readonly mass: Kilogram;
  readonly composition: Composition;
}

/** Mass fraction of a component; none where it is absent. */
export const shareOf = (composition: Composition, component: Component): MassFraction =>
  composition[component] ?? massFraction(0);

/**
 * One liquid with the rest water.
 *
 * Valid:    mass fraction 0–1
 * Source:   arithmetic, so common practice
 */
export function aqueous(component: Component, share: MassFraction): Composition {
  if (component === "water" || share === 0) return { water: massFraction(1) };
  return share === 1 ? { [component]: share } : { [component]: share, water: massFraction(1 - share) };
}

/**
 * Liquids poured together: masses add, and nothing else does.
 *
 *     m = Σ mi,   w[k] = Σ mi·wi[k] / m
 *
 * @param liquids  n amounts, at least one with a mass
 * @returns        their sum
 * @throws DomainError `not-enough-data` when there is no mass at all
 *
 * Valid:    any
 * Accuracy: exact
 * Source:   conservation of mass
 * @example
 * pouredTogether([{ mass: kilogram(1), composition: { water: massFraction(1) } }, { mass: kilogram(3), composition: { ethanol: massFraction(1) } }]).composition.ethanol // => 0.75
 */
export function pouredTogether(liquids: readonly Liquid[]): Liquid {
  const mass = liquids.reduce((sum, l) => sum + l.mass, 0);
  if (!(mass > 0)) throw new DomainError({ code: "not-enough-data", field: "parts", value: mass });
  const amounts = new Map<Component, number>();
  for (const liquid of liquids)
    for (const [component, share] of Object.entries(liquid.composition) as [Component, MassFraction][])
      amounts.set(component, (amounts.get(component) ?? 0) + liquid.mass * share);
  const composition: Partial<Record<Component, MassFraction>> = {};
  for (const [component, amount] of amounts)
    if (amount > 0) composition[component] = massFraction(Math.min(1, amount / mass));
  return { mass: kilogram(mass), composition };
}
