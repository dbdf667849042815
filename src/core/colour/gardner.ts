import { inRange } from "../domain-error.ts";

/** A point of the CIE 1931 diagram. */
export interface Chromaticity {
  readonly x: number;
  readonly y: number;
}

/** Glass standards 1 to 18 under CIE C, 2°. Source: ASTM D1544-04, table 1. */
export const gardnerStandards = [
  { gardner: 1, x: 0.3177, y: 0.3303 },
  { gardner: 2, x: 0.3233, y: 0.3352 },
  { gardner: 3, x: 0.3329, y: 0.3452 },
  { gardner: 4, x: 0.3437, y: 0.3644 },
  { gardner: 5, x: 0.3558, y: 0.384 },
  { gardner: 6, x: 0.3767, y: 0.4061 },
  { gardner: 7, x: 0.4044, y: 0.4352 },
  { gardner: 8, x: 0.4207, y: 0.4498 },
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a chromaticity, not a logarithm
  { gardner: 9, x: 0.4343, y: 0.464 },
  { gardner: 10, x: 0.4503, y: 0.476 },
  { gardner: 11, x: 0.4842, y: 0.4818 },
  { gardner: 12, x: 0.5077, y: 0.4638 },
  { gardner: 13, x: 0.5392, y: 0.4458 },
  { gardner: 14, x: 0.5646, y: 0.427 },
  { gardner: 15, x: 0.5857, y: 0.4089 },
  { gardner: 16, x: 0.6047, y: 0.3921 },
  { gardner: 17, x: 0.629, y: 0.3701 },
  { gardner: 18, x: 0.6477, y: 0.3521 },
] as const satisfies readonly (Chromaticity & { readonly gardner: number })[];

export interface GardnerReading {
  /** Decimal number, 1–18. */
  readonly gardner: number;
  /** How far the colour lies from the line through the standards, in x and y: far from it the number says little. */
  readonly distance: number;
  /** True where the colour is paler than standard 1 or darker than 18, and the number is only that end. */
  readonly beyondTheStandards: boolean;
}

/**
 * Gardner colour number of a clear liquid, between the glass standards.
 *
 *     the nearest point of the line through the standards, in parts of the step it falls on
 *
 * @param colour  chromaticity x, y under CIE C, 2°, of 10 mm of liquid
 * @returns       decimal number, distance from the line, and whether it is only an end of the scale
 * @throws DomainError for x or y outside 0–1, and for NaN
 *
 * Valid:    clear yellow to brown liquids near the line; hazy ones have no Gardner number
 * Accuracy: the projection to 1e-6; glass standards themselves are good to about 0.2
 * Source:   standards ASTM D1544-04, table 1; projection after ASTM D6166
 * @example
 * gardnerNumber({ x: 0.366, y: 0.395 }) // => { gardner: 5.493, distance: 0.000147 }
 */
export function gardnerNumber(colour: Chromaticity): GardnerReading {
  const unit = { min: 0, max: 1 };
  const at = { x: inRange("x", colour.x, unit), y: inRange("y", colour.y, unit) };
  const steps = gardnerStandards.slice(1).map((to, i) => onStep(at, gardnerStandards[i] ?? to, to));
  const nearest = steps.reduce((best, step) => (step.distance < best.distance ? step : best));
  const first = steps[0] === nearest && nearest.along < 0;
  const last = steps.at(-1) === nearest && nearest.along > 1;
  return { gardner: nearest.gardner, distance: nearest.distance, beyondTheStandards: first || last };
}

type Standard = (typeof gardnerStandards)[number];

function onStep(at: Chromaticity, from: Standard, to: Standard) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = ((at.x - from.x) * dx + (at.y - from.y) * dy) / (dx ** 2 + dy ** 2);
  const part = Math.min(1, Math.max(0, along));
  const distance = Math.hypot(at.x - from.x - part * dx, at.y - from.y - part * dy);
  return { along, gardner: from.gardner + part, distance };
}
