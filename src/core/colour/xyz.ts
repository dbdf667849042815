import { inverse, type Matrix3, type Triple, times, transposed } from "./matrix3.ts";
import type { LinearRgb } from "./srgb.ts";

/** Tristimulus values of the CIE 1931 observer; Y is 100 for the white. */
export interface Xyz {
  readonly X: number;
  readonly Y: number;
  readonly Z: number;
}

/** Daylight at 6500 K seen by the CIE 1931 observer. Source: ASTM E308, table 5 (D65, 2°). */
export const whiteD65: Xyz = { X: 95.047, Y: 100, Z: 108.883 };

/** Chromaticities of the screen's red, green and blue. Source: IEC 61966-2-1:1999, table 1 (those of ITU-R BT.709). */
const primaries = [
  { x: 0.64, y: 0.33 },
  { x: 0.3, y: 0.6 },
  { x: 0.15, y: 0.06 },
] as const;

/** Each primary as bright as it takes for the three together to be the white. */
function xyzOfPrimaries(): Matrix3 {
  const column = ({ x, y }: { x: number; y: number }): Triple => [x / y, 1, (1 - x - y) / y];
  const columns: Matrix3 = [column(primaries[0]), column(primaries[1]), column(primaries[2])];
  const luminance = times(inverse(transposed(columns)), [whiteD65.X, whiteD65.Y, whiteD65.Z]);
  const scaled = ([x, y, z]: Triple, by: number): Triple => [x * by, y * by, z * by];
  return transposed([
    scaled(columns[0], luminance[0]),
    scaled(columns[1], luminance[1]),
    scaled(columns[2], luminance[2]),
  ]);
}

const toXyz = xyzOfPrimaries();
const fromXyz = inverse(toXyz);

/**
 * Tristimulus values of a screen's light.
 *
 *     (X, Y, Z) = M·(R, G, B), M from the primaries' chromaticities and the white
 *
 * M is worked out from the chromaticities in full: the standard prints it to four decimals, which is not
 * enough to get the white back to 1e-3.
 *
 * @param light  red, green, blue light, 0–1 on a screen
 * @returns      X, Y, Z with Y = 100 for the white
 *
 * Valid:    any finite light
 * Accuracy: within 1e-5 of matrices printed to seven digits
 * Source:   IEC 61966-2-1:1999, clause 5.2; the white from ASTM E308
 * @example
 * xyzFromLinear([1, 0, 0]) // => { X: 41.2456, Y: 21.2673, Z: 1.9334 }
 */
export function xyzFromLinear(light: LinearRgb): Xyz {
  const [X, Y, Z] = times(toXyz, light);
  return { X, Y, Z };
}

/**
 * A screen's light from tristimulus values: `xyzFromLinear` backwards.
 *
 *     (R, G, B) = M⁻¹·(X, Y, Z)
 *
 * @param xyz  with Y = 100 for the white
 * @returns    red, green, blue light; a screen can show it when each is 0–1
 *
 * Valid:    any finite values
 * Accuracy: round trip to 1e-12
 * Source:   IEC 61966-2-1:1999, clause 5.3
 * @example
 * linearFromXyz({ X: 95.047, Y: 100, Z: 108.883 }) // => [1.0, 1.0, 1.0]
 */
export const linearFromXyz = ({ X, Y, Z }: Xyz): LinearRgb => times(fromXyz, [X, Y, Z]);
