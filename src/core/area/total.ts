import { methodDefaults } from "../pieces/method-defaults.ts";
import type { Surface } from "./surface.ts";

/** A part that is counted: its surfaces, which of them are finished, and how many of it there are. */
export interface CountedPart {
  readonly surfaces: readonly Surface[];
  readonly finished: readonly string[];
  readonly count: number;
  /** Bare wood, whose first coat takes more. */
  readonly bare: boolean;
}

export interface AreaTotal {
  readonly areaM2: number;
  readonly endGrainM2: number;
  /** Sealed side grain that would take as much liquid. */
  readonly equivalentM2: number;
}

export interface TakesMore {
  readonly endGrainTimes: number;
  readonly bareWoodTimes: number;
}

/**
 * How many times as much liquid end grain and bare wood take, each to be replaced by the person's own. End grain:
 * from memory; that it takes more is common practice. Bare wood: as the first coat of a plan, common practice.
 */
export const usuallyTakesMore: TakesMore = {
  endGrainTimes: 2,
  bareWoodTimes: methodDefaults.brush.firstCoatTimes,
};

const sum = (of: readonly Surface[]): number => of.reduce((so, surface) => so + surface.areaM2, 0);

/**
 * The finished area of a part, all of them that there are, and the area that would take as much liquid.
 *
 *     A = n·Σ a,   A_eq = n·b·(Σ a_side + e·Σ a_end)
 *
 * @param part   surfaces [m²], which are finished, n, bare or not
 * @param takes  e and b, scalars; b is 1 where the part is not bare
 * @returns      [m²]
 *
 * Valid:    the first coat; once it is sealed, end grain takes little more than the rest
 * Accuracy: as the two multipliers, which are rough
 * Source:   addition; the multipliers as `usuallyTakesMore` says
 * @example
 * areaOfPart({ surfaces: [{ surface: "left", areaM2: 0.1, grain: "end" }], finished: ["left"], count: 2, bare: false }).equivalentM2 // => 0.4
 */
export function areaOfPart(part: CountedPart, takes: TakesMore = usuallyTakesMore): AreaTotal {
  const counted = part.surfaces.filter(({ surface }) => part.finished.includes(surface));
  const areaM2 = part.count * sum(counted);
  const endGrainM2 = part.count * sum(counted.filter(({ grain }) => grain === "end"));
  const bare = part.bare ? takes.bareWoodTimes : 1;
  return {
    areaM2,
    endGrainM2,
    equivalentM2: bare * (areaM2 + (takes.endGrainTimes - 1) * endGrainM2),
  };
}

/**
 * The totals of all parts together.
 *
 * @param parts  any number of them
 * @returns      [m²], 0 of no parts
 */
export const areaOfAll = (parts: readonly AreaTotal[]): AreaTotal =>
  parts.reduce(
    (so, part) => ({
      areaM2: so.areaM2 + part.areaM2,
      endGrainM2: so.endGrainM2 + part.endGrainM2,
      equivalentM2: so.equivalentM2 + part.equivalentM2,
    }),
    { areaM2: 0, endGrainM2: 0, equivalentM2: 0 },
  );
