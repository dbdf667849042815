import { inverse, type Matrix3, type Triple, times } from "./matrix3.ts";
import { isInGamut, type LinearRgb } from "./srgb.ts";

/** Lightness 0–1, chroma from 0 (grey), hue in degrees 0–360. */
export interface Oklch {
  readonly lightness: number;
  readonly chroma: number;
  readonly hue: number;
}

/** From red, green, blue light to the cones' response, and from its cube root to L, a, b. Source: B. Ottosson, "A perceptual color space for image processing" (2020), its matrices for sRGB of 2021. */
const cones: Matrix3 = [
  [0.4122214708, 0.5363325363, 0.0514459929],
  [0.2119034982, 0.6806995451, 0.1073969566],
  [0.0883024619, 0.2817188376, 0.6299787005],
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
 * OKLab of light: lightness, green to red, blue to yellow, evenly spaced to the eye.
 *
 *     (L, a, b) = M2·∛(M1·(R, G, B))
 *
 * @param light  red, green, blue light
 * @returns      L 0–1, a, b
 *
 * Valid:    finite light
 * Accuracy: within 1e-3 of the source's table of X, Y, Z, which prints three decimals and has a slightly other white
 * Source:   B. Ottosson, "A perceptual color space for image processing" (2020)
 * @example
 * oklabFromLinear([1, 0, 0]) // => [0.628, 0.225, 0.126]
 */
export const oklabFromLinear = (light: LinearRgb): Triple =>
  times(opponents, each(times(cones, light), Math.cbrt));

/**
 * Light from OKLab: `oklabFromLinear` backwards. A screen may not be able to show it.
 *
 *     (R, G, B) = M1⁻¹·(M2⁻¹·(L, a, b))³
 *
 * @param lab  L 0–1, a, b
 * @returns    red, green, blue light
 *
 * Valid:    finite values
 * Accuracy: round trip to 1e-9
 * Source:   as `oklabFromLinear`
 * @example
 * linearFromOklab([0.5, 0, 0]) // => [0.125, 0.125, 0.125]
 */
export const linearFromOklab = (lab: Triple): LinearRgb =>
  times(
    fromCones,
    each(times(fromOpponents, lab), (v) => v ** 3),
  );

/**
 * Lightness, chroma and hue of light.
 *
 *     C = √(a² + b²),  h = atan2(b, a), of OKLab
 *
 * @param light  red, green, blue light
 * @returns      lightness 0–1, chroma, hue in degrees 0–360
 *
 * Valid:    finite light
 * Accuracy: as `oklabFromLinear`
 * Source:   as `oklabFromLinear`
 * @example
 * oklchFromLinear([1, 0, 0]) // => { lightness: 0.628, chroma: 0.258, hue: 29.2 }
 */
export function oklchFromLinear(light: LinearRgb): Oklch {
  const [lightness, a, b] = oklabFromLinear(light);
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
  return linearFromOklab([lightness, chroma * Math.cos(h), chroma * Math.sin(h)]);
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
