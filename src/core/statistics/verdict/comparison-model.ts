import { DomainError } from "../../domain-error.ts";
import { type Contrast, fitLinearModel, type LinearFit, responseWeights } from "../model/linear-model.ts";
import { factorFrom, type ModelData } from "../model/model-matrix.ts";
import type { Residual } from "../model/residual-checks.ts";
import { at, entry, sum } from "../numeric/vector.ts";
import type { Difference } from "../several/family-intervals.ts";
import type { Unit } from "./experimental-unit.ts";
import type { Patch, PatchMean } from "./readings.ts";

/** Terms are named so that a factor called "board" does not meet the boards themselves. */
const placeTerm = (place: Unit["place"]): string => `(${place})`;

export interface ErrorTerm {
  readonly term: string;
  readonly meanSquare: number;
  readonly degreesOfFreedom: number;
}

export interface ComparisonModel {
  /** Terms in order; the compared factor last but for its unit. */
  readonly terms: readonly string[];
  readonly levels: readonly string[];
  /** What differences are held against. */
  readonly error: ErrorTerm;
  readonly patchError: ErrorTerm;
  /** Patches' worth of the unit's own variance in its mean square: E[MS] = σ² + n₀ σ_unit². 1 when the patch is the unit. */
  readonly patchesPerUnit: number;
  readonly difference: (a: string, b: string) => Difference;
  /** The other factors among the terms. */
  readonly others: readonly string[];
  /** What patches read beyond the whole model, with the degrees of freedom that are left to them. */
  readonly residuals: readonly Residual[];
}

function modelData(patches: readonly Patch[], compare: string): ModelData {
  const names = Object.keys(patches[0]?.factors ?? {});
  const factors = names.map((name) => [name, factorFrom(patches.map((p) => levelIn(p, name)))] as const);
  const groups = (["board", "plank", "jar"] as const).flatMap((place) =>
    patches.every((p) => p[place] !== undefined)
      ? [[placeTerm(place), factorFrom(patches.map((p) => p[place] ?? ""))] as const]
      : [],
  );
  const varied = [...groups, ...factors].filter(([name, f]) => name === compare || f.levels.length > 1);
  return { rows: patches.length, factors: Object.fromEntries(varied) };
}

function levelIn(patch: Patch, name: string): string {
  const level = patch.factors[name];
  if (level === undefined)
    throw new DomainError({
      code: "missing",
      field: `rows.factors.${name}`,
      value: undefined,
      because: `Patch ${patch.patch} does not say.`,
    });
  return level;
}

const freedomOf = (fit: LinearFit, term: string): number =>
  fit.table.find((line) => line.term === term)?.degreesOfFreedom ?? 0;

/**
 * What is taken out before the comparison: boards, planks and jars that carry several levels, then the other factors.
 * Whatever would swallow the compared factor, or the last degree of freedom of its error, stays in the error instead.
 */
function termsTakenOut(
  data: ModelData,
  values: readonly number[],
  compare: string,
  unit: Unit | null,
): string[] {
  const own = unit === null ? [] : [placeTerm(unit.place)];
  const whole = (data.factors[compare]?.levels.length ?? 0) - 1;
  const taken: string[] = [];
  for (const name of Object.keys(data.factors)) {
    if (name === compare || own.includes(name)) continue;
    const fit = fitLinearModel(values, [...taken, name, compare, ...own], data);
    const left = own[0] === undefined ? fit.residual.degreesOfFreedom : freedomOf(fit, own[0]);
    if (freedomOf(fit, compare) === whole && left >= 1) taken.push(name);
  }
  return taken;
}

function confoundedWith(data: ModelData, values: readonly number[], compare: string): string | undefined {
  const whole = (data.factors[compare]?.levels.length ?? 0) - 1;
  return Object.keys(data.factors)
    .filter((name) => name !== compare && !name.startsWith("("))
    .find((name) => freedomOf(fitLinearModel(values, [name, compare], data), compare) < whole);
}

/** How much of one unit's own variance reaches the unit line: n₀ = Σ over its places of |Qᵀz|² / degrees of freedom. */
function patchesInUnit(
  fit: LinearFit,
  term: string,
  patches: readonly Patch[],
  place: Unit["place"],
): number {
  const mine = fit.qr.kept.flatMap((j, i) => (fit.columns[j]?.term === term ? [i] : []));
  const things = [...new Set(patches.map((p) => p[place]))];
  const reached = things.map((thing) => {
    const rotated = fit.qr.rotate(patches.map((p) => (p[place] === thing ? 1 : 0)));
    return sum(mine.map((i) => at(rotated, i) ** 2));
  });
  return sum(reached) / mine.length;
}

