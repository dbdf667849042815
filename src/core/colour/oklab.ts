import { inverse, type Matrix3, type Triple, times } from "./matrix3.ts";
import { isInGamut, type LinearRgb } from "./srgb.ts";
import { linearFromXyz, type Xyz, xyzFromLinear } from "./xyz.ts";

/** Lightness 0–1, chroma from 0 (grey), hue in degrees 0–360. */
export interface Oklch {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
}

/** From X, Y, Z with Y = 1 for the white to the cones' response, and from its cube root to L, a, b. Source: B. Ottosson, "A perceptual color space for image processing" (2020). */
const cones: Matrix3 = [
  [0.8189330101, 0.3618667424, -0.1288597137],
  [0.0329845436, 0.9293118715, 0.0361456387],
  [0.0482003018, 0.2643662691, 0.633851707],
];
const opponents: Matrix3 = [
  [0.2104542553, 0.793617785, -0.0040720468],
  [1.9779984951, -2.428592205, 0.4505937099],
  [0.0259040371, 0.7827717662, -0.808675766],
];
const fromCones = inverse(cones);
const fromOpponents = inverse(opponents);

const each = ([x, y, z]: Triple, of: (v: number) => number): Triple => [of(x), of(y), of(z)];

/**
 * OKLab from tristimulus values: lightness, green to red, blue to yellow, evenly spaced to the eye.
 *
 *     (L, a, b) = M2·∛(M1·(X, Y, Z)/100)
 *
 * @param xyz  Y = 100 for the white
 * @returns    L 0–1, a, b
 *
 * Valid:    finite values
 * Accuracy: within 5e-4 of the source's table, which prints three decimals
 * Source:   B. Ottosson, "A perceptual color space for image processing" (2020)
 * @example
 * oklabFromXyz({ X: 100, Y: 0, Z: 0 }) // => [0.450, 1.236, -0.019]
 */
export const oklabFromXyz = ({ X, Y, Z }: Xyz): Triple =>
  times(opponents, each(times(cones, [X / 100, Y / 100, Z / 100]), Math.cbrt));

/**
 * Tristimulus values from OKLab: `oklabFromXyz` backwards.
 *
 *     (X, Y, Z) = 100·M1⁻¹·(M2⁻¹·(L, a, b))³
 *
 * @param lab  L 0–1, a, b
 * @returns    X, Y, Z with Y = 100 for the white
 *
 * Valid:    finite values
 * Accuracy: round trip to 1e-9
 * Source:   as `oklabFromXyz`
 * @example
 * xyzFromOklab([0.5, 0, 0]).Y // => 12.5
 */
export function xyzFromOklab(lab: Triple): Xyz {
  const [X, Y, Z] = times(
    fromCones,
    each(times(fromOpponents, lab), (v) => v ** 3),
  );
  return { X: 100 * X, Y: 100 * Y, Z: 100 * Z };
}

/**
 * Lightness, chroma and hue of light.
 *
 *     C = √(a² + b²),  h = atan2(b, a), of OKLab
 *
 * @param light  red, green, blue light
 * @returns      lightness 0–1, chroma, hue in degrees 0–360
 *
 * Valid:    finite light
 * Accuracy: as `oklabFromXyz`
 * Source:   as `oklabFromXyz`
 * @example
 * oklchFromLinear([1, 0, 0]) // => { lightness: 0.628, chroma: 0.258, hue: 29.2 }
 */
export function oklchFromLinear(light: LinearRgb): Oklch {
  const [lightness, a, b] = oklabFromXyz(xyzFromLinear(light));
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  return { lightness, chroma: Math.hypot(a, b), hue: (degrees + 360) % 360 };
}

/**
 * Light from lightness, chroma and hue: `oklchFromLinear` backwards. A screen may not be able to show it.
 *
 * @param colour  lightness 0–1, chroma, hue in degrees
 * @returns       red, green, blue light
 */
export function linearFromOklch({ lightness, chroma, hue }: Oklch): LinearRgb {
  const h = (hue * Math.PI) / 180;
  return linearFromXyz(xyzFromOklab([lightness, chroma * Math.cos(h), chroma * Math.sin(h)]));
}

/**
 * The light nearest in chroma that a screen can show, at the same lightness and hue.
 *
 * @param colour  lightness 0–1, chroma, hue in degrees
 * @returns       red, green, blue light, each 0–1
 * @example
 * isInGamut(linearInGamut({ lightness: 0.5, chroma: 0.4, hue: 70 })) // => true
 */
export function linearInGamut(colour: Oklch): LinearRgb {
  const asked = linearFromOklch(colour);
  if (isInGamut(asked)) return asked;
  let [low, high] = [0, colour.chroma];
  while (high - low > 1e-5) {
    const chroma = (low + high) / 2;
    if (isInGamut(linearFromOklch({ ...colour, chroma }))) low = chroma;
    else high = chroma;
  }
  return linearFromOklch({ ...colour, chroma: low });
}
