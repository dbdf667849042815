import { DomainError } from "../domain-error.ts";
import { type ComparisonModel, comparisonModel } from "./comparison-model.ts";
import { experimentalUnits, type Units } from "./experimental-unit.ts";
import { compactLetters } from "./letters.ts";
import { type MoreNeeded, moreNeeded } from "./more-needed.ts";
import { type PatchMean, type Place, patchMeans, type Reading, type Wobble } from "./readings.ts";
import { type Said, threeWords } from "./three-words.ts";
import { tukeyMultiplier } from "./tukey.ts";
import { at, mean } from "./vector.ts";

export interface Question {
  /** The factor whose levels are compared. */
  readonly compare: string;
  readonly appliedTo: Place;
  /** The difference that matters: in the response's unit, or as a share for ordered and ranked responses. */
  readonly matters: number;
}

export interface Pair extends Said {
  readonly a: string;
  readonly b: string;
  /** a − b. */
  readonly difference: number;
  /** Simultaneous over all pairs, 95 %. */
  readonly interval: readonly [number, number];
}

export interface LevelSeen {
  readonly level: string;
  readonly mean: number;
  readonly patches: number;
  readonly jars: number;
}

/** All that is needed to work a verdict out again. */
export interface VerdictMethod {
  readonly name: string;
  readonly terms: readonly string[];
  readonly errorTerm: string;
  readonly errorMeanSquare: number | null;
  /** What a difference's standard error was multiplied by. */
  readonly multiplier: number;
  readonly confidence: 0.95;
}

export interface Verdict {
  /** The factor, or what its levels had only one of. */
  readonly about: string;
  readonly pairs: readonly Pair[];
  readonly method: VerdictMethod;
  readonly degreesOfFreedom: number;
  readonly letters: Readonly<Record<string, string>>;
  readonly moreNeeded: MoreNeeded;
  readonly levels: readonly LevelSeen[];
  readonly wobble: Wobble;
}

/** The factor when each level was made apart two times or more, else "these jars", "these planks", "these boards". */
export const aboutWhat = (compare: string, units: Units): string =>
  units.single === null ? compare : `these ${units.single.place}s`;

/** Every two levels, in their order. */
export const pairsOf = (levels: readonly string[]): (readonly [string, string])[] =>
  levels.flatMap((a, i) => levels.slice(i + 1).map((b) => [a, b] as const));

/** Letters by direction: levels whose order is sure share none. */
export const lettersOf = (levels: readonly string[], pairs: readonly Pair[]): Record<string, string> =>
  compactLetters(levels, (a, b) =>
    pairs.some((p) => p.directionSure && ((p.a === a && p.b === b) || (p.a === b && p.b === a))),
  );

/** What was read at each level: the mean, and from how many patches and jars. */
export function levelsSeen(
  patches: readonly PatchMean[],
  compare: string,
  levels: readonly string[],
): LevelSeen[] {
  return levels.map((level) => {
    const mine = patches.filter((p) => p.factors[compare] === level);
    const jars = new Set(mine.flatMap((p) => p.jar ?? []));
    return { level, mean: mean(mine.map((p) => p.value)), patches: mine.length, jars: jars.size };
  });
}

/**
 * The verdict on a measured response: analysis of variance with boards taken out, and Tukey's intervals for all
 * pairs of levels, held against the noise between the units that the factor sits on (jars, planks) when each level
 * has two or more of them, against the noise between patches otherwise.
 *
 * @param readings  n readings, several of one patch averaged first
 * @param question  {compare, appliedTo, matters}
 * @returns         one pair for each two levels, with the words
 * @throws DomainError when the values do not vary, when levels cannot be told from something else, and when nothing
 *         is left to tell the noise from
 *
 * Valid:  two or more levels
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.1; D. C. Montgomery, Design and Analysis of
 *         Experiments (2013), ch. 4 and 14
 */
export function verdictMeasured(readings: readonly Reading[], question: Question): Verdict {
  const { compare } = question;
  const { patches, wobble } = patchMeans(readings);
  if (new Set(patches.map((p) => p.value)).size < 2)
    throw new DomainError({ code: "no-variation", field: "rows.value", value: patches[0]?.value });
  const units = experimentalUnits(patches, compare, question.appliedTo);
  const model = comparisonModel(patches, compare, units.error);
  const seen = levelsSeen(patches, compare, model.levels);
  const differences = pairsOf(model.levels).map(([a, b]) => ({ a, b, ...model.difference(a, b) }));
  if (!differences.every((d) => d.variance > 1e-24 * Math.max(...patches.map((p) => p.value ** 2))))
    throw new DomainError({
      code: "no-variation",
      field: "rows.value",
      value: null,
      because:
        "What was treated alike reads exactly alike, so that there is no noise to hold a difference against.",
    });
  const multipliers = differences.map((d) => tukeyMultiplier(model.levels.length, d.degreesOfFreedom));
  const pairs = differences.map((d, i): Pair => {
    const reach = at(multipliers, i) * Math.sqrt(d.variance);
    const interval = [d.estimate - reach, d.estimate + reach] as const;
    return { a: d.a, b: d.b, difference: d.estimate, interval, ...threeWords(interval, question.matters) };
  });
  const degreesOfFreedom = Math.min(...differences.map((d) => d.degreesOfFreedom));
  return {
    about: aboutWhat(compare, units),
    pairs,
    method: methodOf(model, Math.max(...multipliers)),
    degreesOfFreedom,
    letters: lettersOf(
      [...seen].sort((a, b) => b.mean - a.mean).map((s) => s.level),
      pairs,
    ),
    moreNeeded: moreNeeded(pairs, question.matters, layoutOf(patches, units, model, seen)),
    levels: seen,
    wobble,
  };
}

/** Boards stand as the blocks that they are. */
const plainTerm = (term: string): string => (term === "(board)" ? "block" : term.replace(/^\((.*)\)$/, "$1"));

const methodOf = (model: ComparisonModel, multiplier: number): VerdictMethod => ({
  name: "analysis of variance, Tukey-Kramer intervals for all pairs",
  terms: model.terms.map(plainTerm),
  errorTerm: plainTerm(model.error.term),
  errorMeanSquare: model.error.meanSquare,
  multiplier,
  confidence: 0.95,
});

function layoutOf(
  patches: readonly PatchMean[],
  units: Units,
  model: ComparisonModel,
  seen: readonly LevelSeen[],
): Parameters<typeof moreNeeded>[2] {
  const patchVariance = model.patchError.degreesOfFreedom > 0 ? model.patchError.meanSquare : 0;
  const own = Math.max(0, (model.error.meanSquare - patchVariance) / model.patchesPerUnit);
  const perLevel = Math.min(...seen.map((s) => s.patches));
  const unitsPerLevel = units.error?.fewestPerLevel ?? perLevel;
  return {
    levels: model.levels.length,
    unit: units.error?.place ?? "patch",
    unitsPerLevel,
    patchesPerUnit: units.error === null ? 1 : model.patchesPerUnit,
    unitVariance: units.error === null ? 0 : own,
    patchVariance: units.error === null ? model.error.meanSquare : patchVariance,
    boards: new Set(patches.flatMap((p) => p.board ?? [])).size,
    degreesOfFreedom: model.error.degreesOfFreedom,
  };
}
