import type { Calculation } from "./calculation.ts";
import { colourDifference } from "./colour.ts";
import { layoutCalculation } from "./design.ts";

/** Every registered calculation, in the order in which the reference page lists them. */
export const calculations: readonly Calculation[] = [colourDifference, layoutCalculation];

export const calculationNamed = (name: string): Calculation | undefined =>
  calculations.find((c) => c.name === name);
