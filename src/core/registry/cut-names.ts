import { z } from "zod";
import { DomainError } from "../domain-error.ts";
import {
  type Cut,
  cut,
  cutFromPoundsPerUsGallon,
  imperialGallonM3,
  poundKg,
  poundsPerImperialGallonFromCut,
  poundsPerUsGallonFromCut,
  usGallonM3,
} from "../units.ts";
import { cutLbPerGal } from "./amount.ts";

/** A cut under the three names it goes by; US gallon where nothing is said. */
export const cutNames = {
  cutLbPerGal: cutLbPerGal.optional(),
  cutLbPerImperialGal: cutLbPerGal.optional(),
  gramsPerLitreSolvent: z.number().min(0.1).max(4800).optional(),
};

export interface CutInput {
  readonly cutLbPerGal?: number | undefined;
  readonly cutLbPerImperialGal?: number | undefined;
  readonly gramsPerLitreSolvent?: number | undefined;
}

const fromName: Readonly<Record<keyof CutInput, (x: number, field: string) => Cut>> = {
  cutLbPerGal: cutFromPoundsPerUsGallon,
  cutLbPerImperialGal: (x, field) => cut((x * poundKg) / imperialGallonM3, field),
  gramsPerLitreSolvent: cut,
};

/** The cut, by whichever one of its names was given; undefined for none. */
export function cutFromInput(input: CutInput, field = ""): Cut | undefined {
  const given = (Object.keys(fromName) as (keyof CutInput)[]).filter((name) => input[name] !== undefined);
  const [name, other] = given;
  if (name === undefined) return undefined;
  if (other !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: field + other,
      value: input[other],
      because: `${field}${name} says the cut already; give one of them.`,
    });
  return fromName[name](input[name] as number, field + name);
}

/** Any mass per volume in kg/m³, an uncertainty of a cut for one, in pounds per US gallon. */
export const poundsPerUsGallon = (x: number): number => (x * usGallonM3) / poundKg;

export const cutInAllNames = (x: Cut) => ({
  cutLbPerGal: poundsPerUsGallonFromCut(x),
  cutLbPerImperialGal: poundsPerImperialGallonFromCut(x),
  gramsPerLitreSolvent: x as number,
});

export const allCutNames = {
  cutLbPerGal: z.number(),
  cutLbPerImperialGal: z.number(),
  gramsPerLitreSolvent: z.number(),
};
