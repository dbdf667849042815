import { DomainError, inRange } from "../domain-error.ts";

/** A side or a part of a piece that is worked by itself. */
export interface PieceSurface {
  readonly name: string;
  /** Of the whole area; all together are 1. */
  readonly share: number;
  /** The piece is turned to it: it is worked when the one before it is dry enough to be lain on. */
  readonly turned?: boolean;
}

/** More are worked as one. */
export const mostSurfaces = 12;
export const mostHands = 6;

/** Shares are typed with two digits, and a third is 0.33. */
const sumWithin = 0.011;

/** A piece that is worked all at once. */
const whole: readonly PieceSurface[] = [{ name: "", share: 1 }];

function checkNames(surfaces: readonly PieceSurface[]): void {
  surfaces.forEach(({ name }, i) => {
    const twice = surfaces.findIndex((other) => other.name === name) < i;
    if (name.trim() !== "" && !twice) return;
    throw new DomainError({
      code: "contradiction",
      field: `surfaces[${i}].name`,
      value: name,
      because: twice
        ? "Two surfaces have this name; each has its own."
        : "A surface has a name to tell it by, as underside.",
    });
  });
}

/**
 * The surfaces of a piece, with shares that add up to 1 to the last digit.
 *
 * @param surfaces  1 to 12, in the order in which they are worked; none for a piece that is worked all at once
 * @returns         at least one
 * @throws DomainError for too many of them, a share that is none, shares that do not add up to 1, a name that is missing or
 *                     stands twice, and a first one that is turned to
 */
export function checkedSurfaces(surfaces: readonly PieceSurface[] | undefined): readonly PieceSurface[] {
  if (surfaces === undefined) return whole;
  inRange("surfaces", surfaces.length, { min: 1, max: mostSurfaces });
  checkNames(surfaces);
  surfaces.forEach(({ share }, i) => {
    inRange(`surfaces[${i}].share`, share, { min: 0.001, max: 1 });
  });
  const sum = surfaces.reduce((all, { share }) => all + share, 0);
  if (Math.abs(sum - 1) > sumWithin)
    throw new DomainError({
      code: "contradiction",
      field: "surfaces",
      value: Number(sum.toPrecision(6)),
      because: "The shares of the surfaces add up to 1, the whole area.",
    });
  if (surfaces[0]?.turned === true)
    throw new DomainError({
      code: "contradiction",
      field: "surfaces[0].turned",
      value: true,
      because: "There is none before it that could lie below.",
    });
  return surfaces.map((surface) => ({ ...surface, share: surface.share / sum }));
}

/** The surfaces by the thing that they are on, by number: those that are turned to lie on the same as the one before. */
export function thingsOf(surfaces: readonly PieceSurface[]): readonly (readonly number[])[] {
  const things: number[][] = [];
  surfaces.forEach(({ turned }, i) => {
    if (turned === true) things.at(-1)?.push(i);
    else things.push([i]);
  });
  return things;
}
