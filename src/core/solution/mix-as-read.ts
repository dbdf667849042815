import type { Reading } from "../quantity/reading.ts";
import { type Cut, cubicMetre, kilogram } from "../units.ts";
import { densityOfSolvent } from "./density.ts";
import { type Mixed, type MixGiven, mixFrom, type Recipe } from "./mix.ts";

/** An amount of a mix that can be read in more than one way. */
export type ReadAmount = "resin" | "solvent" | "solution";

/** A mix as one reading has it, beside what comes of it when another was meant. */
export interface MixAsRead {
  readonly reading: Reading;
  readonly mixed: Mixed;
  /** The cut when all is reckoned by this reading, and the amount is then measured out by the other. */
  readonly cutIfOther: Cut;
}

/** An amount as a reading has it: by weight, or by volume at the recipe's temperature. */
export function amountAsRead(recipe: Recipe, of: ReadAmount, reading: Reading): MixGiven {
  if (of === "resin") return { resin: kilogram(reading.si, "resinG") };
  if (of === "solution") return { solutionVolume: cubicMetre(reading.si, "solutionMl") };
  const density = densityOfSolvent(recipe.solvent, recipe.temperature).value;
  return { solvent: kilogram(reading.dimension === "mass" ? reading.si : reading.si * density, "solventG") };
}

/** What is in the jar when the plan's other amounts meet this amount. A finished volume scales all of a given cut. */
function cutWith(recipe: Recipe, given: MixGiven, plan: Mixed, of: ReadAmount, amount: MixGiven): Cut {
  if (of === "resin") return mixFrom(recipe, { solvent: plan.solvent, ...amount }).cut;
  if (of === "solvent") return mixFrom(recipe, { resin: plan.resin, ...amount }).cut;
  return given.cut ?? mixFrom(recipe, { ...given, ...amount }).cut;
}

/**
 * One mix under each reading of an amount that can be read in more than one way: ounces of weight or of volume, a US
 * or an imperial pint, flakes by the cup.
 *
 * @param recipe    resin, solvent, and the temperature of volumes
 * @param given     the one other amount, or the cut
 * @param of        the amount that was typed
 * @param readings  two or more; masses and volumes in SI
 * @returns         each reading's mix, and the cut when the other one was meant (of the second and later: the first)
 * @throws DomainError as `mixFrom`
 *
 * Valid:    as `mixFrom`
 * Accuracy: as `mixFrom`
 * Source:   conservation of mass
 */
export function mixesAsRead(
  recipe: Recipe,
  given: MixGiven,
  of: ReadAmount,
  readings: readonly Reading[],
): readonly MixAsRead[] {
  const amounts = readings.map((reading) => amountAsRead(recipe, of, reading));
  return readings.map((reading, i) => {
    const mixed = mixFrom(recipe, { ...given, ...amounts[i] });
    const other = amounts[i === 0 ? 1 : 0] ?? {};
    return { reading, mixed, cutIfOther: cutWith(recipe, given, mixed, of, other) };
  });
}
