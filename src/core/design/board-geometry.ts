import { DomainError } from "../domain-error.ts";

/** A board with its patches side by side along it, millimetres throughout. */
export interface BoardGeometry {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly gutterMm: number;
  readonly patchLengthMm: number;
  readonly patchWidthMm: number;
  /** From the edge of a patch to the field that is judged: what ran over from its neighbour stays outside. */
  readonly judgedInsetMm: number;
}

const gutterShare = 0.0185;
const leastGutterMm = 8;
const leastPatchMm = 25;

/**
 * Where the patches of a board lie: equal patches, a gutter between them and at both ends, half a gutter along the
 * sides, and a field to judge that keeps a tenth of the patch from every edge.
 *
 * @param lengthMm  along the grain, scalar
 * @param widthMm   across it, scalar
 * @param patches   how many, scalar
 * @throws DomainError when a patch would be shorter or narrower than 25 mm
 *
 * Source: common practice; a tenth of the patch as Lacbench's own
 */
export function boardGeometry(lengthMm: number, widthMm: number, patches: number): BoardGeometry {
  const gutterMm = Math.max(leastGutterMm, Math.round(lengthMm * gutterShare));
  const patchLengthMm = (lengthMm - gutterMm * (patches + 1)) / patches;
  const patchWidthMm = widthMm - gutterMm;
  if (!(patchLengthMm >= leastPatchMm && patchWidthMm >= leastPatchMm))
    throw new DomainError({
      code: "out-of-range",
      field: patchWidthMm >= leastPatchMm ? "lengthMm" : "widthMm",
      value: patchWidthMm >= leastPatchMm ? lengthMm : widthMm,
      limits: {
        min:
          patchWidthMm >= leastPatchMm
            ? patches * leastPatchMm + gutterMm * (patches + 1)
            : leastPatchMm + gutterMm,
      },
      because: `A patch under ${leastPatchMm} mm cannot be judged apart from its edges.`,
    });
  return {
    lengthMm,
    widthMm,
    gutterMm,
    patchLengthMm,
    patchWidthMm,
    judgedInsetMm: Math.min(patchLengthMm, patchWidthMm) / 10,
  };
}

/** Distance from the board's left end to the left edge of a place, counted from 1. */
export const placeStartMm = (g: BoardGeometry, place: number): number =>
  g.gutterMm * place + g.patchLengthMm * (place - 1);
