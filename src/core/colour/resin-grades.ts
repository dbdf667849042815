import { poundKg, usGallonM3, type VolumeFraction, volumeFraction } from "../units.ts";
import { linearFromSrgb, type Srgb, srgbFromHex } from "./srgb.ts";

/**
 * What a card behind a jar of clear alcohol looks like: a little under full white, as paper and glass are.
 * Invented, like the samples below.
 */
export const cardBehindJar: Srgb = srgbFromHex("#F8F8F6");

/** The width of the jar that is looked through [m]. */
export const jarPath = 0.07;

/** Absorption of red, green and blue light by dissolved resin: per metre of path, at a volume fraction of 1. */
export interface Absorption {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

/** As `mix` reckons: resin of 1205 kg/m³ beside the solvent that it was added to, volumes adding. */
function solidsOfCut(poundsPerUsGallon: number): VolumeFraction {
  const resin = (poundsPerUsGallon * poundKg) / usGallonM3 / 1205;
  return volumeFraction(resin / (1 + resin));
}

/** Beer–Lambert backwards: from how a jar of a known cut looks before the card. */
function absorptionFromSample(hex: string, poundsPerUsGallon: number): Absorption {
  const seen = linearFromSrgb(srgbFromHex(hex));
  const card = linearFromSrgb(cardBehindJar);
  const per = solidsOfCut(poundsPerUsGallon) * jarPath;
  const channel = (i: 0 | 1 | 2) => Math.max(0, -Math.log(seen[i] / card[i]) / per);
  return { red: channel(0), green: channel(1), blue: channel(2) };
}

/**
 * Resin grades from palest to darkest, each with a jar of it seen before a white card. The samples are invented for
 * drawing: lots of one name differ, and no measurement stands behind them. The order of the names is common practice.
 */
export const resinGrades = [
  { grade: "bleached", sample: "#F7F6EC", cutLbPerGal: 1 },
  { grade: "platina", sample: "#F7F3E0", cutLbPerGal: 1 },
  { grade: "blonde", sample: "#F4E3A6", cutLbPerGal: 2 },
  { grade: "lemon", sample: "#EFC752", cutLbPerGal: 2 },
  { grade: "amber", sample: "#E9AE3A", cutLbPerGal: 2 },
  { grade: "orange", sample: "#E49F2C", cutLbPerGal: 2 },
  { grade: "seedlac", sample: "#DF9420", cutLbPerGal: 2 },
  { grade: "button", sample: "#D67E1A", cutLbPerGal: 2 },
  { grade: "ruby", sample: "#D07016", cutLbPerGal: 2 },
  { grade: "garnet", sample: "#CB6913", cutLbPerGal: 2 },
] as const satisfies readonly { grade: string; sample: string; cutLbPerGal: number }[];

export type ResinGrade = (typeof resinGrades)[number]["grade"];

const absorptions = new Map<string, Absorption>(
  resinGrades.map(({ grade, sample, cutLbPerGal }) => [grade, absorptionFromSample(sample, cutLbPerGal)]),
);

/**
 * How a grade absorbs light, when its name is one of the trade's.
 *
 * @param grade  a name as in `resinGrades`, or words that hold one: "dewaxed lemon"
 * @returns      absorption per channel [1/m at volume fraction 1]; undefined for a name that is not known
 *
 * Valid:    for drawing only: invented samples
 * Source:   none: invented; the order from palest to darkest is common practice
 * @example
 * absorptionOfGrade("dewaxed lemon")?.blue // => 206
 */
export function absorptionOfGrade(grade: string): Absorption | undefined {
  const words = grade.toLowerCase();
  const exact = absorptions.get(words);
  if (exact !== undefined) return exact;
  const named = resinGrades.find((g) => words.split(/[^a-z]+/).includes(g.grade));
  return named === undefined ? undefined : absorptions.get(named.grade);
}

/**
 * How several resins together absorb light: each in proportion to its share.
 *
 * @param parts  absorption and share of the resin's volume, n; the shares need not sum to 1
 * @returns      absorption per channel [1/m at volume fraction 1]
 * @example
 * absorptionOfBlend([{ absorption: { red: 1, green: 2, blue: 3 }, share: 1 }, { absorption: { red: 3, green: 4, blue: 5 }, share: 3 }]) // => { red: 2.5, green: 3.5, blue: 4.5 }
 */
export function absorptionOfBlend(
  parts: readonly { readonly absorption: Absorption; readonly share: number }[],
): Absorption {
  const total = parts.reduce((sum, { share }) => sum + share, 0);
  const mean = (channel: keyof Absorption) =>
    parts.reduce((sum, { absorption, share }) => sum + absorption[channel] * share, 0) / total;
  return { red: mean("red"), green: mean("green"), blue: mean("blue") };
}
