import { DomainError } from "../../domain-error.ts";
import { type ResidualRemark, residualRemarks } from "../model/residual-checks.ts";
import { mean } from "../numeric/vector.ts";
import {
  againstControl,
  allPairs,
  type Difference,
  type Family,
  type HeldDifference,
} from "../several/family-intervals.ts";
import { compactLetters } from "../several/letters.ts";
import { type ComparisonModel, comparisonModel } from "./comparison-model.ts";
import { experimentalUnits, type Units } from "./experimental-unit.ts";
import { judgeMeans, judgesForTastes, type MixedComparison, mixedComparison } from "./mixed-comparison.ts";
import { type MoreNeeded, moreNeeded } from "./more-needed.ts";
import { type PatchMean, type Place, patchMeans, type Reading, type Wobble } from "./readings.ts";
import { type Said, threeWords } from "./three-words.ts";

export interface Question {
  /** The factor whose levels are compared. */
  readonly compare: string;
  readonly appliedTo: Place;
  /** The difference that matters: in the response's unit, or as a share for ordered and ranked responses. */
  readonly matters: number;
  /** The level that all others are held against; without one, all pairs are compared. */
  readonly control?: string | undefined;
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
  /** What a difference's standard error was multiplied by, at most. */
  readonly multiplier: number;
  readonly confidence: 0.95;
  /** Variances of what is random, the residual last; none where mean squares did. */
  readonly variances: readonly { readonly of: string; readonly variance: number }[];
}

/** One standard deviation of patches treated alike, and of the jars (planks, boards) that levels were made apart in. */
export interface NoiseSeen {
  readonly patch: number;
  readonly unit: { readonly of: Place; readonly deviation: number } | null;
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
  /** How far like things lie apart, in the response's unit; none for ordered and ranked responses. */
  readonly noise: NoiseSeen | null;
  readonly remarks: readonly ResidualRemark[];
  /** Of no difference at all, all pairs allowed for: what several responses are held together by. */
  readonly pValue: () => number;
}

/** The factor when each level was made apart two times or more, else "these jars", "these planks", "these boards". */
export const aboutWhat = (compare: string, units: Units): string =>
  units.single === null ? compare : `these ${units.single.place}s`;

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
 * The mixed model where several judges looked: three or more, or two who did not both see every patch. Lost patches
 * alone are no reason: with the few jars of a trial a variance is often estimated at 0, and held there it makes
 * intervals too wide (99 % and more where 95 was meant), while the mean squares, which may fall below, keep what they
 * promise.
 */
function mixedWhereNeeded(
  readings: readonly Reading[],
  compare: string,
  model: ComparisonModel,
): MixedComparison | null {
  const perJudge = judgeMeans(readings);
  const judges = new Set(perJudge.map((r) => r.judge ?? "")).size;
  const patches = new Set(perJudge.map((r) => r.patch)).size;
  const whole = perJudge.length === judges * patches;
  if (judges < 2 || (whole && judges < judgesForTastes)) return null;
  try {
    return mixedComparison(perJudge, compare, model.others);
  } catch (error) {
    // Where its variances cannot be told apart, the mean squares of what judges agreed on are what is left.
    if (error instanceof DomainError) return null;
    throw error;
  }
}

function checkNoise(differences: readonly Difference[], patches: readonly PatchMean[]): void {
  if (differences.every((d) => d.variance > 1e-24 * Math.max(...patches.map((p) => p.value ** 2)))) return;
  throw new DomainError({
    code: "no-variation",
    field: "rows.value",
    value: null,
    because:
      "What was treated alike reads exactly alike, so that there is no noise to hold a difference against.",
  });
}

const pairOf = (d: HeldDifference, matters: number): Pair => ({
  a: d.a,
  b: d.b,
  difference: d.estimate,
  interval: d.interval,
  ...threeWords(d.interval, matters),
});

