import type { NotebookEntry } from "../notebook/entry.ts";
import type { Named } from "./ingredient.ts";
import type { ResinMakeup } from "./makeup.ts";
import { type CutFigure, nothing, type Reckoned } from "./reckoning.ts";

/** Why an entry could not be used, or not as it stands. Nothing is thrown: the jar says so, and goes on without it. */
export const unusableReasons = [
  "not-an-amount",
  "flakes-by-volume",
  "strength-unreadable",
  "amount-not-written",
  "more-than-it-held",
  "parent-unknown",
  "ring",
  "heavier-than-it-should-be",
  "dry-not-lighter",
  "nothing-known-in-it",
  "look-out-of-order",
  "weighed-while-in-a-blind-trial",
] as const;
export type UnusableReason = (typeof unusableReasons)[number];
export interface Unusable {
  readonly entry: string;
  readonly reason: UnusableReason;
  /** How much is meant, where there is a figure: kilograms or cubic metres over what was there. */
  readonly by?: { readonly of: "mass" | "volume"; readonly si: number };
}

/** One thing that happened to the jar, and what was in it then. */
export interface JarStep {
  readonly entry: string;
  readonly kind: string;
  readonly at: string;
  readonly after: Reckoned;
  /** What left the glass in this step, by pouring. */
  readonly poured: Reckoned | null;
}

export interface DriedDown {
  readonly entry: string;
  readonly at: string;
  /** The cut as it was reckoned until then. */
  readonly reckoned: CutFigure;
  /** The cut by the dried spoonful alone. */
  readonly measured: CutFigure;
  /** Their mean, each weighted by the inverse of its variance. */
  readonly combined: CutFigure;
  /** The difference of the first two over its standard uncertainty. */
  readonly apart: number;
  /** They differ by more than both allow: twice that uncertainty. */
  readonly disagrees: boolean;
  /** What the jar stands at since: the mean, or what was measured where the two disagree. */
  readonly stands: "combined" | "measured";
}

/** A jar's weight at one time, with what was reckoned to be in it: later weighings are compared with it. */
export interface WeighedThen {
  readonly at: string;
  readonly grossKg: number;
  readonly standardUncertainty: number;
  readonly withLid: boolean;
  readonly contents: Reckoned;
}

/** Solvent that has left a jar by itself since it was shut, less what was added again. */
export interface SolventLost {
  readonly kg: number;
  readonly standardUncertainty: number;
  readonly since: string;
}

/** Everything that folding a jar's entries gives. */
export interface JarFold {
  readonly now: Reckoned;
  readonly steps: readonly JarStep[];
  readonly unusable: readonly Unusable[];
  readonly resins: readonly ResinMakeup[];
  readonly resinNames: readonly Named[];
  readonly solventNames: readonly Named[];
  /** When the oldest resin in it was put to solvent. */
  readonly resinSince: string | null;
  readonly weighed: WeighedThen | null;
  readonly lost: SolventLost | null;
  readonly driedDown: DriedDown | null;
  readonly emptied: string | null;
}

export const emptyFold: JarFold = {
  now: nothing,
  steps: [],
  unusable: [],
  resins: [],
  resinNames: [],
  solventNames: [],
  resinSince: null,
  weighed: null,
  lost: null,
  driedDown: null,
  emptied: null,
};

/** The jar as it was, with an entry set aside and why. */
export const cannotUse = (
  fold: JarFold,
  entry: NotebookEntry,
  reason: UnusableReason,
  by?: Unusable["by"],
): JarFold => ({
  ...fold,
  unusable: [...fold.unusable, { entry: entry.id, reason, ...(by === undefined ? {} : { by }) }],
});

/** The fold after a step; what is in the jar then is noted with it. */
export const stepped = (
  fold: JarFold,
  entry: NotebookEntry,
  now: Reckoned,
  poured: Reckoned | null = null,
): JarFold => ({
  ...fold,
  now,
  steps: [...fold.steps, { entry: entry.id, kind: entry.kind, at: entry.happened, after: now, poured }],
});

/** Several lists as one, each material named once, where it stood first. */
export const namedOnce = (...lists: readonly (readonly Named[])[]): readonly Named[] => {
  const seen = new Map<string, Named>();
  for (const named of lists.flat())
    if (!seen.has(named.material ?? named.name)) seen.set(named.material ?? named.name, named);
  return [...seen.values()];
};
