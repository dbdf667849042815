import { type MassFraction, type Metre, metre } from "../units.ts";
import type { Shrinkage } from "./shrinkage.ts";

/** Across the rings (a quartersawn board's width) or along them (a flatsawn board's). */
export const grains = ["radial", "tangential"] as const;
export type Grain = (typeof grains)[number];

/** Water that wood holds in its walls when they are full, percent. */
const fibreSaturation = 30;
/** Between these the coefficients are made to be used. */
export const coefficientMoisture = { min: 0.06, max: 0.14 } as const;

export interface Movement {
  /** New width less old. */
  readonly change: number;
  readonly width: Metre;
  readonly method: "coefficient" | "total shrinkage";
}

/**
 * How much a panel's width changes as its moisture does.
 *
 *     6–14 % with a printed coefficient:  ΔD = D·C·(M₂ − M₁)
 *     else:                               ΔD = D·(M₂ − M₁) / (30·100/S − 30 + M₁)
 *
 * @param width    D [m] at the first moisture, scalar
 * @param from     M₁, mass fraction of dry wood, scalar; in the equations percent
 * @param to       M₂, the same
 * @param wood     a row of the shrinkage table
 * @param grain    which of its two values
 * @returns        the change [m], the new width [m], and by which of the two equations
 *
 * Valid:    below 30 % moisture; above it nothing moves, and both are held there
 * Accuracy: 15 % (standard) of the change, by the board
 * Source:   USDA Wood Handbook (FPL-GTR-282), ch. 13, eqs. 13-1 and 13-2
 * @example
 * movement(metre(0.3), massFraction(0.06), massFraction(0.1), shrinkageOf("cherry, black"), "tangential").change // => 0.002976
 */
export function movement(
  width: Metre,
  from: MassFraction,
  to: MassFraction,
  wood: Shrinkage,
  grain: Grain,
): Movement {
  const coefficient = grain === "radial" ? wood.radialCoefficient : wood.tangentialCoefficient;
  const shrinkage = grain === "radial" ? wood.radialPercent : wood.tangentialPercent;
  const first = Math.min(100 * from, fibreSaturation);
  const second = Math.min(100 * to, fibreSaturation);
  const inside = (m: number): boolean =>
    m >= 100 * coefficientMoisture.min && m <= 100 * coefficientMoisture.max;
  const byCoefficient = coefficient !== null && inside(first) && inside(second);
  const change = byCoefficient
    ? width * coefficient * (second - first)
    : (width * (second - first)) / ((fibreSaturation * 100) / shrinkage - fibreSaturation + first);
  return {
    change,
    width: metre(width + change),
    method: byCoefficient ? "coefficient" : "total shrinkage",
  };
}
