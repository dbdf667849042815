import { compositionOf } from "../../core/jar/makeup.ts";
import { type SolventInput, solvent } from "../../core/registry/solvent.ts";
import type { Component } from "../../core/solution/component.ts";
import type { Composition } from "../../core/solution/composition.ts";
import { emptyStrength, type SheetPart, type StrengthDraft } from "./draft.ts";

type Sheet = Extract<SolventInput, { parts: unknown }>;
type Liquid = Exclude<SolventInput, Sheet>;

/** How the strength was told, for the line on the shelf. */
export type Told =
  | { readonly how: "volume" | "mass" | "proof"; readonly figure: number }
  | { readonly how: "sheet" | "pure" };

const hundred = (share: number): number => Number((share * 100).toPrecision(12));

function toldOfLiquid(liquid: Liquid): Told {
  if (liquid.usProof !== undefined) return { how: "proof", figure: liquid.usProof };
  if (liquid.volumeFraction !== undefined) return { how: "volume", figure: hundred(liquid.volumeFraction) };
  if (liquid.massFraction !== undefined) return { how: "mass", figure: hundred(liquid.massFraction) };
  return { how: "pure" };
}

const read = (kept: unknown): SolventInput | undefined => {
  const found = solvent.safeParse(kept);
  return found.success ? (found.data as SolventInput) : undefined;
};

/** What the label said; undefined for a strength that cannot be read. */
export function toldStrength(kept: unknown): Told | undefined {
  const input = read(kept);
  if (input === undefined) return undefined;
  return "parts" in input ? { how: "sheet" } : toldOfLiquid(input);
}

/** Parts as typed on the lines that always stand there, with a line more for each other component. */
function onTheLines(shares: ReadonlyMap<Component, string>): readonly SheetPart[] {
  const named = emptyStrength.parts.map(({ component }) => component);
  const more = [...shares.keys()].filter((component) => !named.includes(component));
  return [...named, ...more].map((component) => ({ component, share: shares.get(component) ?? "" }));
}

/** By weight, to a ten-thousandth of a per cent; the largest share takes what rounding leaves. */
function byWeight(composition: Composition): StrengthDraft {
  const parts = (Object.entries(composition) as [Component, number][]).sort((a, b) => a[1] - b[1]);
  const shares = new Map<Component, string>();
  let rest = 100;
  parts.forEach(([component, share], i) => {
    const percent = i === parts.length - 1 ? Number(rest.toFixed(4)) : Number((share * 100).toFixed(4));
    rest -= percent;
    if (component !== "unknown") shares.set(component, String(percent)); // it is what is missing to 100
  });
  return { ...emptyStrength, how: "sheet", sheetBasis: "mass", parts: onTheLines(shares) };
}

/** Whether each line of a sheet is one pure component, named once, all by weight or all by volume. */
function isPlain({ parts }: Sheet): boolean {
  const once = new Set(parts.map(({ alcohol }) => alcohol)).size === parts.length;
  const basis = parts[0]?.volumeShare === undefined ? "massShare" : "volumeShare";
  return once && parts.every((part) => toldOfLiquid(part).how === "pure" && part[basis] !== undefined);
}

function asSheet(sheet: Sheet): StrengthDraft {
  const basis = sheet.parts[0]?.volumeShare === undefined ? "mass" : "volume";
  const shares = sheet.parts
    .filter(({ alcohol }) => alcohol !== "unknown")
    .map((part) => [part.alcohol, String(hundred((part.massShare ?? part.volumeShare) || 0))] as const);
  return { ...emptyStrength, how: "sheet", sheetBasis: basis, parts: onTheLines(new Map(shares)) };
}

/**
 * A strength as it was kept, as one would type it: the way back from `readStrength`. What the fields cannot say (a
 * strength at another temperature, a sheet of bottles that are not pure) is typed as what it comes to by weight.
 */
export function strengthDraftOf(kept: unknown): StrengthDraft {
  const input = read(kept);
  if (input === undefined) return emptyStrength;
  if ("parts" in input ? isPlain(input) : (input.atTemperatureC ?? 20) === 20) {
    if ("parts" in input) return asSheet(input);
    const told = toldOfLiquid(input);
    const component = input.alcohol;
    return "figure" in told
      ? { ...emptyStrength, component, strength: String(told.figure), basis: told.how }
      : { ...emptyStrength, component, strength: "100", basis: "mass" };
  }
  const made = compositionOf(kept);
  return "composition" in made ? byWeight(made.composition) : emptyStrength;
}
