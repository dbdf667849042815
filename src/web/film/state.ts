import { volumeSolids } from "../../core/film/film.ts";
import { equalCoats } from "../../core/film/rubbing-out.ts";
import type { NotebookReader } from "../../core/notebook/reader.ts";
import { type Cut, metre, volumeFraction } from "../../core/units.ts";
import { usualCoat } from "../../core/views/coat-amount.ts";
import type { FilmView } from "../../core/views/film.ts";
import type { CoatMethod } from "../../core/views/waits.ts";

/** A colour for a coat, and one to write on it. */
export interface CoatLook {
  readonly fill: string;
  readonly on: string;
}

/** One coat as it is drawn: from where to where above the wood, and what came off it. */
export interface Layer extends CoatLook {
  readonly number: number;
  readonly fromUm: number;
  readonly toUm: number;
  readonly offUm: number;
}

export interface Section {
  readonly layers: readonly Layer[];
  readonly thicknessUm: number;
  readonly sunkUm: number;
  readonly neededUm: number;
  readonly toGoUm: number;
}

const micro = 1e6;

/** The film as it is drawn: coats on one another from the wood up; those of an unknown thickness are left out, and told. */
export function sectionOf(film: FilmView, lookOf: (jar: string | undefined) => CoatLook): Section {
  let height = 0;
  const layers = film.coats.flatMap((coat, i): Layer[] => {
    if (coat.left === null || coat.laid === null) return [];
    const fromUm = height;
    height += coat.left * micro;
    const offUm = (coat.laid - coat.left) * micro;
    const look = lookOf(coat.openWhich ? undefined : coat.jars[0]);
    return [{ number: i + 1, fromUm, toUm: height, offUm: offUm > 1e-6 ? offUm : 0, ...look }];
  });
  return {
    layers,
    thicknessUm: film.thickness * micro,
    sunkUm: film.coats.reduce((sum, coat) => sum + coat.sunk * micro, 0),
    neededUm: film.rubbing.needed * micro,
    toGoUm: film.rubbing.toGo * micro,
  };
}

/** The numbers of the coats whose thickness nobody can know, by why that is. */
export const unknownCoats = (film: Pick<FilmView, "coats">) =>
  (["no jar", "cut"] as const).flatMap((why) => {
    const coats = film.coats.flatMap((coat, i) => (coat.whyUnknown === why ? [i + 1] : []));
    return coats.length === 0 ? [] : [{ why, coats }];
  });

/** What has to fit above the wood, µm. */
export const heightUm = ({ thicknessUm, neededUm, toGoUm }: Section): number =>
  (toGoUm > 0 ? Math.max(thicknessUm, neededUm) : thicknessUm) * 1.06;

/** All the resin that went on, sunk in or not, m: what another cut would have to bring. */
export const laidInAll = (film: FilmView): number =>
  film.coats.reduce((sum, coat) => sum + (coat.laid ?? 0) + coat.sunk, 0);

/** How many usual coats of another cut and method make the film of these. */
export function coatsInstead(
  read: NotebookReader,
  film: FilmView,
  cut: Cut,
  method: CoatMethod,
): number | undefined {
  const laid = laidInAll(film);
  const solids = volumeSolids(cut);
  if (!(laid > 0 && solids > 0)) return undefined;
  const these = { wet: metre(laid), solids: volumeFraction(1), transfer: 1 };
  return equalCoats(1, these, { wet: metre(usualCoat(read, method).wet), solids, transfer: 1 });
}
