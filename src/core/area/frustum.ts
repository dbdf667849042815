import type { Metre } from "../units.ts";

/**
 * Lateral area of a frustum of a cone: a cylinder where both diameters are the same, a cone where one is 0.
 *
 *     A = π·(d1 + d2)/2·√(h² + ((d1 − d2)/2)²)
 *
 * @param bottom  diameter d1 [m], scalar
 * @param top     diameter d2 [m], scalar
 * @param height  h along the axis [m], scalar; at 0 it is the flat ring between the two diameters
 * @returns       [m²], scalar, without the two ends
 *
 * Valid:    any sizes
 * Accuracy: exact
 * Source:   Archimedes, On the Sphere and Cylinder I, propositions 13 (cylinder), 14 (cone) and 16 (frustum)
 * @example
 * lateralAreaOfFrustum(metre(0.04), metre(0.04), metre(0.7)) // => 0.08796
 */
export function lateralAreaOfFrustum(bottom: Metre, top: Metre, height: Metre): number {
  const slant = Math.hypot(height, (bottom - top) / 2);
  return (Math.PI * (bottom + top) * slant) / 2;
}

/**
 * Lateral area of a square leg that tapers alike on its four sides.
 *
 *     A = 2·(a + b)·√(h² + ((a − b)/2)²)
 *
 * @param top     side a of the square at the top [m], scalar
 * @param foot    side b of the square at the foot [m], scalar
 * @param height  h [m], scalar
 * @returns       [m²], scalar, the four sides without the two ends
 *
 * Valid:    any sizes; one that tapers on two sides alone differs by under 1 part in 1000 where it is 20 times as long as its taper
 * Accuracy: exact
 * Source:   four trapezia: half the sum of the parallel sides times the height
 * @example
 * lateralAreaOfSquareLeg(metre(0.04), metre(0.02), metre(0.7)) // => 0.084009
 */
export function lateralAreaOfSquareLeg(top: Metre, foot: Metre, height: Metre): number {
  return 2 * (top + foot) * Math.hypot(height, (top - foot) / 2);
}

/**
 * Area of a circle.
 *
 *     A = π·d²/4
 *
 * @param diameter  d [m], scalar
 * @returns         [m²], scalar
 *
 * Valid:    any size
 * Accuracy: exact
 * Source:   Archimedes, Measurement of a Circle, proposition 1
 * @example
 * areaOfCircle(metre(2)) // => 3.1416
 */
export const areaOfCircle = (diameter: Metre): number => (Math.PI * diameter ** 2) / 4;
