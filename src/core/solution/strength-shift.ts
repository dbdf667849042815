import { type MassFraction, massFraction, volumeFraction } from "../units.ts";
import { type TabulatedAlcohol, tabulatedAlcohols } from "./aqueous-density.ts";
import type { Composition } from "./composition.ts";
import { massFractionFromVolumeFraction, strengthAt20C, volumeFractionFromMassFraction } from "./strength.ts";

const mainAlcohol = (composition: Composition): TabulatedAlcohol | undefined =>
  tabulatedAlcohols
    .filter((a) => composition[a] !== undefined)
    .sort((a, b) => (composition[b] ?? 0) - (composition[a] ?? 0))[0];

/** A solvent whose label may be wrong: its main alcohol with the water, as the volume fraction that a label states. */
export interface LabelledStrength {
  readonly volumeFraction: number;
  /** The composition if the label were off by that much. */
  readonly shifted: (by: number) => Composition;
  /** Two compositions nearly that far below and above, with the labels that they truly have: for a slope. */
  readonly around: (by: number) => readonly [LabelledComposition, LabelledComposition];
}

export interface LabelledComposition {
  readonly composition: Composition;
  readonly volumeFraction: number;
}

/**
 * How a solvent's composition moves when the strength on its label is off: main alcohol and water trade places, all
 * else stays. Undefined for a solvent without an alcohol that was measured with water.
 */
export function labelledStrength(composition: Composition): LabelledStrength | undefined {
  const alcohol = mainAlcohol(composition);
  if (alcohol === undefined) return undefined;
  const both = (composition[alcohol] ?? 0) + (composition.water ?? 0);
  const strength = Math.min(1, (composition[alcohol] ?? 0) / both);
  const labelOf = (w: number): number =>
    volumeFractionFromMassFraction(alcohol, massFraction(w), strengthAt20C);
  const { [alcohol]: _, water: __, ...rest } = composition as Record<string, MassFraction>;
  const withStrength = (w: number): Composition => {
    const parts: Record<string, MassFraction> = { ...rest };
    if (w > 0) parts[alcohol] = massFraction(both * w);
    if (w < 1) parts.water = massFraction(both * (1 - w));
    return parts;
  };
  const labelled = (w: number): LabelledComposition => ({
    composition: withStrength(w),
    volumeFraction: labelOf(w),
  });
  const now = labelOf(strength);
  return {
    volumeFraction: now,
    shifted: (by) =>
      withStrength(massFractionFromVolumeFraction(alcohol, volumeFraction(now + by), strengthAt20C)),
    // a label's volume and mass fractions rise together, within a third of each other
    around: (by) => [labelled(Math.max(0, strength - by)), labelled(Math.min(1, strength + by))],
  };
}
