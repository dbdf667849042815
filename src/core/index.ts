/** The core as an outsider imports it: `import { calculate } from "lacbench/core"`. The one barrel of the project. */

export * from "./domain-error.ts";
export { type Random, randomFromSeed, randomIndex, randomNormal, shuffled } from "./random.ts";
export { calculationNamed, calculations } from "./registry/all.ts";
export { type Calculation, calculate } from "./registry/calculation.ts";
export type { Problem } from "./registry/problem.ts";
export type { Result } from "./result.ts";
export * from "./units.ts";
