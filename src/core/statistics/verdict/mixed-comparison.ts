import { mixedContrasts } from "../model/kenward-roger.ts";
import type { Contrast } from "../model/linear-model.ts";
import { type Grouping, groupingOf } from "../model/mixed-equations.ts";
import { fitMixedModel, type RandomVariance } from "../model/mixed-model.ts";
import { type Column, factorFrom, modelColumns } from "../model/model-matrix.ts";
import { householderQr } from "../numeric/qr.ts";
import { mean } from "../numeric/vector.ts";
import type { Difference } from "../several/family-intervals.ts";
import { groupedBy, type Reading } from "./readings.ts";

export interface MixedComparison {
  readonly levels: readonly string[];
  /** Fixed terms, the compared factor last. */
  readonly terms: readonly string[];
  readonly variances: readonly RandomVariance[];
  readonly residualVariance: number;
  readonly difference: (a: string, b: string) => Difference;
}

/** Fewer judges say nothing of how judges at large would see a level: for them it stays these judges. */
export const judgesForTastes = 3;

/** One value for each judge and patch. */
export const judgeMeans = (readings: readonly Reading[]): Reading[] =>
  groupedBy(readings, (r) => JSON.stringify([r.patch, r.judge ?? null])).map((group) => ({
    ...(group[0] as Reading), // a group holds what made it
    value: mean(group.map((r) => r.value)),
  }));

const samePartition = (a: Grouping, b: Grouping): boolean =>
  a.groups === b.groups && new Set(a.of.map((g, i) => `${g} ${b.of[i]}`)).size === a.groups;

/** Whether the fixed columns already say to which group each row belongs. */
function isFixed(columns: readonly Column[], grouping: Grouping): boolean {
  const fixed = columns.map((c) => c.values);
  const indicators = Array.from({ length: grouping.groups }, (_, g) =>
    grouping.of.map((x) => (x === g ? 1 : 0)),
  );
  return householderQr([...fixed, ...indicators]).kept.every((j) => j < fixed.length);
}

/** The things whose luck the rows share, but for those that there are too few of or that something else stands for. */
function groupingsOf(readings: readonly Reading[], compare: string, columns: readonly Column[]): Grouping[] {
  const judges = new Set(readings.map((r) => r.judge ?? "")).size;
  const named: readonly (readonly [string, (r: Reading) => string | undefined])[] = [
    ["jar", (r) => r.jar],
    ["plank", (r) => r.plank],
    ["board", (r) => r.board],
    ["patch", (r) => r.patch],
    ["judge", (r) => (judges > 1 ? r.judge : undefined)],
    [
      `judge by ${compare}`,
      (r) => (judges >= judgesForTastes ? JSON.stringify([r.judge ?? null, r.factors[compare]]) : undefined),
    ],
  ];
  const kept: Grouping[] = [];
  for (const [name, of] of named) {
    const labels = readings.map(of);
    if (labels.some((label) => label === undefined)) continue;
    const grouping = groupingOf(name, labels as string[]); // none is missing
    if (grouping.groups < 2 || grouping.groups >= readings.length) continue;
    if (kept.some((k) => samePartition(k, grouping)) || isFixed(columns, grouping)) continue;
    kept.push(grouping);
  }
  return kept;
}

/**
 * The comparison of levels where several judges looked, and an analysis of variance has no single error to offer. Jars, planks, boards, patches and judges are random, and so is what each
 * judge makes of each level where there are three judges or more.
 *
 *     y = other factors + compared factor + jar + plank + board + patch + judge + judge × level + e
 *
 * @param readings  n readings, one for each judge and patch
 * @param compare   name of the factor
 * @param others    names of the other factors to take out
 * @returns         differences with Kenward and Roger's standard errors and degrees of freedom
 * @throws DomainError as `fitMixedModel` and `mixedContrasts`
 *
 * Valid:  two or more levels; each thing that varied sits on rows as said
 * Source: M. G. Kenward and J. H. Roger, Biometrics 53 (1997) 983
 */
export function mixedComparison(
  readings: readonly Reading[],
  compare: string,
  others: readonly string[],
): MixedComparison {
  const terms = [...others, compare];
  const factors = Object.fromEntries(
    terms.map((name) => [name, factorFrom(readings.map((r) => r.factors[name] ?? ""))]),
  );
  const columns = modelColumns(terms, { rows: readings.length, factors });
  const groupings = groupingsOf(readings, compare, columns);
  const fit = fitMixedModel(
    readings.map((r) => r.value),
    columns,
    groupings,
  );
  const contrast = mixedContrasts(fit);
  return {
    levels: factors[compare]?.levels ?? [],
    terms,
    variances: fit.variances,
    residualVariance: fit.residualVariance,
    difference: (a, b) => {
      const weights: Contrast = new Map([
        [`${compare}${a}`, 1],
        [`${compare}${b}`, -1],
      ]);
      return contrast(weights);
    },
  };
}
