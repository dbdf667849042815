import { DomainError, inRange } from "../domain-error.ts";
import type { Triple } from "./matrix3.ts";

/** Red, green and blue as encoded for a screen, each 0–1. */
export interface Srgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}
/** Red, green and blue in proportion to light; inside the screen's range each is 0–1. */
export type LinearRgb = Triple;

const channel = { min: 0, max: 1 } as const;

/**
 * A screen colour from its channels.
 *
 * @param red    encoded, 0–1, scalar; green and blue likewise
 * @returns      the colour
 * @throws DomainError for a channel outside 0–1, and for NaN
 */
export const srgb = (red: number, green: number, blue: number): Srgb => ({
  red: inRange("red", red, channel),
  green: inRange("green", green, channel),
  blue: inRange("blue", blue, channel),
});

/**
 * A screen colour from the six digits after a number sign.
 *
 * @param hex    `#RRGGBB`
 * @returns      the colour
 * @throws DomainError for any other text
 * @example
 * srgbFromHex("#FF0080") // => { red: 1, green: 0, blue: 0.502 }
 */
export function srgbFromHex(hex: string): Srgb {
  if (!/^#[0-9a-f]{6}$/i.test(hex))
    throw new DomainError({
      code: "wrong-type",
      field: "colour",
      value: hex,
      because: "A colour is # and six hexadecimal digits.",
    });
  const at = (i: number) => Number.parseInt(hex.slice(i, i + 2), 16) / 255;
  return srgb(at(1), at(3), at(5));
}

/**
 * The six digits nearest to a screen colour.
 *
 * @param colour  channels 0–1
 * @returns       `#RRGGBB`, capitals
 * @example
 * hexFromSrgb({ red: 1, green: 0, blue: 0.5 }) // => "#FF0080"
 */
export const hexFromSrgb = ({ red, green, blue }: Srgb): string =>
  `#${[red, green, blue]
    .map((c) =>
      Math.round(c * 255)
        .toString(16)
        .padStart(2, "0"),
    )
    .join("")}`.toUpperCase();

/**
 * Light in proportion, from a screen colour.
 *
 *     linear = c/12.92                      c ≤ 0.04045
 *     linear = ((c + 0.055)/1.055)^2.4      above
 *
 * @param colour  channels 0–1
 * @returns       red, green, blue light, 0–1
 *
 * Valid:    channels 0–1
 * Accuracy: exact by definition
 * Source:   IEC 61966-2-1:1999, clause 5.2
 * @example
 * linearFromSrgb({ red: 0.5, green: 1, blue: 0 }) // => [0.21404, 1.0, 0.0]
 */
export const linearFromSrgb = ({ red, green, blue }: Srgb): LinearRgb => [
  linear(red),
  linear(green),
  linear(blue),
];

const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const encoded = (v: number): number => (v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055);

/** Less than the thousandth part of an eight-bit step: what arithmetic leaves over is not a colour out of range. */
const leftOver = 1e-6;

/**
 * Whether a screen can show this light.
 *
 * @param light  red, green, blue light
 * @returns      true when each is 0–1, but for what arithmetic leaves over (1e-6)
 */
export const isInGamut = (light: LinearRgb): boolean =>
  light.every((v) => v >= -leftOver && v <= 1 + leftOver);

/**
 * A screen colour from light in proportion: `linearFromSrgb` backwards.
 *
 *     c = 12.92·linear                      linear ≤ 0.0031308
 *     c = 1.055·linear^(1/2.4) − 0.055      above
 *
 * @param light  red, green, blue light, 0–1
 * @returns      channels 0–1
 * @throws DomainError for light that a screen cannot show, and for NaN: see `isInGamut`
 *
 * Valid:    0–1
 * Accuracy: exact by definition; the two thresholds of the standard leave a step of 3e-8
 * Source:   IEC 61966-2-1:1999, clause 5.3
 * @example
 * srgbFromLinear([0.21404, 1, 0]) // => { red: 0.5, green: 1, blue: 0 }
 */
export function srgbFromLinear(light: LinearRgb): Srgb {
  const shown = (field: string, v: number) => {
    const c = inRange(field, v, { min: -leftOver, max: 1 + leftOver });
    return encoded(Math.min(1, Math.max(0, c)));
  };
  return { red: shown("red", light[0]), green: shown("green", light[1]), blue: shown("blue", light[2]) };
}
