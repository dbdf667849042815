import { whiteD65, type Xyz } from "./xyz.ts";

/** CIELAB under D65. */
export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

const epsilon = 216 / 24389;
const kappa = 24389 / 27;

const f = (t: number): number => (t > epsilon ? Math.cbrt(t) : (kappa * t + 16) / 116);
const fBackwards = (v: number): number => (v ** 3 > epsilon ? v ** 3 : (116 * v - 16) / kappa);

/**
 * CIELAB from tristimulus values.
 *
 *     L = 116·f(Y/Yn) − 16,  a = 500·(f(X/Xn) − f(Y/Yn)),  b = 200·(f(Y/Yn) − f(Z/Zn))
 *     f(t) = t^(1/3) above 216/24389, else (24389/27·t + 16)/116
 *
 * @param xyz    Y = 100 for the white
 * @param white  the white of the light; D65 unless told
 * @returns      L 0 (black) to 100 (white); a, b 0 for grey
 *
 * Valid:    finite values, white above 0
 * Accuracy: exact by definition, with the fractions of the threshold and not their rounded decimals
 * Source:   CIE 15:2004, clause 8.2.1 (ISO/CIE 11664-4)
 * @example
 * labFromXyz({ X: 41.24564, Y: 21.26729, Z: 1.93339 }) // => { L: 53.24, a: 80.09, b: 67.20 }
 */
export function labFromXyz({ X, Y, Z }: Xyz, white: Xyz = whiteD65): Lab {
  const [fx, fy, fz] = [f(X / white.X), f(Y / white.Y), f(Z / white.Z)];
  return { L: 116 * fy - 16, a: 500 * (fx - fy), b: 200 * (fy - fz) };
}

/**
 * Tristimulus values from CIELAB: `labFromXyz` backwards.
 *
 *     Y = Yn·g(fy), fy = (L + 16)/116;  X = Xn·g(fy + a/500);  Z = Zn·g(fy − b/200);  g undoes f
 *
 * @param lab    L, a, b
 * @param white  the white of the light; D65 unless told
 * @returns      X, Y, Z with Y = 100 for the white
 *
 * Valid:    finite values, white above 0
 * Accuracy: round trip to 1e-12 relative
 * Source:   CIE 15:2004, clause 8.2.1
 * @example
 * xyzFromLab({ L: 100, a: 0, b: 0 }) // => { X: 95.047, Y: 100.0, Z: 108.883 }
 */
export function xyzFromLab({ L, a, b }: Lab, white: Xyz = whiteD65): Xyz {
  const fy = (L + 16) / 116;
  return {
    X: white.X * fBackwards(fy + a / 500),
    Y: white.Y * fBackwards(fy),
    Z: white.Z * fBackwards(fy - b / 200),
  };
}
