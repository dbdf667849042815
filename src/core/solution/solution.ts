import {
  type CubicMetre,
  type Cut,
  cubicMetre,
  cut as cutOf,
  type Kelvin,
  type Kilogram,
  type KilogramPerCubicMetre,
  kilogram,
  type MassFraction,
  massFraction,
  type VolumeFraction,
  volumeFraction,
} from "../units.ts";
import { type Composition, type Liquid, pouredTogether } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { usualPartialDensity } from "./resin.ts";
import { strengthAt20C } from "./strength.ts";

/** What is in a jar, by mass. Everything else about it is worked out from this. */
export interface Solution {
  /** Dry resin: wax and insolubles are in it until they are filtered off, moisture is in the liquid. */
  readonly resin: Kilogram;
  readonly wax: Kilogram;
  readonly insoluble: Kilogram;
  /** Volume that the resin takes in solution; the same at every temperature here. */
  readonly resinVolume: CubicMetre;
  readonly liquid: Liquid;
}

/** Resin and liquid, as a scale weighs them. */
export const massOfSolution = (s: Solution): Kilogram => kilogram(s.resin + s.liquid.mass);

/**
 * Volume of a liquid at a temperature: its mass over its density.
 *
 * Valid:    the density's range
 * Source:   as `densityOfSolvent`
 */
export const volumeOfLiquid = (liquid: Liquid, temperature: Kelvin): CubicMetre =>
  cubicMetre(liquid.mass / densityOfSolvent(liquid.composition, temperature).value);

/**
 * Volume of a solution at a temperature: the volumes of the resin in solution and of the liquid add.
 *
 * Valid:    the density's range
 * Source:   the partial density stands for what the resin takes in solution; common practice
 */
export const volumeOfSolution = (s: Solution, temperature: Kelvin): CubicMetre =>
  cubicMetre(volumeOfLiquid(s.liquid, temperature) + s.resinVolume);

/** Dry resin over the whole, by mass. */
export const massFractionOfResin = (s: Solution): MassFraction => massFraction(s.resin / massOfSolution(s));

/**
 * Dry resin over the whole, by volume at a temperature.
 *
 * Valid:    the density's range
 * Source:   as `volumeOfSolution`
 */
export const volumeFractionOfResin = (s: Solution, temperature: Kelvin): VolumeFraction =>
  volumeFraction(s.resinVolume / volumeOfSolution(s, temperature));

/**
 * The cut of what is in a jar: dry resin over the volume of its liquid at 20 °C.
 *
 * A cut is defined by the solvent that resin is *added to*. Once jars are thinned and blended, that solvent is the
 * liquid that is there, contraction and the flakes' moisture included; for dry flakes in one solvent the two are one.
 *
 *     c = m(resin) / V(liquid, 20 °C)
 *
 * @param s  what is in the jar
 * @returns  the cut [kg resin / m³ solvent], scalar
 * @throws DomainError for a composition whose density is not known
 *
 * Valid:    any amount of liquid above none
 * Accuracy: as the density of the liquid
 * Source:   TT-S-300A (1977), footnote 1, and ASTM D360 section 6, for the definition
 * @example
 * poundsPerUsGallonFromCut(cutOfSolution(solutionOfCut(cutFromPoundsPerUsGallon(2), { ethanol: massFraction(1) }, { mass: kilogram(1) }))) // => 2.000
 */
export const cutOfSolution = (s: Solution): Cut => cutOf(s.resin / volumeOfLiquid(s.liquid, strengthAt20C));

/** An amount of a solution, by weighing or by volume at a temperature. */
export type SolutionAmount =
  | { readonly mass: Kilogram }
  | { readonly volume: CubicMetre; readonly temperature: Kelvin };

/**
 * What is in an amount of solution of a known cut.
 *
 *     per kg of liquid: resin = c/ρ20;  mass = 1 + c/ρ20;  volume = 1/ρ(T) + c/(ρ20·ρr)
 *
 * @param cut             dry resin per volume of liquid at 20 °C [kg/m³], scalar
 * @param composition     of the liquid, mass fractions
 * @param amount          mass [kg], or volume [m³] at a temperature [K]
 * @param partialDensity  of the dissolved resin [kg/m³], scalar
 * @returns               the masses in it; wax and insolubles are not known from a cut, and are none
 * @throws DomainError for a composition or temperature whose density is not known
 *
 * Valid:    any cut
 * Accuracy: as the density of the liquid and the resin's partial density
 * Source:   conservation of mass
 * @example
 * massFractionOfResin(solutionOfCut(cutFromPoundsPerUsGallon(2), aqueous("ethanol", massFraction(0.924077)), { mass: kilogram(1) })) // => 0.2280
 */
export function solutionOfCut(
  cut: Cut,
  composition: Composition,
  amount: SolutionAmount,
  partialDensity: KilogramPerCubicMetre = usualPartialDensity,
): Solution {
  const perKilogram = cut / densityOfSolvent(composition, strengthAt20C).value;
  const liquid =
    "mass" in amount
      ? amount.mass / (1 + perKilogram)
      : amount.volume /
        (1 / densityOfSolvent(composition, amount.temperature).value + perKilogram / partialDensity);
  const resin = liquid * perKilogram;
  return {
    resin: kilogram(resin),
    wax: kilogram(0),
    insoluble: kilogram(0),
    resinVolume: cubicMetre(resin / partialDensity),
    liquid: { mass: kilogram(liquid), composition },
  };
}

/** Solvent poured into a solution. */
export const withLiquid = (s: Solution, added: Liquid): Solution => ({
  ...s,
  liquid: pouredTogether([s.liquid, added]),
});

/** Solutions poured together: masses add, and so do the volumes that their resins take. */
export function blendOfSolutions(solutions: readonly Solution[]): Solution {
  const sum = (of: (s: Solution) => number): number => solutions.reduce((total, s) => total + of(s), 0);
  return {
    resin: kilogram(sum((s) => s.resin)),
    wax: kilogram(sum((s) => s.wax)),
    insoluble: kilogram(sum((s) => s.insoluble)),
    resinVolume: cubicMetre(sum((s) => s.resinVolume)),
    liquid: pouredTogether(solutions.map((s) => s.liquid)),
  };
}

/** A part of a solution, by share of its mass. */
export const partOfSolution = (s: Solution, share: number): Solution => ({
  resin: kilogram(s.resin * share),
  wax: kilogram(s.wax * share),
  insoluble: kilogram(s.insoluble * share),
  resinVolume: cubicMetre(s.resinVolume * share),
  liquid: { ...s.liquid, mass: kilogram(s.liquid.mass * share) },
});

/**
 * What passes a filter: the insolubles stay behind, and the wax too when it has settled and is left in the jar.
 * What clings to the filter as liquid is another loss, by weighing.
 */
export function filteredSolution(s: Solution, leftBehind: { readonly wax: boolean }): Solution {
  const removed = s.insoluble + (leftBehind.wax ? s.wax : 0);
  const kept = s.resin > 0 ? (s.resin - removed) / s.resin : 1;
  return {
    ...s,
    resin: kilogram(Math.max(0, s.resin - removed)),
    wax: kilogram(leftBehind.wax ? 0 : s.wax),
    insoluble: kilogram(0),
    resinVolume: cubicMetre(s.resinVolume * Math.max(0, kept)),
  };
}
