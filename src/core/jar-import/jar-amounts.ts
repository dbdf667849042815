import { DomainError } from "../domain-error.ts";
import type { TypedQuantity } from "../notebook/kinds/parts.ts";
import { formatNumber } from "../quantity/format-quantity.ts";
import type { Reading } from "../quantity/reading.ts";
import { problemFromDomain } from "../registry/problem.ts";
import { fail, ok, type Result } from "../result.ts";
import type { Composition } from "../solution/composition.ts";
import { densityOfSolvent } from "../solution/density.ts";
import { type Mixed, type MixGiven, mixFrom } from "../solution/mix.ts";
import type { ResinBlend } from "../solution/resin.ts";
import { strengthAt20C } from "../solution/strength.ts";
import { cubicMetre, cut, kilogram, poundsPerUsGallonFromCut } from "../units.ts";
import type { JarRow } from "./read-row.ts";

/** The amounts of a jar: as they were written, or worked out from those that were. */
export interface JarAmounts {
  readonly resin: TypedQuantity;
  readonly solvent: TypedQuantity;
  readonly mixed: Mixed;
  /** What is written besides, and does not agree. */
  readonly disagrees: string | null;
}

const asTyped = ({ typed, unit, si }: Reading): TypedQuantity => ({ typed, unit, si });

/** Worked out, to six digits: the figure is not a reading. */
const workedOut = (si: number, unit: "g" | "ml", perSi: number): TypedQuantity => {
  const number = formatNumber(si * perSi, 6);
  return { typed: `${number} ${unit}`, unit, si: Number(number) / perSi, workedOut: true };
};

/** Two of the four, the surest first: what was weighed and poured, then the cut, then what it made. */
function twoOf({ amounts }: JarRow, density: number): MixGiven | undefined {
  const { cut: cutRead, makes } = amounts;
  const [resin, solvent] = [amounts["resin-amount"], amounts["solvent-amount"]];
  const given: (MixGiven | undefined)[] = [
    resin && { resin: kilogram(resin.si, "resinG") },
    solvent && { solvent: kilogram(solvent.dimension === "mass" ? solvent.si : solvent.si * density) },
    cutRead && { cut: cut(cutRead.si) },
    makes && { solutionVolume: cubicMetre(makes.si, "solutionMl") },
  ];
  const told = given.filter((one) => one !== undefined);
  return told.length < 2 ? undefined : { ...told[0], ...told[1] };
}

/** Further apart than a list's rounding: the ounce or the pint was another one, or the cut was only aimed at. */
const tellsOfMore = 0.1;

function disagreement(row: JarRow, mixed: Mixed): string | null {
  const { cut: written, makes } = row.amounts;
  const pounds = (x: number): string => `${poundsPerUsGallonFromCut(cut(x)).toFixed(2)} lb`;
  if (written !== undefined && Math.abs(written.si / mixed.cut - 1) > tellsOfMore)
    return `The amounts make a ${pounds(mixed.cut)} cut; ${pounds(written.si)} is written.`;
  if (makes !== undefined && Math.abs(makes.si / mixed.solutionVolume - 1) > tellsOfMore)
    return `The amounts make ${formatNumber(mixed.solutionVolume * 1e6)} ml; ${formatNumber(makes.si * 1e6)} ml is written.`;
  return null;
}

/**
 * The amounts of a jar from any two that its row has.
 *
 * @returns the amounts; or one sentence on why they cannot be worked out
 */
export function amountsOfRow(
  row: JarRow,
  resinBlend: ResinBlend,
  composition: Composition,
): Result<JarAmounts, string> {
  const density = densityOfSolvent(composition, strengthAt20C).value;
  const given = twoOf(row, density);
  if (given === undefined)
    return fail("Two of the resin, the alcohol, the cut and the volume say the rest; fewer are written.");
  try {
    const recipe = { resin: resinBlend, solvent: composition, temperature: strengthAt20C };
    const mixed = mixFrom(recipe, given);
    const [resin, solvent] = [row.amounts["resin-amount"], row.amounts["solvent-amount"]];
    return ok({
      resin: resin === undefined ? workedOut(mixed.resin, "g", 1e3) : asTyped(resin),
      solvent: solvent === undefined ? workedOut(mixed.solvent / density, "ml", 1e6) : asTyped(solvent),
      mixed,
      disagrees: disagreement(row, mixed),
    });
  } catch (error) {
    if (error instanceof DomainError) return fail(problemFromDomain(error.detail).message);
    throw error;
  }
}
