import type { Calculation } from "./calculation.ts";

/** Every registered calculation, in the order in which the reference page lists them. */
export const calculations: readonly Calculation[] = [];

export const calculationNamed = (name: string): Calculation | undefined =>
  calculations.find((c) => c.name === name);
