import type { Body } from "../../core/notebook/kinds/all.ts";
import type { Trial } from "../../core/views/trial.ts";
import { type Analysis, coatsRead, type TrialRow, trialRows } from "../../core/views/trial-rows.ts";

export type Look = Body<"trial-asked">["looksAt"][number];

/** The input of the verdict calculation, as it can be run again from a file. */
export interface VerdictInput {
  readonly response: {
    readonly name: string;
    readonly scale: Look["scale"];
    readonly levels?: readonly string[];
    readonly matters?: number;
  };
  readonly compare: string;
  readonly appliedTo: Readonly<Record<string, string>>;
  readonly rows: readonly TrialRow[];
}

export interface VerdictAnswer {
  readonly about: string;
  readonly pairs: readonly VerdictPair[];
  readonly method: {
    readonly name: string;
    readonly terms: readonly string[];
    readonly errorTerm: string;
    readonly multiplier: number;
    readonly variances: readonly { readonly of: string; readonly variance: number }[];
  };
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  readonly moreNeeded: { readonly jars: number | null; readonly boards: number | null };
  readonly matters: number;
  readonly levels: readonly {
    readonly level: string;
    readonly mean: number;
    readonly patches: number;
    readonly jars: number;
  }[];
  readonly wobble: {
    readonly judges: number;
    readonly readingsPerPatch: number;
    readonly sameJudge: number | null;
    readonly betweenJudges: number | null;
  };
  readonly noise: {
    readonly patch: number;
    readonly unit: { readonly of: string; readonly deviation: number } | null;
  } | null;
  readonly permutation: {
    readonly pValue: number;
    readonly dealings: number;
    readonly exact: boolean;
  } | null;
  readonly odds: {
    readonly random: string;
    readonly pairs: readonly {
      readonly a: string;
      readonly b: string;
      readonly oddsRatio: number;
      readonly interval: readonly [number, number];
    }[];
  } | null;
  readonly flags: readonly { readonly code: string; readonly message: string }[];
}

export interface VerdictPair {
  readonly a: string;
  readonly b: string;
  readonly difference: number;
  readonly interval: readonly [number, number];
  readonly verdict: "different" | "equal" | "unclear";
  readonly directionSure: boolean;
}

/** What was looked at and has readings, in the order in which it was asked. */
export const looksRead = (trial: Trial): readonly Look[] =>
  trial.asked.looksAt.filter((look) => trial.readings.some((r) => r.response === look.name));

/** What varied, and can be compared. */
export const factorsCompared = (trial: Trial): readonly string[] =>
  trial.asked.varies.filter((v) => v.levels.length > 1).map((v) => v.factor);

/** The coat after which a response was read last. */
export const lastCoatRead = (trial: Trial, look: Look): number => coatsRead(trial, look.name).at(-1) ?? 0;

export function questionOf(
  trial: Trial,
  look: Look,
  compare: string,
  afterCoat: number,
  analysis: Analysis,
): VerdictInput {
  return {
    response: {
      name: look.name,
      scale: look.scale,
      ...(look.levels === undefined ? {} : { levels: look.levels }),
      ...(look.matters === undefined ? {} : { matters: look.matters }),
    },
    compare,
    appliedTo: Object.fromEntries(trial.asked.varies.map((v) => [v.factor, v.appliedTo])),
    rows: trialRows(trial, look.name, compare, afterCoat, analysis),
  };
}

/** Whether leaving out what departed from the plan leaves other rows. */
export const treatedOtherwise = (laid: VerdictInput, treated: VerdictInput): boolean =>
  laid.rows.length !== treated.rows.length;

/** The larger first, so that every difference reads as so much more. */
export function turned(pair: VerdictPair): VerdictPair {
  if (pair.difference >= 0) return pair;
  const [low, high] = pair.interval;
  return { ...pair, a: pair.b, b: pair.a, difference: -pair.difference, interval: [-high, -low] };
}

const rank = { different: 0, equal: 1, unclear: 2 } as const;

/** The pairs as they are told: what is known first, and of that the largest. */
export const pairsTold = (answer: VerdictAnswer): readonly VerdictPair[] =>
  answer.pairs.map(turned).sort((x, y) => rank[x.verdict] - rank[y.verdict] || y.difference - x.difference);

/** Both ends of a scale that holds every interval and the band that matters, the same for all comparisons. */
export function scaleFor(answers: readonly VerdictAnswer[]): readonly [number, number] {
  const ends = answers.flatMap((a) => [-a.matters, a.matters, ...pairsTold(a).flatMap((p) => p.interval)]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const margin = (high - low) * 0.08;
  return [low - margin, high + margin];
}

/** Each thing that varied at its level with the highest mean: what stands first among what may be taken to a piece. */
export function leading(
  trial: Trial,
  answers: ReadonlyMap<string, VerdictAnswer>,
): Readonly<Record<string, string>> {
  return Object.fromEntries(
    trial.asked.varies
      .filter((v) => v.appliedTo !== "plank")
      .map((v) => {
        const levels = answers.get(v.factor)?.levels ?? [];
        const top = [...levels].sort((a, b) => b.mean - a.mean)[0]?.level;
        return [v.factor, trial.closed?.body.chosen?.[v.factor] ?? top ?? v.levels[0] ?? ""];
      }),
  );
}
