import type { Lab } from "./lab.ts";

/**
 * Colour difference of 1976: the distance in CIELAB.
 *
 *     ΔE = √(ΔL² + Δa² + Δb²)
 *
 * Counts a step between strong colours as too large: for a finish prefer `colourDifferenceCie2000`.
 *
 * @param first   L, a, b under the same light as `second`
 * @param second  L, a, b
 * @returns       ΔE, 0 for the same colour, scalar
 *
 * Valid:    finite values
 * Accuracy: exact by definition
 * Source:   CIE 15:2004, clause 8.2.1.3
 * @example
 * colourDifferenceCie76({ L: 50, a: 2.6772, b: -79.7751 }, { L: 50, a: 0, b: -82.7485 }) // => 4.0011
 */
export const colourDifferenceCie76 = (first: Lab, second: Lab): number =>
  Math.hypot(first.L - second.L, first.a - second.a, first.b - second.b);

const degrees = (x: number): number => (x * 180) / Math.PI;
const radians = (x: number): number => (x * Math.PI) / 180;

/** Hue angle 0–360°; 0 for grey, which has none. */
function hue(b: number, a: number): number {
  if (a === 0 && b === 0) return 0;
  const h = degrees(Math.atan2(b, a));
  return h < 0 ? h + 360 : h;
}

/** Difference and mean of two hues, the short way round; for a grey, the sum stands for the mean. */
function hues(
  h1: number,
  h2: number,
  anyGrey: boolean,
): { readonly difference: number; readonly mean: number } {
  if (anyGrey) return { difference: 0, mean: h1 + h2 };
  const apart = h2 - h1;
  if (Math.abs(apart) <= 180) return { difference: apart, mean: (h1 + h2) / 2 };
  return {
    difference: apart > 180 ? apart - 360 : apart + 360,
    mean: h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2,
  };
}

const seventh = (c: number): number => Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7));

/**
 * Colour difference CIEDE2000, with all three parametric factors 1.
 *
 *     ΔE00 = √((ΔL′/SL)² + (ΔC′/SC)² + (ΔH′/SH)² + RT·(ΔC′/SC)·(ΔH′/SH))
 *
 * Not for large differences, and not to be differentiated: it jumps where two hues lie 180° apart.
 *
 * @param first   L, a, b under the same light as `second`
 * @param second  L, a, b
 * @returns       ΔE00, 0 for the same colour, scalar
 *
 * Valid:    meant for pairs up to 5 ΔE apart, under D65, seen side by side on grey
 * Accuracy: within 5e-5 of the source's printed table, 1e-8 of the same to twelve digits
 * Source:   Sharma, Wu, Dalal, Color Res. Appl. 30 (2005) 21, eq. 2–22 (ISO/CIE 11664-6)
 * @example
 * colourDifferenceCie2000({ L: 50, a: 2.6772, b: -79.7751 }, { L: 50, a: 0, b: -82.7485 }) // => 2.0425
 */
export function colourDifferenceCie2000(first: Lab, second: Lab): number {
  const G = 0.5 * (1 - seventh((Math.hypot(first.a, first.b) + Math.hypot(second.a, second.b)) / 2));
  const [a1, a2] = [(1 + G) * first.a, (1 + G) * second.a];
  const [C1, C2] = [Math.hypot(a1, first.b), Math.hypot(a2, second.b)];
  const h = hues(hue(first.b, a1), hue(second.b, a2), C1 * C2 === 0);

  const dL = second.L - first.L;
  const dC = C2 - C1;
  const dH = 2 * Math.sqrt(C1 * C2) * Math.sin(radians(h.difference / 2));
  const L = (first.L + second.L) / 2;
  const C = (C1 + C2) / 2;

  const T =
    1 -
    0.17 * Math.cos(radians(h.mean - 30)) +
    0.24 * Math.cos(radians(2 * h.mean)) +
    0.32 * Math.cos(radians(3 * h.mean + 6)) -
    0.2 * Math.cos(radians(4 * h.mean - 63));
  const SL = 1 + (0.015 * (L - 50) ** 2) / Math.sqrt(20 + (L - 50) ** 2);
  const SC = 1 + 0.045 * C;
  const SH = 1 + 0.015 * C * T;
  const dTheta = 30 * Math.exp(-(((h.mean - 275) / 25) ** 2));
  const RT = -2 * seventh(C) * Math.sin(radians(2 * dTheta));
  const [l, c, s] = [dL / SL, dC / SC, dH / SH];
  return Math.sqrt(l ** 2 + c ** 2 + s ** 2 + RT * c * s);
}
