import type { Kelvin, KilogramPerCubicMetre } from "../units.ts";
import { kilogramPerCubicMetre, massFraction } from "../units.ts";
import { aqueousDensity, isTabulated, tabulatedAlcohols } from "./aqueous-density.ts";
import type { Component } from "./component.ts";
import type { Composition } from "./composition.ts";
import { type Estimate, flagsTogether } from "./flag.ts";
import { pureDensity } from "./pure-density.ts";

/** A group of the composition whose own volume is known: one alcohol with its part of the water, or one liquid. */
interface Group {
  readonly share: number;
  readonly density: Estimate;
}

const spreadOfIdealVolumes = 2; // kg/m³, standard: alcohols with each other lie within 1, with esters and ketones within 3

/** Water goes to the alcohols that take it up, in proportion to their mass: they are all equally wet. */
function groupsOf(composition: Composition, temperature: Kelvin): readonly Group[] {
  const water = composition.water ?? 0;
  let alcohols = 0;
  for (const alcohol of tabulatedAlcohols) alcohols += composition[alcohol] ?? 0;
  const strength = alcohols === 0 ? 0 : alcohols / (alcohols + water);
  const groups: Group[] = [];
  for (const name in composition) {
    const component = name as Component;
    const share = composition[component] ?? 0;
    if (isTabulated(component))
      groups.push({
        share: share / strength,
        density: aqueousDensity(component, massFraction(strength), temperature),
      });
    else if (component !== "water" || alcohols === 0)
      groups.push({ share, density: pureDensity(component, temperature) });
  }
  return groups;
}

/**
 * Density of a solvent of any composition.
 *
 *     1/ρ = Σ sg/ρg
 *
 * over groups g: each alcohol that was measured with water (ethanol, isopropanol, n-propanol, methanol) together
 * with its part of the water, all at the one strength A/(A + W); every other liquid by itself. One alcohol with
 * water is therefore exactly its table; of more than one group the volumes are taken to add, which is flagged.
 *
 * @param composition  mass fractions
 * @param temperature  [K], scalar
 * @returns            density [kg/m³] with its standard uncertainty and flags, scalar
 * @throws DomainError outside −20–40 °C (ethanol, water) or −10–40 °C (all others), named in °C, and for NaN
 *
 * Valid:    the freezing curve to 40 °C
 * Accuracy: one alcohol with water as `aqueousDensity`; several groups add 2 kg/m³ (standard), an unknown part 50 times its share
 * Source:   the groups' own; adding volumes is common practice for such mixtures (27 CFR 21.161 does it for denatured alcohol)
 * @example
 * densityOfSolvent({ ethanol: massFraction(0.5), water: massFraction(0.5) }, kelvinFromCelsius(celsius(20))).value // => 913.77
 */
export function densityOfSolvent(
  composition: Composition,
  temperature: Kelvin,
): Estimate<KilogramPerCubicMetre> {
  const groups = groupsOf(composition, temperature);
  const [only] = groups;
  if (only !== undefined && groups.length === 1)
    return { ...only.density, value: kilogramPerCubicMetre(only.density.value) };
  const volume = groups.reduce((sum, g) => sum + g.share / g.density.value, 0);
  const value = kilogramPerCubicMetre(1 / volume);
  const own = groups.reduce(
    (sum, g) => sum + (g.share * value * g.density.standardUncertainty) / g.density.value,
    0,
  );
  return {
    value,
    standardUncertainty: Math.hypot(own, spreadOfIdealVolumes),
    flags: flagsTogether(...groups.map((g) => g.density.flags), ["ideal-volumes"]),
  };
}
