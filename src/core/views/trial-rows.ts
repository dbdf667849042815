import type { Body } from "../notebook/kinds/all.ts";
import type { Reading } from "./judging.ts";
import type { Trial } from "./trial.ts";
import type { PatchState } from "./trial-patches.ts";

/** One reading with everything that it must be analysed by: the input of a verdict. */
export interface TrialRow {
  readonly patch: string;
  /** The mixing that it shares with others: its stock, and its level where the stock was let down to several. */
  readonly jar: string;
  readonly plank: string;
  readonly block: string;
  /** Null where nobody said who read it. */
  readonly judge: string | null;
  readonly occasion: number;
  readonly daysSinceCoat: number | null;
  readonly factors: Readonly<Record<string, string>>;
  readonly value: number | string;
}

/**
 * `as laid out` keeps every reading of what each patch was meant to get; only patches left out before the key was
 * opened are missing. `as treated` also leaves out patches that did not get what was meant, and those left out since.
 */
export type Analysis = "as laid out" | "as treated";

/** The coats after which a response was read, in order. */
export const coatsRead = (trial: Trial, response: string): readonly number[] =>
  [...new Set(trial.readings.filter((r) => r.response === response).map((r) => r.afterCoat))].sort(
    (a, b) => a - b,
  );

/**
 * The rows of one response for comparing the levels of one factor, joined with the opened key.
 *
 * @param compare    a factor of the trial
 * @param afterCoat  which coat the readings follow
 * @returns          rows, n; none while the key is shut
 */
export function trialRows(
  trial: Trial,
  response: string,
  compare: string,
  afterCoat: number,
  analysis: Analysis,
): readonly TrialRow[] {
  const patches = new Map(trial.patches.map((p) => [p.patch, p]));
  return trial.readings.flatMap((r) => {
    const patch = patches.get(r.patch);
    if (patch === undefined || r.response !== response || r.afterCoat !== afterCoat) return [];
    if (patch.treatment === null || !counts(patch, analysis)) return [];
    return [rowOf(trial, patch, patch.treatment, r, compare)];
  });
}

function counts(patch: PatchState, analysis: Analysis): boolean {
  if (analysis === "as laid out") return patch.leftOut === null || patch.leftOut.keyOpen;
  return patch.leftOut === null && patch.departures.length === 0;
}

function rowOf(
  trial: Trial,
  patch: PatchState,
  treatment: Readonly<Record<string, string>>,
  r: Reading,
  compare: string,
): TrialRow {
  return {
    patch: patch.patch,
    jar: mixingOf(trial, patch, treatment, compare),
    plank: patch.plank,
    block: patch.board,
    judge: r.who,
    occasion: r.occasion,
    daysSinceCoat: r.daysSinceLayer,
    factors: treatment,
    value: r.level ?? r.rank ?? r.value ?? Number.NaN,
  };
}

/** Jars let down from one stock are one mixing for every factor but the one that was let down. */
function mixingOf(
  trial: Trial,
  patch: PatchState,
  treatment: Readonly<Record<string, string>>,
  compare: string,
): string {
  const jar = trial.jars.find((j) => j.jar === patch.jar);
  const level = treatment[compare] ?? "";
  const onJars = trial.asked.varies.some((v) => v.factor === compare && v.appliedTo === "jar");
  if (jar?.stock !== null && jar?.stock !== undefined) return onJars ? `${jar.stock} ${level}` : jar.stock;
  const shared = trial.asked.varies.filter((v) => v.fromOneStock === true && v.factor !== compare);
  const number = (patch.jar ?? "").slice((patch.jar ?? "").lastIndexOf(" ") + 1);
  const own = trial.asked.varies.filter((v) => v.appliedTo === "jar" && !shared.includes(v));
  return [...own.map((v) => treatment[v.factor] ?? ""), number].join(" ");
}

export interface BlindingHad {
  readonly had: "none" | "codes only" | "helper held the key";
  readonly planned: Body<"trial-laid-out">["blinding"];
  /** Readings by somebody who could know the recipe, of all. */
  readonly knowing: number;
  readonly readings: number;
  /** Codes and the key's hash stood before the first layer. */
  readonly laidDownFirst: boolean;
}

/** What blinding a trial really had, whatever was planned; null before it is laid out. */
export function blindingHad(trial: Trial): BlindingHad | null {
  if (trial.laidOut === null) return null;
  const planned = trial.laidOut.body.blinding;
  const knowing = trial.readings.filter((r) => r.seen === "recipe" || r.keyOpen).length;
  const firstLayer = trial.patches
    .flatMap((p) => p.layers.map((l) => l.at))
    .sort()
    .at(0);
  const none = planned === "none" || (knowing > 0 && knowing === trial.readings.length);
  return {
    had: none ? "none" : planned === "helper holds the key" ? "helper held the key" : "codes only",
    planned,
    knowing: planned === "none" ? trial.readings.length : knowing,
    readings: trial.readings.length,
    laidDownFirst: firstLayer === undefined || trial.laidOut.at <= firstLayer,
  };
}
