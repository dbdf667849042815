import { type MassFraction, massFraction, volumeFraction } from "../units.ts";
import { aqueousDensity, type TabulatedAlcohol, tabulatedAlcohols } from "./aqueous-density.ts";
import type { Composition } from "./composition.ts";
import { massFractionFromVolumeFraction, strengthAt20C } from "./strength.ts";

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

const nearly = 0.05;

/**
 * The mass fraction w with label(w) = q, from one near it: steps along one slope. Undefined where that does not settle,
 * which far moves and the ends of the scale may do; they are solved by bracketing.
 */
function settled(label: (w: number) => number, q: number, from: number, slope: number): number | undefined {
  let w = from;
  for (let i = 0; i < 8; i++) {
    const off = label(w) - q;
    if (Math.abs(off) < 1e-13) return w;
    w -= off / slope;
    if (!(w > 0 && w < 1)) return undefined;
  }
  return undefined;
}

const slopeAt = (label: (w: number) => number, w: number): number => {
  const [low, high] = [Math.max(0, w - nearly / 10), Math.min(1, w + nearly / 10)];
  return (label(high) - label(low)) / (high - low);
};

/**
 * How a solvent's composition moves when the strength on its label is off: main alcohol and water trade places, all
 * else stays. Undefined for a solvent without an alcohol that was measured with water.
 */
export function labelledStrength(composition: Composition): LabelledStrength | undefined {
  const alcohol = mainAlcohol(composition);
  if (alcohol === undefined) return undefined;
  const both = (composition[alcohol] ?? 0) + (composition.water ?? 0);
  const strength = Math.min(1, (composition[alcohol] ?? 0) / both);
  const pure = aqueousDensity(alcohol, massFraction(1), strengthAt20C).value;
  const labelOf = (w: number): number =>
    w === 1 ? 1 : (w * aqueousDensity(alcohol, massFraction(w), strengthAt20C).value) / pure;
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
  let slope: number | undefined; // asked for by moves alone, and then many times
  return {
    volumeFraction: now,
    shifted: (by) => {
      const q = volumeFraction(now + by);
      slope ??= slopeAt(labelOf, strength);
      const near = Math.abs(by) < nearly ? settled(labelOf, q, strength + by / slope, slope) : undefined;
      return withStrength(near ?? massFractionFromVolumeFraction(alcohol, q, strengthAt20C));
    },
    // a label's volume and mass fractions rise together, within a third of each other
    around: (by) => [labelled(Math.max(0, strength - by)), labelled(Math.min(1, strength + by))],
  };
}
