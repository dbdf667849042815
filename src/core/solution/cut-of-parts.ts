import { bulkDensityOfFlakes } from "../quantity/flakes-by-volume.ts";
import { type Parts, type PartsBy, partsBy } from "../quantity/parse-parts.ts";
import { type Cut, cut } from "../units.ts";
import type { Composition } from "./composition.ts";
import { densityOfSolvent } from "./density.ts";
import type { ResinBlend } from "./resin.ts";
import { strengthAt20C } from "./strength.ts";

/** A recipe in parts read in one way, and the cut that it makes. */
export interface PartsRead {
  readonly by: PartsBy;
  readonly cut: Cut;
  /** Of the reading itself: loose flakes fill a cup more or less. */
  readonly standardUncertainty: number;
}

const gramPerMillilitre = 1e3;

/**
 * The cuts that a recipe in parts can mean, by weight, by weight to volume, and by volume.
 *
 *     c = parts of resin·dry·k / parts of solvent
 *     k = ρ(solvent, 20 °C), 1 g/mL, or the flakes' bulk density
 *
 * @param parts    of resin to solvent
 * @param resin    what one kilogram of the flakes brings
 * @param solvent  mass fractions
 * @returns        one reading where the parts say by what, else all three
 * @throws DomainError for a composition whose density is not known
 *
 * Valid:    any ratio above none
 * Accuracy: as the density; by volume 20 % (standard), the flakes' bulk
 * Source:   conservation of mass; the bulk density from memory
 * @example
 * cutsOfParts({ resin: 1, solvent: 4, by: "weight" }, blendOfResins([plainResin]), aqueous("ethanol", massFraction(0.924077)))[0].cut // => 202.8
 */
export function cutsOfParts(parts: Parts, resin: ResinBlend, solvent: Composition): readonly PartsRead[] {
  const ratio = (parts.resin * resin.dry) / parts.solvent;
  const factor: Readonly<Record<PartsBy, number>> = {
    weight: densityOfSolvent(solvent, strengthAt20C).value,
    "weight-to-volume": gramPerMillilitre,
    volume: bulkDensityOfFlakes.usual,
  };
  return (parts.by === undefined ? partsBy : [parts.by]).map((by) => ({
    by,
    cut: cut(ratio * factor[by]),
    standardUncertainty: by === "volume" ? ratio * bulkDensityOfFlakes.standardUncertainty : 0,
  }));
}
