import { inRange } from "../../domain-error.ts";
import { smallestDifference } from "../../statistics/several/power.ts";
import type { Factor, LaidPatch, Plan } from "../plan.ts";
import { indicators, residual, spanOf } from "./span.ts";
import { type Stratum, stratumOf, unitLabels } from "./strata.ts";

/** How much like things differ, as standard deviations in the unit of what is looked at. */
export interface Noise {
  readonly patch: number;
  readonly jar: number;
  readonly plank: number;
}

export interface SmallestDifference {
  readonly factor: string;
  /** Null where nothing is left to judge the error by. */
  readonly value: number | null;
  readonly power: number;
  /** The factor, or only `these jars`, `these planks`, `these boards` where each level came from one. */
  readonly about: string;
  readonly degreesOfFreedom: number;
  /** Of the least well known difference of two levels. */
  readonly standardError: number;
}

const power = 0.8;

/**
 * The smallest difference between two levels that a layout would show with 80 % chance: that the simultaneous 95 %
 * interval of the difference excludes zero.
 *
 *     P(T_ν(δ/s) > q_{0.95}(k, ν)/√2) = 0.8,   s² = Σ_u σ_u² Σ_{units} (Σ w)²
 *
 * w are the weights with which the patches enter the least-squares difference, allowing for boards and the other
 * factors; u runs over patches, jars and planks. For a factor with one jar (plank, board) a level the difference is
 * that between those very jars, with the patch as its error.
 *
 * @param patches  the layout, n
 * @param noise    standard deviations ≥ 0, the patch's above 0
 * @returns        one item for each factor with two levels or more, in their order
 * @throws DomainError for noise that is negative or not a number
 *
 * Valid:    normal scatter of the same size at every level; a level made of one unit speaks of that unit alone
 * Accuracy: the far tail of the test is left out: below 1e-4 of the power
 * Source:   J. W. Tukey's intervals as R. A. Bailey, Design of Comparative Experiments (2008), 2.11; power as Cohen (1988)
 */
export function smallestDifferences(
  plan: Plan,
  patches: readonly LaidPatch[],
  noise: Noise,
): readonly SmallestDifference[] {
  inRange("noise.patch", noise.patch, { min: Number.MIN_VALUE, max: Number.MAX_VALUE });
  inRange("noise.jar", noise.jar, { min: 0, max: Number.MAX_VALUE });
  inRange("noise.plank", noise.plank, { min: 0, max: Number.MAX_VALUE });
  return plan.factors
    .filter((f) => f.levels.length > 1)
    .map((factor) => smallestFor(plan, patches, noise, factor, stratumOf(plan, patches, factor)));
}

function smallestFor(
  plan: Plan,
  patches: readonly LaidPatch[],
  noise: Noise,
  factor: Factor,
  stratum: Stratum,
): SmallestDifference {
  const repeated = stratum.df > 0;
  const df = repeated ? stratum.df : patchesBeyond(patches, factor, stratum);
  const felt = repeated ? noise : { patch: noise.patch, jar: 0, plank: 0 };
  const standardError = worstStandardError(plan, patches, factor, stratum, felt);
  const known = df > 0 && Number.isFinite(standardError);
  return {
    factor: factor.name,
    value: known ? standardError * detectable(factor.levels.length, df) : null,
    power,
    about: repeated || stratum.unit === "patch" ? factor.name : `these ${stratum.unit}s`,
    degreesOfFreedom: df,
    standardError,
  };
}

/** Degrees of freedom of the patches about the fitted levels, where nothing larger is repeated. */
function patchesBeyond(patches: readonly LaidPatch[], factor: Factor, stratum: Stratum): number {
  const levels = indicators(patches.map((p) => p.treatment[factor.name] as string));
  return patches.length - spanOf(levels, stratum.others).length;
}

function worstStandardError(
  plan: Plan,
  patches: readonly LaidPatch[],
  factor: Factor,
  stratum: Stratum,
  noise: Noise,
): number {
  const column = (level: string) => patches.map((p) => (p.treatment[factor.name] === level ? 1 : 0));
  const sources = noiseSources(plan, patches, factor, noise);
  let worst = 0;
  for (const [i, a] of factor.levels.entries())
    for (const b of factor.levels.slice(i + 1)) {
      const rest = factor.levels.filter((l) => l !== a && l !== b).map(column);
      const left = residual(column(a), spanOf(rest, stratum.others));
      const length = left.reduce((sum, x) => sum + x * x, 0);
      const weights = left.map((x) => x / length);
      const variance = sources.reduce((sum, s) => sum + s.sd ** 2 * squaredSums(weights, s.unitOf), 0);
      worst = Math.max(worst, length < 1e-9 ? Number.POSITIVE_INFINITY : Math.sqrt(variance));
    }
  return worst;
}

function noiseSources(plan: Plan, patches: readonly LaidPatch[], factor: Factor, noise: Noise) {
  const plankOf = new Map(plan.boards.map((b) => [b.board, b.plank]));
  const jarLike: Factor = factor.appliedTo === "jar" ? factor : { name: "", levels: [], appliedTo: "jar" };
  return [
    { sd: noise.patch, unitOf: patches.map((p) => p.patch) },
    { sd: noise.jar, unitOf: unitLabels(plan, patches, jarLike) },
    { sd: noise.plank, unitOf: patches.map((p) => plankOf.get(p.board) as string) },
  ];
}

function squaredSums(weights: readonly number[], unitOf: readonly string[]): number {
  const sums = new Map<string, number>();
  weights.forEach((w, i) => {
    sums.set(unitOf[i] as string, (sums.get(unitOf[i] as string) ?? 0) + w);
  });
  return [...sums.values()].reduce((total, s) => total + s * s, 0);
}

/** How many standard errors a difference must be, to be shown with the wanted chance. */
const detectable = (levels: number, degreesOfFreedom: number): number =>
  smallestDifference(
    // two units a level of deviation 1 each: a difference then has a standard error of 1
    { levels, unitsPerLevel: 2, patchesPerUnit: 1, unitDeviation: 0, patchDeviation: 1, degreesOfFreedom },
    power,
  );
