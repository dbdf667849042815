import type { CoatWord } from "../../core/statistics/verdict/over-coats.ts";
import type { Trial } from "../../core/views/trial.ts";
import { coatsRead } from "../../core/views/trial-rows.ts";
import { reckon } from "../trials/reckoner.ts";
import { type Look, questionOf, type VerdictAnswer, type VerdictPair } from "./questions.ts";

/** One pair of levels after one coat. */
export interface CoursePoint {
  readonly coat: number;
  readonly pair: VerdictPair;
}

/** One pair of levels coat by coat, always the same way round. */
export interface Course {
  readonly factor: string;
  readonly matters: number;
  readonly points: readonly CoursePoint[];
  /** One a coat that was read; a coat of which nothing can be told is unclear, and ends what is equal. */
  readonly words: readonly CoatWord[];
}

/** The pair with `a` first, whichever way the calculation gave it. */
function facing(answer: VerdictAnswer, a: string, b: string): VerdictPair | undefined {
  const found = answer.pairs.find((p) => (p.a === a && p.b === b) || (p.a === b && p.b === a));
  if (found === undefined || found.a === a) return found;
  const [low, high] = found.interval;
  return { ...found, a, b, difference: -found.difference, interval: [-high, -low] };
}

/** The course of one pair over every coat after which it was read; null when there was one coat only. */
export async function courseOf(
  trial: Trial,
  look: Look,
  factor: string,
  pair: { readonly a: string; readonly b: string },
): Promise<Course | null> {
  const coats = coatsRead(trial, look.name);
  if (coats.length < 2) return null;
  const points: CoursePoint[] = [];
  const told: CoatWord[] = [];
  let matters = 0;
  for (const coat of coats) {
    const answer = await reckon<VerdictAnswer>(
      "verdict",
      questionOf(trial, look, factor, coat, "as laid out"),
    );
    const seen = answer.ok ? facing(answer.value, pair.a, pair.b) : undefined;
    if (answer.ok) matters = answer.value.matters;
    told.push({ coat, verdict: seen?.verdict ?? "unclear" });
    if (seen !== undefined) points.push({ coat, pair: seen });
  }
  return points.length < 2 ? null : { factor, matters, points, words: told };
}
