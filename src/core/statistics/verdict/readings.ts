import { DomainError } from "../../domain-error.ts";
import { householderQr, solveUpper } from "../numeric/qr.ts";
import { at, mean, squaredDeviations } from "../numeric/vector.ts";

/** Where a factor sits: what has to be made again to have its level again. */
export const places = ["jar", "plank", "board", "patch"] as const;
export type Place = (typeof places)[number];

/** One patch as laid out. A board is the block. */
export interface Patch {
  readonly patch: string;
  readonly jar: string | undefined;
  readonly plank: string | undefined;
  readonly board: string | undefined;
  readonly factors: Readonly<Record<string, string>>;
}

/** One reading of one patch. */
export interface Reading extends Patch {
  readonly judge: string | undefined;
  readonly value: number;
}

export interface PatchMean extends Patch {
  readonly value: number;
}

/** How far readings of the same patch lie apart. */
export interface Wobble {
  readonly judges: number;
  readonly readingsPerPatch: number;
  /** Standard deviation of one judge reading one patch again; null when nobody did. */
  readonly sameJudge: number | null;
  /** Standard deviation from judge to judge on one patch, once steady habits (always two units higher) are taken out. */
  readonly betweenJudges: number | null;
}

/** The items by what `key` gives, groups and items in the order in which they came. */
export const groupedBy = <T>(items: readonly T[], key: (item: T) => string): T[][] => {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group === undefined) groups.set(key(item), [item]);
    else group.push(item);
  }
  return [...groups.values()];
};

const pooled = (groups: readonly (readonly number[])[]): number | null => {
  const freedom = groups.reduce((n, g) => n + g.length - 1, 0);
  if (freedom === 0) return null;
  return Math.sqrt(groups.reduce((total, g) => total + squaredDeviations(g), 0) / freedom);
};

/** Refuses a patch that two rows place differently. */
export function checkPatches(readings: readonly Reading[]): void {
  const seen = new Map<string, Reading>();
  readings.forEach((reading, i) => {
    const first = seen.get(reading.patch) ?? reading;
    seen.set(reading.patch, first);
    for (const key of ["jar", "plank", "board"] as const) {
      if (first[key] !== reading[key])
        throw new DomainError({
          code: "contradiction",
          field: `rows[${i}].${key === "board" ? "block" : key}`,
          value: reading[key] ?? null,
          because: `Another row of patch ${reading.patch} says ${first[key] ?? "nothing"}.`,
        });
    }
    for (const [name, level] of Object.entries(reading.factors)) {
      if (first.factors[name] !== level)
        throw new DomainError({
          code: "contradiction",
          field: `rows[${i}].factors.${name}`,
          value: level,
          because: `Another row of patch ${reading.patch} says ${first.factors[name] ?? "nothing"}.`,
        });
    }
  });
}

/**
 * What each judge reads above or below the others, by least squares over the patches that judges share. Judges who
 * share no patch with the others stay as they are.
 */
function judgeHabits(readings: readonly Reading[]): ReadonlyMap<string, number> {
  const judges = [...new Set(readings.map((r) => r.judge ?? ""))].sort();
  const perPatch = groupedBy(readings, (r) => r.patch);
  const centred = (of: (r: Reading) => number): number[] =>
    perPatch.flatMap((group) => {
      const middle = mean(group.map(of));
      return group.map((r) => of(r) - middle);
    });
  const qr = householderQr(
    judges.map((judge) => centred((r) => ((r.judge ?? "") === judge ? 1 : 0))),
    judges.map(() => 1),
  );
  const solved = solveUpper(qr.r, qr.rotate(centred((r) => r.value)));
  const raw = judges.map((_, j) => (qr.kept.includes(j) ? at(solved, qr.kept.indexOf(j)) : 0));
  const middle = mean(raw);
  return new Map(judges.map((judge, j) => [judge, at(raw, j) - middle]));
}

/**
 * One value a patch: repeated readings by one judge are averaged first, then judges, each judge's steady habit taken
 * out. With every judge on every patch this is the plain mean.
 *
 * @param readings  n readings
 * @returns         one mean a patch, and how far readings lay apart
 * @throws DomainError for a patch that two rows place differently
 *
 * Source: D. C. Montgomery, Design and Analysis of Experiments (2013), 14.5, on repeated readings of one unit
 */
export function patchMeans(readings: readonly Reading[]): { patches: PatchMean[]; wobble: Wobble } {
  checkPatches(readings);
  const sameJudge = groupedBy(readings, (r) => JSON.stringify([r.patch, r.judge ?? null]));
  const perJudge = sameJudge.map((group) => ({
    ...(group[0] as Reading), // a group holds at least the reading that made it
    value: mean(group.map((r) => r.value)),
  }));
  const habits = judgeHabits(perJudge);
  const adjusted = perJudge.map((r) => ({ ...r, value: r.value - (habits.get(r.judge ?? "") ?? 0) }));
  const groups = groupedBy(adjusted, (r) => r.patch);
  const patches = groups.map((group) => {
    const { patch, jar, plank, board, factors } = group[0] as Reading;
    return { patch, jar, plank, board, factors, value: mean(group.map((r) => r.value)) };
  });
  return {
    patches,
    wobble: {
      judges: habits.size,
      readingsPerPatch: readings.length / patches.length,
      sameJudge: pooled(sameJudge.map((g) => g.map((r) => r.value))),
      betweenJudges: pooled(groups.map((g) => g.map((r) => r.value))),
    },
  };
}
