import { DomainError } from "../domain-error.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import {
  type Cut,
  type KilogramPerCubicMetre,
  type Metre,
  metre,
  type VolumeFraction,
  volumeFraction,
} from "../units.ts";

/**
 * Volume solids of a solution at 20 °C: the share of a wet film that stays.
 *
 *     φ = (c/ρr) / (1 + c/ρr)
 *
 * @param cut             dry resin per volume of solvent [kg/m³], scalar
 * @param partialDensity  of the resin [kg/m³], scalar; the film is taken to be as dense as the resin in solution
 * @returns               volume fraction of resin, scalar
 *
 * Valid:    any cut
 * Accuracy: published 16 % at 2 lb and 10 % at 1 lb are rounded; within 1 point of them
 * Source:   conservation of mass
 * @example
 * volumeSolids(cutFromPoundsPerUsGallon(2)) // => 0.16589
 */
export function volumeSolids(
  cut: Cut,
  partialDensity: KilogramPerCubicMetre = usualPartialDensity,
): VolumeFraction {
  const ratio = cut / partialDensity;
  return volumeFraction(ratio / (1 + ratio));
}

/**
 * Dry thickness of a coat from its wet thickness.
 *
 *     dry = wet·φ·transfer
 *
 * @param wet       [m], scalar
 * @param solids    volume fraction of resin, scalar
 * @param transfer  share that stays on the work, 0–1, scalar
 * @returns         [m], scalar
 *
 * Valid:    a film that does not sink into pores
 * Accuracy: as the volume solids
 * Source:   conservation of mass
 * @example
 * dryFromWet(metre(1e-4), volumeFraction(0.16589), 1) // => 0.000016589
 */
export const dryFromWet = (wet: Metre, solids: VolumeFraction, transfer: number): Metre =>
  metre(wet * solids * transfer);

/**
 * Dry thickness of a coat from the mass of liquid spent on an area.
 *
 *     dry = m·w·transfer/ρr
 *
 * @param massPerArea        liquid spent [kg/m²], scalar
 * @param resinMassFraction  of the liquid, scalar
 * @param partialDensity     of the resin [kg/m³], scalar
 * @param transfer           share that stays on the work, 0–1, scalar
 * @returns                  [m], scalar
 *
 * Valid:    a film that does not sink into pores
 * Accuracy: as the weighing and the mass fraction
 * Source:   conservation of mass
 * @example
 * dryFromMass(0.09, 0.228, kilogramPerCubicMetre(1205), 1) // => 0.00001703
 */
export const dryFromMass = (
  massPerArea: number,
  resinMassFraction: number,
  partialDensity: KilogramPerCubicMetre,
  transfer: number,
): Metre => metre((massPerArea * resinMassFraction * transfer) / partialDensity);

/** Film taken off by sanding, after so many coats. */
export interface Removal {
  readonly afterCoat: number;
  readonly removed: Metre;
}

/**
 * Film after each coat, sanding counted.
 *
 * @param coats     n dry thicknesses [m], in order
 * @param removals  after which coat (1 = the first) how much came off [m]; several after one coat add
 * @returns         n thicknesses [m]: the film that is there after each coat and its sanding
 * @throws DomainError when a coat does not exist, or more is taken off than is there
 *
 * Valid:    films without sinking into pores
 * Accuracy: exact
 * Source:   addition
 * @example
 * filmAfterEachCoat([metre(2e-5), metre(1e-5)], [{ afterCoat: 1, removed: metre(5e-6) }])[1] // => 0.000025
 */
export function filmAfterEachCoat(coats: readonly Metre[], removals: readonly Removal[]): readonly Metre[] {
  removals.forEach(({ afterCoat }, i) => {
    if (!(Number.isInteger(afterCoat) && afterCoat >= 1 && afterCoat <= coats.length))
      throw new DomainError({
        code: "out-of-range",
        field: `sanded[${i}].afterCoat`,
        value: afterCoat,
        limits: { min: 1, max: coats.length },
      });
  });
  let film = 0;
  return coats.map((coat, i) => {
    film += coat;
    removals.forEach(({ afterCoat, removed }, r) => {
      if (afterCoat !== i + 1) return;
      if (removed > film * (1 + 1e-12))
        throw new DomainError({
          code: "out-of-range",
          field: `sanded[${r}].removedUm`,
          value: removed * 1e6,
          limits: { min: 0, max: film * 1e6 },
          because: "More would come off than is there.",
        });
      film = Math.max(0, film - removed);
    });
    return metre(film);
  });
}
