import type { Asked, Draft } from "./draft.ts";
import { readDraft } from "./draft.ts";
import type { Layout } from "./plan.ts";

/** A change of the plan that would catch the difference that it would miss now. */
export interface Mend {
  readonly change: Partial<Pick<Draft, "boardsPerWood" | "jarsPerLevel">>;
  readonly of: "boards" | "jars";
  readonly count: number;
  /** The factor that it is for. */
  readonly factor: string;
}

/** The factors that show less than what matters, of those that can be told at all. */
export const missed = (layout: Layout, matters: number): readonly string[] =>
  layout.smallestDifference
    .filter((s) => s.about === s.factor && (s.value ?? Number.POSITIVE_INFINITY) > matters)
    .map((s) => s.factor);

const furthest = 4;

/** What may mend it, the smallest first: more jars for what sits on jars, then more boards. */
export function mendsToTry(draft: Draft, asked: Asked, factor: string): readonly Mend[] {
  const onJars = asked.factors.some((f) => f.name === factor && f.appliedTo === "jar");
  const perWood = Number(draft.boardsPerWood);
  const steps = Array.from({ length: furthest }, (_, i) => i + 1);
  const jars = steps.map(
    (n): Mend => ({
      change: { jarsPerLevel: String(asked.jarsPerLevel + n) },
      of: "jars",
      count: asked.jarsPerLevel + n,
      factor,
    }),
  );
  const boards = steps.map(
    (n): Mend => ({
      change: { boardsPerWood: String(perWood + n) },
      of: "boards",
      count: perWood + n,
      factor,
    }),
  );
  return onJars ? [...jars, ...boards] : boards;
}

export const mended = (draft: Draft, mend: Mend): Asked | null =>
  readDraft({ ...draft, ...mend.change }).asked;
