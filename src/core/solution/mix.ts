import { DomainError } from "../domain-error.ts";
import {
  type CubicMetre,
  type Cut,
  cubicMetre,
  cut as cutOf,
  type Kelvin,
  type Kilogram,
  kilogram,
  massFraction,
} from "../units.ts";
import { type Composition, type Liquid, pouredTogether } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { findRoot } from "./find-root.ts";
import type { ResinBlend } from "./resin.ts";
import type { Solution } from "./solution.ts";
import { strengthAt20C } from "./strength.ts";

/** What a jar is mixed from, whatever the amounts. */
export interface Recipe {
  readonly resin: ResinBlend;
  readonly solvent: Composition;
  /** At which volumes are measured. */
  readonly temperature: Kelvin;
  /** kg/m³ added to the density of every liquid: how an uncertain density is carried through. */
  readonly densityOffset?: number;
}

/** Any two of these say the rest. */
export interface MixGiven {
  /** Flakes as weighed. */
  readonly resin?: Kilogram;
  readonly cut?: Cut;
  readonly solvent?: Kilogram;
  /** Of the finished liquid, at the recipe's temperature. */
  readonly solutionVolume?: CubicMetre;
}

export interface Mixed {
  readonly resin: Kilogram;
  readonly solvent: Kilogram;
  /** Dry resin per volume of the solvent that was poured, at 20 °C. */
  readonly cut: Cut;
  readonly solution: Solution;
  readonly solutionVolume: CubicMetre;
}

const density = (recipe: Recipe, composition: Composition, temperature: Kelvin): number =>
  densityOfSolvent(composition, temperature).value + (recipe.densityOffset ?? 0);

/** The solvent with the moisture that the flakes brought. */
function liquidIn(recipe: Recipe, resin: number, solvent: number): Liquid {
  const poured = { mass: kilogram(solvent), composition: recipe.solvent };
  if (recipe.resin.moisture === 0) return poured;
  const moisture = { mass: kilogram(resin * recipe.resin.moisture), composition: { water: massFraction(1) } };
  return pouredTogether([poured, moisture]);
}

function volumeIn(recipe: Recipe, resin: number, solvent: number): number {
  const liquid = liquidIn(recipe, resin, solvent);
  return (
    liquid.mass / density(recipe, liquid.composition, recipe.temperature) +
    (resin * recipe.resin.dry) / recipe.resin.partialDensity
  );
}

const tooSmall = (value: number, least: number, what: string): DomainError =>
  new DomainError({
    code: "contradiction",
    field: "solutionMl",
    value: value * 1e6,
    because: `The ${what} alone takes ${(least * 1e6).toPrecision(4)} mL.`,
    limits: { min: least * 1e6 },
  });

/** Solvent that fills resin up to a volume. */
function solventToFill(recipe: Recipe, resin: number, volume: number): number {
  const least = resin * (recipe.resin.dry / recipe.resin.partialDensity + recipe.resin.moisture / 998.2);
  if (!(volume > least)) throw tooSmall(volume, least, "resin");
  const most = volume * density(recipe, recipe.solvent, recipe.temperature) * 1.1;
  const nearly = most * 1e-9; // a jar holds some liquid: with none there is no cut
  return findRoot((solvent) => volumeIn(recipe, resin, solvent) - volume, nearly, most);
}

/** Resin that lifts a solvent to a volume. */
function resinToFill(recipe: Recipe, solvent: number, volume: number): number {
  const least = volumeIn(recipe, 0, solvent);
  if (!(volume > least)) throw tooSmall(volume, least, "solvent");
  const most = (volume * recipe.resin.partialDensity) / recipe.resin.dry;
  return findRoot((resin) => volumeIn(recipe, resin, solvent) - volume, 0, most);
}

/** [resin, solvent] in kg. */
function amounts(recipe: Recipe, given: MixGiven): readonly [number, number] {
  const { resin, cut, solvent, solutionVolume } = given;
  if (cut !== undefined) {
    const ratio = cut / (recipe.resin.dry * density(recipe, recipe.solvent, strengthAt20C));
    if (resin !== undefined) return [resin, resin / ratio];
    if (solvent !== undefined) return [solvent * ratio, solvent];
    if (solutionVolume !== undefined) {
      const scale = solutionVolume / volumeIn(recipe, ratio, 1);
      return [scale * ratio, scale];
    }
  }
  if (resin !== undefined && solvent !== undefined) return [resin, solvent];
  if (solutionVolume !== undefined) {
    if (resin !== undefined) return [resin, solventToFill(recipe, resin, solutionVolume)];
    if (solvent !== undefined) return [resinToFill(recipe, solvent, solutionVolume), solvent];
  }
  throw new DomainError({ code: "missing", field: "cutLbPerGal", value: undefined });
}

const cutOfAmounts = (recipe: Recipe, resin: number, solvent: number): Cut =>
  cutOf((resin * recipe.resin.dry * density(recipe, recipe.solvent, strengthAt20C)) / solvent);

/**
 * The cut of a mix alone, for the many times that an uncertainty asks for it.
 *
 * Valid:    as `mixFrom`
 * Source:   as `mixFrom`
 */
export const cutOfMix = (recipe: Recipe, given: MixGiven): Cut =>
  cutOfAmounts(recipe, ...amounts(recipe, given));

/**
 * A mix, in any direction: two amounts give the rest, by mass balance.
 *
 *     cut = resin·dry / V(solvent, 20 °C)
 *     V(solution, T) = m(solvent + moisture)/ρ(T) + resin·dry/ρr
 *
 * The moisture of the flakes goes to the liquid and contracts with it; the cut counts the solvent as poured.
 *
 * @param recipe  resin, solvent, and the temperature of volumes
 * @param given   exactly two of resin [kg], cut [kg/m³], solvent [kg], volume of solution [m³]
 * @returns       all four, and what is in the jar
 * @throws DomainError `missing` for fewer than two; `contradiction` when the volume is less than its parts take;
 *                     outside the density's range
 *
 * Valid:    the density's range
 * Accuracy: as the densities; resin and liquid are taken not to contract with each other
 * Source:   conservation of mass; TT-S-300A (1977), footnote 1, and ASTM D360 section 6, for the cut
 * @example
 * mixFrom({ resin: blendOfResins([plainResin]), solvent: aqueous("ethanol", massFraction(0.924077)), temperature: strengthAt20C }, { resin: kilogram(0.057), cut: cutFromPoundsPerUsGallon(2) }).solvent // => 0.19298
 */
export function mixFrom(recipe: Recipe, given: MixGiven): Mixed {
  const [resin, solvent] = amounts(recipe, given);
  const dry = resin * recipe.resin.dry;
  return {
    resin: kilogram(resin),
    solvent: kilogram(solvent),
    cut: cutOfAmounts(recipe, resin, solvent),
    solutionVolume: cubicMetre(volumeIn(recipe, resin, solvent)),
    solution: {
      resin: kilogram(dry),
      wax: kilogram(resin * recipe.resin.wax),
      insoluble: kilogram(resin * recipe.resin.insoluble),
      resinVolume: cubicMetre(dry / recipe.resin.partialDensity),
      liquid: liquidIn(recipe, resin, solvent),
    },
  };
}