/**
 * The blocked analysis of variance behind a comparison of the levels of one factor: other things taken out first,
 * then the factor, then the unit that it sits on.
 *
 *     y = boards + planks + jars + other factors + compared factor + unit + patch
 *
 * A difference is the least-squares one. Its variance is w₁ σ² + w₂ σ_unit², with both from their mean squares; in a
 * balanced layout that is the unit's mean square alone, otherwise the degrees of freedom are Satterthwaite's.
 *
 * @param patches  n patch means
 * @param compare  name of the factor
 * @param unit     what its levels were made apart in, or null when the patch is the unit
 * @returns        the error and the differences
 * @throws DomainError when the factor changes together with another, or nothing is left to estimate the noise from
 *
 * Valid:    normal scatter, the same at every level; unequal numbers of patches are allowed
 * Source:   D. C. Montgomery, Design and Analysis of Experiments (2013), ch. 4 and 14;
 *           F. E. Satterthwaite, Biometrics Bull. 2 (1946) 110
 */
export function comparisonModel(
  patches: readonly PatchMean[],
  compare: string,
  unit: Unit | null,
): ComparisonModel {
  const data = modelData(patches, compare);
  const values = patches.map((p) => p.value);
  const other = confoundedWith(data, values, compare);
  if (other !== undefined)
    throw new DomainError({
      code: "contradiction",
      field: "compare",
      value: compare,
      because: `${compare} changes together with ${other} here, so that they cannot be told apart.`,
    });
  const taken = termsTakenOut(data, values, compare, unit);
  const own = unit === null ? undefined : placeTerm(unit.place);
  const full = fitLinearModel(values, [...taken, compare, ...(own === undefined ? [] : [own])], data);
  const patchError: ErrorTerm = { term: "patch", ...full.residual };
  const line = full.table.find((l) => l.term === own);
  const error =
    own === undefined ? patchError : { meanSquare: Number.NaN, degreesOfFreedom: 0, ...line, term: own };
  if (error.degreesOfFreedom < 1)
    throw new DomainError({
      code: "not-enough-data",
      field: "rows",
      value: patches.length,
      because:
        "Nothing is left over to tell the noise from: more boards, or more patches of each level, would do.",
    });
  const patchesPerUnit =
    unit === null || own === undefined ? 1 : patchesInUnit(full, own, patches, unit.place);
  const plain = own === undefined ? full : fitLinearModel(values, [...taken, compare], data);
  const variance = (weights: Float64Array): Omit<Difference, "estimate"> =>
    unit === null
      ? {
          variance: error.meanSquare * sum(weights.map((w) => w * w)),
          degreesOfFreedom: error.degreesOfFreedom,
        }
      : varianceOverUnits(
          weights,
          patches.map((p) => p[unit.place] ?? ""),
          error,
          patchError,
          patchesPerUnit,
        );
  const weight = (level: string, sign: number): [string, number] => [`${compare}${level}`, sign];
  return {
    terms: full.table.slice(0, -1).map((l) => l.term),
    levels: data.factors[compare]?.levels ?? [],
    error,
    patchError,
    patchesPerUnit,
    others: taken.filter((name) => !name.startsWith("(")),
    residuals: residualsOf(full, patches, compare),
    difference: (a, b) => {
      const contrast: Contrast = new Map([weight(a, 1), weight(b, -1)]);
      const weights = responseWeights(plain, contrast);
      return { estimate: sum(values.map((y, i) => y * at(weights, i))), ...variance(weights) };
    },
  };
}

function residualsOf(fit: LinearFit, patches: readonly PatchMean[], compare: string): Residual[] {
  const { kept, rotateBack } = fit.qr;
  const left = rotateBack(Array.from(fit.rotated, (v, i) => (i < kept.length ? 0 : v)));
  const leverages = new Float64Array(patches.length);
  kept.forEach((_, k) => {
    const unit = new Float64Array(patches.length);
    unit[k] = 1;
    const column = rotateBack(unit);
    for (let i = 0; i < column.length; i++) leverages[i] = entry(leverages, i) + entry(column, i) ** 2;
  });
  return patches.map((p, i) => ({
    patch: p.patch,
    level: p.factors[compare] ?? "",
    fitted: p.value - at(left, i),
    residual: at(left, i),
    leverage: at(leverages, i),
  }));
}

function varianceOverUnits(
  weights: Float64Array,
  unitOf: readonly string[],
  error: ErrorTerm,
  patchError: ErrorTerm,
  patchesPerUnit: number,
): Omit<Difference, "estimate"> {
  const perUnit = new Map<string, number>();
  unitOf.forEach((unit, i) => {
    perUnit.set(unit, (perUnit.get(unit) ?? 0) + at(weights, i));
  });
  const onPatches = sum(weights.map((w) => w * w));
  const onUnits = sum([...perUnit.values()].map((w) => w * w)) / patchesPerUnit;
  const rest = onPatches - onUnits;
  const fromUnits = onUnits * error.meanSquare;
  // Where less than nothing is left, the unit's mean square holds more of the patches' noise than is needed: it is left as it is.
  if (!(rest > 1e-9 * onPatches) || patchError.degreesOfFreedom < 1)
    return {
      variance: fromUnits,
      degreesOfFreedom: error.degreesOfFreedom,
    };
  const fromPatches = rest * patchError.meanSquare;
  const variance = fromUnits + fromPatches;
  const degreesOfFreedom =
    variance ** 2 /
    (fromUnits ** 2 / error.degreesOfFreedom + fromPatches ** 2 / patchError.degreesOfFreedom);
  return { variance, degreesOfFreedom: Math.max(1, degreesOfFreedom) };
}
