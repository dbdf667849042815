import { type DryingSetup, dryFilm } from "./drying.ts";

/** Longer than this no wait is followed, s. */
export const longestWait = 72 * 3600;

/**
 * How long until a coat is firm enough for the next.
 *
 * @param setup  of the coat with the film beneath it
 * @returns      [s]; null where it does not come to it in three days
 *
 * Valid:    as `dryFilm`
 * Accuracy: a factor of 3, fitted to practice; padded coats after the third wait longer in practice than that
 * Source:   as `dryFilm`
 */
export const recoatSeconds = (setup: DryingSetup): number | null =>
  dryFilm({ ...setup, seconds: longestWait }, { until: "recoat" }).recoat;
