import type { Body } from "../../core/notebook/kinds/all.ts";
import { type Random, shuffled } from "../../core/random.ts";
import type { Trial } from "../../core/views/trial.ts";
import type { PatchState } from "../../core/views/trial-patches.ts";

export type Look = Body<"trial-asked">["looksAt"][number];

/** How one judge reads one thing in one sitting. */
export interface Sitting {
  readonly response: string;
  readonly who: string;
  readonly light: string;
  readonly occasion: number;
  /** Patches in the order drawn for this sitting. */
  readonly order: readonly string[];
}

const readOnce = (trial: Trial, response: string, who: string, occasion: number): ReadonlySet<string> =>
  new Set(
    trial.readings
      .filter((r) => r.response === response && (r.who ?? "") === who && r.occasion === occasion)
      .filter((r) => r.afterCoat === (trial.patches.find((p) => p.patch === r.patch)?.coats ?? 0))
      .map((r) => r.patch),
  );

const inTrial = (trial: Trial): readonly PatchState[] => trial.patches.filter((p) => p.leftOut === null);

/** Patches that this judge has not read of this thing, at their coats, on this occasion. */
export const toRead = (trial: Trial, response: string, who: string, occasion: number): readonly string[] => {
  const read = readOnce(trial, response, who, occasion);
  return inTrial(trial)
    .map((p) => p.patch)
    .filter((patch) => !read.has(patch));
};

/** The first occasion that this judge has not ended. */
export function nextOccasion(trial: Trial, response: string, who: string): number {
  let occasion = 1;
  while (inTrial(trial).length > 0 && toRead(trial, response, who, occasion).length === 0) occasion++;
  return occasion;
}

export const drawnOrder = (
  trial: Trial,
  response: string,
  who: string,
  occasion: number,
  random: Random,
): readonly string[] => shuffled(toRead(trial, response, who, occasion), random);

/** What is typed into a number field: the number, or null when it is none. */
export function numberTyped(text: string): number | null {
  const value = Number(text.trim().replace(",", ".").replace("−", "-"));
  return text.trim() === "" || !Number.isFinite(value) ? null : value;
}

interface About {
  readonly trial: Trial;
  readonly patch: PatchState;
  readonly sitting: Sitting;
}

const readingOf = ({ trial, patch, sitting }: About) => ({
  patch: patch.patch,
  response: sitting.response,
  ...(sitting.who === "" ? {} : { who: sitting.who }),
  light: sitting.light,
  seen: trial.key.state === "open" ? ("recipe" as const) : ("code" as const),
  order: sitting.order.indexOf(patch.patch) + 1,
  occasion: sitting.occasion,
  afterCoat: patch.coats,
});

export const measuredBody = (about: About, look: Look, typed: string, value: number): Body<"measured"> => ({
  ...readingOf(about),
  value: { typed: typed.trim(), unit: look.unit ?? "", si: value },
});

export const judgedBody = (about: About, level: string): Body<"judged"> => ({ ...readingOf(about), level });
