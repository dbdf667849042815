import { z } from "zod";

/** From a thousandth to ten tonnes or cubic metres: a slip of unit or sign lies outside, a shop does not. */
export const amountG = z.number().min(0.001).max(1e7);
export const amountMl = z.number().min(0.001).max(1e7);
/** Pounds per US gallon of solvent. At the upper end four parts in five of the jar would be resin. */
export const cutLbPerGal = z.number().min(0.001).max(40);

export const contributions = z.array(z.object({ source: z.string(), share: z.number() }));
