import { type Metre, metre } from "../units.ts";

/** What rubbing out asks of a film and does to it. */
export interface RubbingOut {
  /** To begin with. */
  readonly needed: Metre;
  /** That has to be left afterwards. */
  readonly least: Metre;
  readonly removes: Metre;
}

export interface ReadyToRub {
  /** What is missing; 0 where there is enough. */
  readonly toGo: Metre;
  /** Whole coats that would bring it; null where a coat adds nothing. */
  readonly coatsToGo: number | null;
  readonly leaves: Metre;
  /**
   * `goes through`: it takes off as much as is there or more; `may go through`: it does when the film is thinner than
   * thought by twice its uncertainty, or less is left than should be; `holds`: neither.
   */
  readonly risk: "goes through" | "may go through" | "holds";
}

/**
 * How far a film is from being rubbed out, and whether the work would cut through it.
 *
 *     to go = needed − film,   leaves = film − removes
 *
 * @param film      [m], scalar
 * @param sure      standard uncertainty of the film [m], scalar
 * @param perCoat   what another coat of the same adds [m], scalar
 * @param rubbing   thicknesses [m], each an editable default of common practice
 * @returns         [m], coats and the risk
 *
 * Valid:    an even film: edges and corners are thinner
 * Accuracy: as the film
 * Source:   addition; twice the standard uncertainty is the usual 95 %
 * @example
 * readyToRub(metre(5e-5), 5e-6, metre(1e-5), { needed: metre(7.5e-5), least: metre(2.5e-5), removes: metre(1.2e-5) }).coatsToGo // => 3
 */
export function readyToRub(film: Metre, sure: number, perCoat: Metre, rubbing: RubbingOut): ReadyToRub {
  const toGo = Math.max(0, rubbing.needed - film);
  const left = film - rubbing.removes;
  return {
    toGo: metre(toGo),
    coatsToGo: toGo === 0 ? 0 : perCoat > 0 ? Math.ceil(toGo / perCoat - 1e-9) : null,
    leaves: metre(Math.max(0, left)),
    risk: left <= 0 ? "goes through" : left - 2 * sure < rubbing.least ? "may go through" : "holds",
  };
}

/** A coat as it goes on, by any method. */
export interface CoatKind {
  readonly wet: Metre;
  /** Volume fraction of resin. */
  readonly solids: number;
  /** Share that stays on the work. */
  readonly transfer: number;
}

/**
 * How many coats of another kind make the same film.
 *
 *     n2 = n1·(wet1·φ1·transfer1)/(wet2·φ2·transfer2)
 *
 * @param count  n1, scalar
 * @param of     the coats that there are: wet thickness [m], volume solids, share that stays
 * @param other  the same of the others
 * @returns      n2, not rounded, scalar
 *
 * Valid:    sealed wood
 * Accuracy: as the volume solids
 * Source:   conservation of mass
 * @example
 * equalCoats(6, { wet: metre(1e-4), solids: 0.16589, transfer: 1 }, { wet: metre(1e-4), solids: 0.0904, transfer: 1 }) // => 11.01
 */
export function equalCoats(count: number, of: CoatKind, other: CoatKind): number {
  return (count * of.wet * of.solids * of.transfer) / (other.wet * other.solids * other.transfer);
}
