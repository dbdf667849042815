import { DomainError } from "../../domain-error.ts";
import { type Random, shuffled } from "../../random.ts";

/** Without I, O, 0 and 1, which are taken for one another on a sticky board. */
const letters = [..."ABCDEFGHJKLMNPQRSTUVWXYZ"];
const figures = [..."23456789"];
export const allCodes: readonly string[] = letters.flatMap((l) => figures.map((f) => l + f));

/**
 * Different blind codes by lot, one letter and one figure each: they carry nothing about place or treatment.
 *
 * @param count   how many, scalar
 * @returns       codes, `count`
 * @throws DomainError when there are more patches than codes
 *
 * Valid:    0–192
 * Source:   Lacbench's own convention; drawn as in `shuffled`
 */
export function drawCodes(count: number, random: Random): readonly string[] {
  if (count > allCodes.length)
    throw new DomainError({
      code: "out-of-range",
      field: "boards",
      value: count,
      limits: { max: allCodes.length },
      because: `There are only ${allCodes.length} codes of one letter and one figure for ${count} patches.`,
    });
  return shuffled(allCodes, random).slice(0, count);
}
