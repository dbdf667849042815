import { DomainError } from "../domain-error.ts";

/** Coats that a schedule may have; a recipe that needs more is another recipe. */
export const mostCoats = 40;

/**
 * Coats of one recipe that leave at least the film of another.
 *
 *     n = ⌈ film / coat − times + 1 ⌉
 *
 * @param filmUm          the film wanted, dry [µm], above 0
 * @param coatUm          what one coat on a sealed surface leaves [µm], above 0
 * @param firstCoatTimes  how many times that a first coat on bare wood leaves, 1 or more
 * @returns               whole coats, at least 1; may be more than can be planned
 * @throws DomainError for a film or a coat that is not above 0
 *
 * Valid:    no sinking in and no sanding beyond what both recipes share
 * Accuracy: exact, of the thicknesses given
 * Source:   addition
 * @example
 * coatsForFilm(42, 16.6, 1.2) // => 3
 */
export function coatsForFilm(filmUm: number, coatUm: number, firstCoatTimes: number): number {
  for (const [field, value] of Object.entries({ filmUm, coatUm }))
    if (!(value > 0)) throw new DomainError({ code: "out-of-range", field, value, limits: { min: 0 } });
  return Math.max(1, Math.ceil(filmUm / coatUm - firstCoatTimes + 1 - 1e-9));
}
