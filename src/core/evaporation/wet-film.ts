import { DomainError } from "../domain-error.ts";
import type { Component } from "../solution/component.ts";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { pureDensity } from "../solution/pure-density.ts";
import { strengthAt20C } from "../solution/strength.ts";
import type { Cut, KilogramPerCubicMetre, MassFraction, Metre } from "../units.ts";
import type { WetFilm } from "./film-surface.ts";
import { propertiesOf, type Volatile } from "./volatiles.ts";

export interface Applied {
  readonly composition: Composition;
  readonly thickness: Metre;
  readonly cut: Cut;
  /** Of the resin in solution. */
  readonly partialDensity: KilogramPerCubicMetre;
  /** Dry film that it goes on; none for a first coat. */
  readonly beneath?: Metre;
}

/** A spirit coat melts into the one below: so deep, of its own wet thickness. From memory; it makes later coats wait. */
const meltedShare = 0.25;

function volatileOf(component: Component): Volatile {
  if (component !== "unknown") return component;
  throw new DomainError({
    code: "not-enough-data",
    field: "unknown",
    value: component,
    because:
      "Nothing is known of how a part without a name evaporates; name it, or leave it out and share its part among the others.",
  });
}

function whole(composition: Composition): Composition {
  const sum = Object.values(composition).reduce<number>((total, share) => total + share, 0);
  if (Math.abs(sum - 1) < 1e-6) return composition;
  throw new DomainError({
    code: "contradiction",
    field: "film.solvent",
    value: sum,
    because: "The parts of a liquid have to add up to 1.",
  });
}

/**
 * What lies on an area: the liquids of a wet film by moles, and its resin. Water is always among them, since the film
 * takes it from the air.
 *
 *     liquid volume = thickness/(1 + c/ρr),   mi = wi·ρ·volume,   ni = mi/Mi
 *
 * @param applied  composition, wet thickness [m], cut [kg/m³], partial density of the resin [kg/m³], dry film beneath [m],
 *                 of which what the coat melts dries anew with it
 * @returns        moles [mol/m²] and molar volumes [m³/mol] by component, volume and mass of the resin by area
 * @throws DomainError `not-enough-data` for a part that has no name, `contradiction` where the parts do not add up to 1
 *
 * Valid:    volumes at 20 °C
 * Accuracy: as the density of the liquid
 * Source:   conservation of mass
 * @example
 * wetFilmOf({ composition: { ethanol: massFraction(1) }, thickness: metre(1e-4), cut: cut(0), partialDensity: kilogramPerCubicMetre(1205) }).moles[0] // => 1.713
 */
export function wetFilmOf(applied: Applied): WetFilm {
  const { composition, thickness, cut, partialDensity, beneath = 0 } = applied;
  const melted = Math.min(beneath, meltedShare * thickness);
  const liquid = thickness / (1 + cut / partialDensity);
  const mass = liquid * densityOfSolvent(composition, strengthAt20C).value;
  const withWater = { ...whole(composition), water: (composition.water ?? 0) as MassFraction };
  const shares = (Object.entries(withWater) as [Component, MassFraction][])
    .filter(([component, share]) => share > 0 || component === "water")
    .map(([component, share]) => [volatileOf(component), share] as const);
  const molarMasses = shares.map(([component]) => propertiesOf(component).molarMass);
  return {
    components: shares.map(([component]) => component),
    moles: shares.map(([, share], i) => (share * mass) / (molarMasses[i] as number)),
    molarVolumes: shares.map(
      ([component], i) => (molarMasses[i] as number) / pureDensity(component, strengthAt20C).value,
    ),
    resinVolume: thickness - liquid + melted,
    resinMass: liquid * cut + melted * partialDensity,
  };
}
