import { linearFromSrgb, type Srgb } from "./srgb.ts";

/**
 * Relative luminance of a screen colour.
 *
 *     L = 0.2126·R + 0.7152·G + 0.0722·B, in light
 *
 * @param colour  channels 0–1
 * @returns       0 (black) to 1 (white), scalar
 *
 * Valid:    channels 0–1
 * Accuracy: exact by definition; the guidelines' older threshold 0.03928 changes no eight-bit colour
 * Source:   WCAG 2.2, definition of relative luminance
 * @example
 * relativeLuminance({ red: 0, green: 1, blue: 0 }) // => 0.7152
 */
export function relativeLuminance(colour: Srgb): number {
  const [r, g, b] = linearFromSrgb(colour);
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/**
 * Contrast ratio of two screen colours, whichever is the text.
 *
 *     (L1 + 0.05)/(L2 + 0.05), L1 the lighter
 *
 * @param one    channels 0–1
 * @param other  channels 0–1
 * @returns      1 (the same) to 21 (black and white), scalar
 *
 * Valid:    channels 0–1
 * Accuracy: exact by definition
 * Source:   WCAG 2.2, definition of contrast ratio
 * @example
 * contrastRatio({ red: 0, green: 0, blue: 0 }, { red: 1, green: 1, blue: 1 }) // => 21.0
 */
export function contrastRatio(one: Srgb, other: Srgb): number {
  const [a, b] = [relativeLuminance(one), relativeLuminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}
