import { type Component, components } from "../solution/component.ts";
import type { Liquid } from "../solution/composition.ts";
import { usualPartialDensity } from "../solution/resin.ts";
import { cutOfSolution, type Solution, volumeOfLiquid, volumeOfSolution } from "../solution/solution.ts";
import { strengthAt20C } from "../solution/strength.ts";
import {
  type CubicMetre,
  type Cut,
  cubicMetre,
  kilogram,
  type MassFraction,
  massFraction,
} from "../units.ts";

/** What a jar holds, each part by itself. The first three are solids: they count as resin until they are filtered out. */
export const solids = ["resin", "wax", "insoluble"] as const;
export type Part = (typeof solids)[number] | Component;

/** Kilograms of each part; one that is absent is not there. Changes of amounts take the same shape. */
export type Amounts = Readonly<Partial<Record<Part, number>>>;

const isSolid = (part: string): boolean => part === "resin" || part === "wax" || part === "insoluble";

/** Σ ki·ai, part by part. */
export function combined(...terms: readonly (readonly [factor: number, amounts: Amounts])[]): Amounts {
  const sum: Partial<Record<Part, number>> = {};
  for (const [factor, amounts] of terms)
    for (const name in amounts) {
      const part = name as Part; // all that amounts hold
      sum[part] = (sum[part] ?? 0) + factor * (amounts[part] ?? 0);
    }
  for (const name in sum) if (sum[name as Part] === 0) delete sum[name as Part];
  return sum;
}

/** Everything in it, kg. */
export const massOf = (amounts: Amounts): number => solidsOf(amounts) + liquidMassOf(amounts);
/** What would stay on the foil, kg. */
export const solidsOf = (amounts: Amounts): number =>
  solids.reduce((total, part) => total + (amounts[part] ?? 0), 0);

/** What would leave, kg. A jar holds a few of all that could leave, and is asked often. */
export function liquidMassOf(amounts: Amounts): number {
  let total = 0;
  for (const part in amounts) if (!isSolid(part)) total += amounts[part as Component] ?? 0;
  return total;
}

/** The same without the named solids, as after filtering. */
export const withoutSolids = (amounts: Amounts, left: readonly (typeof solids)[number][]): Amounts =>
  Object.fromEntries(Object.entries(amounts).filter(([part]) => !left.some((solid) => solid === part)));

/** The solids alone, or the liquids alone. */
export const only = (amounts: Amounts, which: "solids" | "liquids"): Amounts =>
  Object.fromEntries(Object.entries(amounts).filter(([part]) => isSolid(part) === (which === "solids")));

/** The liquid by itself: none where there is no mass of it. */
export function liquidOf(amounts: Amounts): Liquid {
  const mass = liquidMassOf(amounts);
  const composition: { [name in Component]?: MassFraction } = {};
  for (const part of components) {
    const kg = amounts[part] ?? 0;
    if (kg > 0) composition[part] = massFraction(Math.min(1, kg / mass));
  }
  return { mass: kilogram(mass), composition };
}

/** A liquid as amounts of its parts, kg. */
export const amountsOfLiquid = (liquid: Liquid): Amounts =>
  Object.fromEntries(Object.entries(liquid.composition).map(([part, share]) => [part, share * liquid.mass]));

/** The same as the solutions' formulas take it. */
export function solutionOf(amounts: Amounts): Solution {
  const resin = solidsOf(amounts);
  return {
    resin: kilogram(resin),
    wax: kilogram(amounts.wax ?? 0),
    insoluble: kilogram(amounts.insoluble ?? 0),
    resinVolume: cubicMetre(resin / usualPartialDensity),
    liquid: liquidOf(amounts),
  };
}

/** The solvent by itself at 20 °C, as it was poured before the resin. */
export const solventVolumeOf = (amounts: Amounts): CubicMetre =>
  liquidMassOf(amounts) > 0 ? volumeOfLiquid(liquidOf(amounts), strengthAt20C) : cubicMetre(0);

/** What stands in the jar at 20 °C. */
export const volumeOf = (amounts: Amounts): CubicMetre =>
  liquidMassOf(amounts) > 0
    ? volumeOfSolution(solutionOf(amounts), strengthAt20C)
    : cubicMetre(solidsOf(amounts) / usualPartialDensity);

/** Solids to the solvent's volume at 20 °C; nothing without solvent. */
export const cutOf = (amounts: Amounts): Cut | null =>
  liquidMassOf(amounts) > 0 ? cutOfSolution(solutionOf(amounts)) : null;
