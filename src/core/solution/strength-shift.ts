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
}

/**
 * How a solvent's composition moves when the strength on its label is off: main alcohol and water trade places, all
 * else stays. Undefined for a solvent without an alcohol that was measured with water.
 */
export function labelledStrength(composition: Composition): LabelledStrength | undefined {
  const alcohol = mainAlcohol(composition);
  if (alcohol === undefined) return undefined;
  const both = (composition[alcohol] ?? 0) + (composition.water ?? 0);
  const now = volumeFractionFromMassFraction(
    alcohol,
    massFraction(Math.min(1, (composition[alcohol] ?? 0) / both)),
    strengthAt20C,
  );
  const shifted = (by: number): Composition => {
    const strength = massFractionFromVolumeFraction(alcohol, volumeFraction(now + by), strengthAt20C);
    const { [alcohol]: _, water: __, ...rest } = composition as Record<string, MassFraction>;
    const parts: Record<string, MassFraction> = { ...rest };
    if (strength > 0) parts[alcohol] = massFraction(both * strength);
    if (strength < 1) parts.water = massFraction(both * (1 - strength));
    return parts;
  };
  return { volumeFraction: now, shifted };
}
