import { DomainError } from "../../../core/domain-error.ts";
import { type Parts, parseParts } from "../../../core/quantity/parse-parts.ts";
import { parseQuantity } from "../../../core/quantity/parse-quantity.ts";
import { readingInWords, sayItAs } from "../../../core/quantity/problem-sentence.ts";
import type { Reading } from "../../../core/quantity/reading.ts";
import { cutsOfParts } from "../../../core/solution/cut-of-parts.ts";
import { densityOfSolvent } from "../../../core/solution/density.ts";
import type { MixGiven, Recipe } from "../../../core/solution/mix.ts";
import { mixesAsRead, type ReadAmount } from "../../../core/solution/mix-as-read.ts";
import { cubicMetre, cut, kilogram, poundsPerUsGallonFromCut } from "../../../core/units.ts";
import { expected, type MixField, type Typed } from "./mix-fields.ts";

/** One meaning of what was typed, with the jar that it makes. */
export interface Meant {
  /** In words, and what to type to mean this and no other. */
  readonly says: string;
  readonly typed: string;
  readonly by: "volume" | "mass" | "parts";
  readonly cutLbPerGal: number;
  /** Alcohol in it; null for parts, which say no amount. */
  readonly solventMl: number | null;
  /** The cut when the amount is then measured out by the other meaning. */
  readonly ifOtherLbPerGal: number | null;
}

/** Words that mean two amounts: where they were typed, and both meanings side by side. */
export interface Trap {
  readonly field: MixField;
  readonly typed: string;
  readonly kind: "ounce" | "pint" | "flakes" | "parts";
  readonly meant: readonly Meant[];
}

const amountFields = { flakes: "resin", alcohol: "solvent", makes: "solution" } as const;

/** A US and an imperial fluid ounce lie within a twentieth: no trap. Pints, cups and gallons do not. */
const tellsApart = (one: Reading, other: Reading | undefined): other is Reading =>
  other !== undefined && Math.abs(other.si / one.si - 1) > 0.1;

/** What a text in a field can mean, when that is more than one thing. */
function readingsOf(field: MixField, text: string): readonly Reading[] {
  const read = parseQuantity(text, expected[field]);
  if (read.ok) return tellsApart(read.value, read.value.instead) ? [read.value, read.value.instead] : [];
  return read.error.readings !== undefined && ["ambiguous", "flakes-by-volume"].includes(read.error.code)
    ? read.error.readings
    : [];
}

/** The one other amount that a reading is set beside: flakes for an alcohol, else the cut, else what there is. */
function besides(field: MixField, typed: Typed, recipe: Recipe): MixGiven | undefined {
  const value = (of: MixField): Reading | undefined => {
    const read = parseQuantity(typed[of], expected[of]);
    return of !== field && read.ok && read.value.si > 0 ? read.value : undefined;
  };
  const [flakes, cutRead, alcohol, makes] = [value("flakes"), value("cut"), value("alcohol"), value("makes")];
  if (flakes !== undefined) return { resin: kilogram(flakes.si) };
  if (cutRead !== undefined) return { cut: cut(cutRead.si) };
  if (alcohol !== undefined) {
    const density = densityOfSolvent(recipe.solvent, recipe.temperature).value;
    return { solvent: kilogram(alcohol.dimension === "mass" ? alcohol.si : alcohol.si * density) };
  }
  return makes === undefined ? undefined : { solutionVolume: cubicMetre(makes.si) };
}

function amountTrap(field: keyof typeof amountFields, typed: Typed, recipe: Recipe): Trap | undefined {
  const readings = readingsOf(field, typed[field]);
  const given = readings.length < 2 ? undefined : besides(field, typed, recipe);
  if (given === undefined) return undefined;
  const of: ReadAmount = amountFields[field];
  const density = densityOfSolvent(recipe.solvent, recipe.temperature).value;
  const dimensions = new Set(readings.map((one) => one.dimension));
  return {
    field,
    typed: typed[field].trim(),
    kind: field === "flakes" ? "flakes" : dimensions.size > 1 ? "ounce" : "pint",
    meant: mixesAsRead(recipe, given, of, readings).map(({ reading, mixed, cutIfOther }) => ({
      says: readingInWords(reading),
      typed: sayItAs(reading),
      by: reading.dimension === "mass" ? "mass" : "volume",
      cutLbPerGal: poundsPerUsGallonFromCut(mixed.cut),
      solventMl: (mixed.solvent / density) * 1e6,
      ifOtherLbPerGal: poundsPerUsGallonFromCut(cutIfOther),
    })),
  };
}

/** Parts in one field, `1:4`, or a part beside each of flakes and alcohol. */
function partsTyped(
  typed: Typed,
): { readonly field: MixField; readonly text: string; readonly parts: Parts } | undefined {
  for (const field of ["cut", "flakes", "alcohol"] as const) {
    const parts = parseParts(typed[field]);
    if (parts !== undefined) return { field, text: typed[field].trim(), parts };
  }
  const both = `${typed.flakes} to ${typed.alcohol}`;
  const parts = /part/i.test(typed.flakes) && /part/i.test(typed.alcohol) ? parseParts(both) : undefined;
  return parts === undefined ? undefined : { field: "flakes", text: both, parts };
}

function partsTrap(typed: Typed, recipe: Recipe): Trap | undefined {
  const found = partsTyped(typed);
  if (found === undefined) return undefined;
  return {
    field: found.field,
    typed: found.text,
    kind: "parts",
    meant: cutsOfParts(found.parts, recipe.resin, recipe.solvent).map((one) => {
      const pounds = poundsPerUsGallonFromCut(one.cut);
      return {
        says: one.by,
        typed: `${Number(pounds.toPrecision(one.standardUncertainty > 0 ? 2 : 4))} lb`,
        by: "parts",
        cutLbPerGal: pounds,
        solventMl: null,
        ifOtherLbPerGal: null,
      };
    }),
  };
}

/** The first of what was typed that can be read in two ways, with the cut that each makes. */
export function trapIn(typed: Typed, recipe: Recipe): Trap | undefined {
  try {
    return (
      partsTrap(typed, recipe) ??
      amountTrap("alcohol", typed, recipe) ??
      amountTrap("flakes", typed, recipe) ??
      amountTrap("makes", typed, recipe)
    );
  } catch (error) {
    if (error instanceof DomainError) return undefined; // amounts that make no jar are refused beside their fields
    throw error;
  }
}
