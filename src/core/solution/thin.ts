import { DomainError } from "../domain-error.ts";
import {
  type CubicMetre,
  type Cut,
  cubicMetre,
  type Kelvin,
  type Kilogram,
  kilogram,
  poundsPerUsGallonFromCut,
} from "../units.ts";
import type { Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import { findRoot } from "./find-root.ts";
import { cutOfSolution, type Solution, volumeOfLiquid, volumeOfSolution, withLiquid } from "./solution.ts";
import { strengthAt20C } from "./strength.ts";

export interface Thinned {
  readonly added: Kilogram;
  readonly result: Solution;
}

/** Solvent only weakens: what would strengthen is resin, and how much. */
function whyNot(stock: Solution, target: Cut, now: Cut): string {
  if (!(target > now)) return "No amount of solvent brings a cut to nothing.";
  const resin = stock.resin * (target / now - 1) * 1e3;
  return `Solvent only weakens a cut; ${resin.toPrecision(3)} g more of dry resin would bring it there.`;
}

/**
 * The solvent to add for a weaker cut.
 *
 *     m(resin) / V(liquid + added, 20 °C) = target
 *
 * For the solvent that is in the stock already this is parts = (c1/c2 − 1)/(1 + c1/ρr) of solution; another solvent
 * contracts with it, so the equation is solved.
 *
 * @param stock   what is thinned
 * @param target  [kg resin / m³ liquid at 20 °C], scalar, no more than the stock's
 * @param added   the solvent added, mass fractions
 * @returns       its mass [kg] and what is there then
 * @throws DomainError `out-of-range` for a target above the stock's cut, for none, and for NaN
 *
 * Valid:    the density's range
 * Accuracy: as the densities
 * Source:   conservation of mass
 * @example
 * thinTo(solutionOfCut(cutFromPoundsPerUsGallon(3), { ethanol: massFraction(1) }, { mass: kilogram(1) }), cutFromPoundsPerUsGallon(1), { ethanol: massFraction(1) }).added // => 1.3741
 */
export function thinTo(stock: Solution, target: Cut, added: Composition): Thinned {
  const now = cutOfSolution(stock);
  if (!(target > 0 && target <= now * (1 + 1e-9)))
    throw new DomainError({
      code: Number.isNaN(target) ? "not-a-number" : "out-of-range",
      field: "toCutLbPerGal",
      value: poundsPerUsGallonFromCut(target),
      limits: { min: 0, max: poundsPerUsGallonFromCut(now) },
      because: whyNot(stock, target, now),
    });
  const wanted = stock.resin / target;
  const withAdded = (mass: number): Solution =>
    withLiquid(stock, { mass: kilogram(mass), composition: added });
  const short = (mass: number): number => volumeOfLiquid(withAdded(mass).liquid, strengthAt20C) - wanted;
  if (short(0) >= 0) return { added: kilogram(0), result: stock };
  const most = wanted * densityOfSolvent(added, strengthAt20C).value * 1.1; // no two of these contract by a tenth
  const mass = findRoot(short, 0, most);
  return { added: kilogram(mass), result: withAdded(mass) };
}

/** What a volume ratio would have given: (c1/c2 − 1) parts of solvent to one of *solution*, as if cut and volume ratio were one. */
export interface SimpleRatio {
  readonly addedVolume: CubicMetre;
  readonly cut: Cut;
}

/**
 * The simple ratio, shown beside `thinTo` since it is what is usually done; the cut it gives is found by mass balance.
 *
 *     added = V(solution)·(c1/c2 − 1)
 *
 * Valid:    the density's range; volumes at the temperature
 * Source:   common practice, which takes cut and volume ratio for one
 */
export function simpleRatio(
  stock: Solution,
  target: Cut,
  added: Composition,
  temperature: Kelvin,
): SimpleRatio {
  const addedVolume = volumeOfSolution(stock, temperature) * (cutOfSolution(stock) / target - 1);
  const mass = kilogram(addedVolume * densityOfSolvent(added, temperature).value);
  return {
    addedVolume: cubicMetre(addedVolume),
    cut: cutOfSolution(withLiquid(stock, { mass, composition: added })),
  };
}
