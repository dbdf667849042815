import { type DryingRun, type DryingSetup, dryFilm } from "./drying.ts";

export const blushWords = ["unlikely", "possible", "likely"] as const;
export type BlushWord = (typeof blushWords)[number];

/** General paint rule: the surface 3 °C above the dew point; common practice. */
const asked = 3;
/** What a film that sets with water alone needs above that, K. The one number that is fitted to practice. */
export const askedOfWater = 2;

export interface Blush {
  readonly word: BlushWord;
  /** K to spare; below zero it falls short. Null in air too dry to have a dew point. */
  readonly margin: number | null;
  /** Coldest surface less dew point, K. */
  readonly dewMargin: number | null;
}

/**
 * Whether a coat may turn white, by how near its surface comes to the dew point and by the water in it when it sets.
 *
 *     margin = (Tlowest − Tdew) − 3 − 2·w − θ,   unlikely: margin ≥ 0;  likely: margin < −3;  possible: between
 *
 * The surface is counted until the film is touch-dry; w is the water share then, or at the end of a run in which it does
 * not set.
 *
 * @param run        of the drying film
 * @param threshold  θ [K]: 0, or as `ownWhiteningMargin` has it from logged whitening, scalar
 * @returns          the word and the two margins [K]; undefined for a film without resin, which cannot turn white
 *
 * Valid:    as `dryFilm`
 * Accuracy: fitted to practice: clear lac blushes from about 75 % relative humidity on wood as warm as the air
 * Source:   3 °C above the dew point is common practice; the term in w is fitted to practice
 */
export function blushOf(run: DryingRun, threshold = 0): Blush | undefined {
  if (run.equations.surface.film.resinVolume === 0) return undefined;
  if (run.dewPoint === null) return { word: "unlikely", margin: null, dewMargin: null };
  const dewMargin = run.lowestSurface - run.dewPoint;
  const water = askedOfWater * (run.waterShareAtSet ?? run.waterShareAtEnd);
  const margin = dewMargin - asked - water - threshold;
  return { word: wordFor(margin), margin, dewMargin };
}

const wordFor = (margin: number): BlushWord =>
  margin >= 0 ? "unlikely" : margin >= -asked ? "possible" : "likely";

/** The same for a coat that is followed no further than to where it sets: for a live figure. */
export const blushOfSetup = (setup: DryingSetup, threshold = 0): Blush | undefined =>
  blushOf(dryFilm(setup, { until: "touch-dry" }), threshold);