/**
 * The verdict on a measured response: analysis of variance with boards taken out, held against the noise between the
 * units that the factor sits on (jars, planks) when each level has two or more of them, and between patches
 * otherwise; exact in balanced layouts, with Satterthwaite's degrees of freedom where patches were lost. Several
 * judges are random, by the mixed model. Intervals are Tukey's for all pairs of levels, or Dunnett's against a control.
 *
 * @param readings  n readings, several of one patch by one judge averaged first
 * @param question  {compare, appliedTo, matters, control}
 * @returns         one pair for each comparison, with the words
 * @throws DomainError when the values do not vary, when levels cannot be told from something else, and when nothing
 *         is left to tell the noise from
 *
 * Valid:  two or more levels
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 7.4.7.1; D. C. Montgomery, Design and Analysis of
 *         Experiments (2013), ch. 4 and 14; M. G. Kenward and J. H. Roger, Biometrics 53 (1997) 983
 */
export function verdictMeasured(readings: readonly Reading[], question: Question): Verdict {
  const { compare, control, matters } = question;
  const { patches, wobble } = patchMeans(readings);
  if (new Set(patches.map((p) => p.value)).size < 2)
    throw new DomainError({ code: "no-variation", field: "rows.value", value: patches[0]?.value });
  const units = experimentalUnits(patches, compare, question.appliedTo);
  const model = comparisonModel(patches, compare, units.error);
  const mixed = mixedWhereNeeded(readings, compare, model);
  const { levels } = model;
  const difference = (a: string, b: string): Difference => {
    const found = (mixed ?? model).difference(a, b);
    checkNoise([found], patches);
    return found;
  };
  const family: Family =
    control === undefined ? allPairs(levels, difference) : againstControl(levels, control, difference);
  const found = family.differences;
  const seen = levelsSeen(patches, compare, levels);
  const layout = layoutOf(patches, units, model, seen);
  const pairs = found.map((d) => pairOf(d, matters));
  return {
    about: aboutWhat(compare, units),
    pairs,
    method: methodOf(model, mixed, control, Math.max(...found.map((d) => d.multiplier))),
    degreesOfFreedom: Math.min(...found.map((d) => d.degreesOfFreedom)),
    letters: lettersOf(
      [...seen].sort((a, b) => b.mean - a.mean).map((s) => s.level),
      pairs,
    ),
    moreNeeded: moreNeeded(pairs, matters, layout),
    levels: seen,
    wobble,
    noise: {
      patch: Math.sqrt(layout.patchVariance),
      unit: units.error === null ? null : { of: layout.unit, deviation: Math.sqrt(layout.unitVariance) },
    },
    pValue: family.pValue,
    remarks: residualRemarks(model.residuals, model.patchError.degreesOfFreedom),
  };
}

/** Boards stand as the blocks that they are. */
const plainTerm = (term: string): string => (term === "(board)" ? "block" : term.replace(/^\((.*)\)$/, "$1"));

function methodOf(
  model: ComparisonModel,
  mixed: MixedComparison | null,
  control: string | undefined,
  multiplier: number,
): VerdictMethod {
  const family =
    control === undefined ? "Tukey-Kramer intervals for all pairs" : "Dunnett intervals against the control";
  const common = { errorTerm: plainTerm(model.error.term), multiplier, confidence: 0.95 } as const;
  if (mixed === null)
    return {
      ...common,
      name: `analysis of variance, ${family}`,
      terms: model.terms.map(plainTerm),
      errorMeanSquare: model.error.meanSquare,
      variances: [],
    };
  return {
    ...common,
    name: `mixed model by REML with Kenward-Roger degrees of freedom, ${family}`,
    terms: [...mixed.terms, ...mixed.variances.map((v) => `random: ${v.group}`)],
    errorMeanSquare: null,
    variances: [
      ...mixed.variances.map((v) => ({ of: v.group, variance: v.variance })),
      { of: "residual", variance: mixed.residualVariance },
    ],
  };
}

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
