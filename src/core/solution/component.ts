/** Every liquid that the calculations know by name; `unknown` is allowed on a data sheet and widens the uncertainty. */
export const components = [
  "ethanol",
  "isopropanol",
  "n-propanol",
  "methanol",
  "n-butanol",
  "isobutanol",
  "acetone",
  "mek",
  "mibk",
  "ethyl-acetate",
  "n-butyl-acetate",
  "n-heptane",
  "water",
  "unknown",
] as const;
export type Component = (typeof components)[number];
