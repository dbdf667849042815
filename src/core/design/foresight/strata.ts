import { type Factor, factorsOn, isWood, type LaidPatch, type Plan } from "../plan.ts";
import { indicators, type Span, spanOf } from "./span.ts";

/**
 * What a difference between the levels of a factor is compared with: the thing that was made afresh for each level.
 * `df` counts how many of those things there are beyond what the plan itself asks; with none, the factor and the
 * thing are one and the same.
 */
export interface Stratum {
  readonly unit: "jar" | "plank" | "board" | "patch";
  /** The unit of each patch, n. */
  readonly unitOf: readonly string[];
  readonly df: number;
  /** All but the factor itself that the comparison allows for: boards or woods, and the other factors. */
  readonly others: Span;
}

/** What each patch shares: its jar's mixing, its plank, its board. */
export function unitLabels(plan: Plan, patches: readonly LaidPatch[], factor: Factor): readonly string[] {
  const boards = new Map(plan.boards.map((b) => [b.board, b]));
  switch (unitOfFactor(factor)) {
    case "jar":
      return patches.map((p) => mixing(plan, p, factor));
    case "plank":
      return patches.map((p) => boards.get(p.board)?.plank as string);
    case "board":
      return patches.map((p) => p.board);
    case "patch":
      return patches.map((p) => p.patch);
  }
}

/** What the levels of a factor are made apart in: a wood, in planks. */
export const unitOfFactor = (factor: Factor): Stratum["unit"] =>
  isWood(factor) ? "plank" : factor.appliedTo;

/** Two jars let down from one stock are one mixing, unless the factor in question is what was let down. */
function mixing(plan: Plan, patch: LaidPatch, factor: Factor): string {
  const own = factorsOn(plan, "jar").filter((f) => !f.fromOneStock || f.name === factor.name);
  const number = patch.jar.slice(patch.jar.lastIndexOf(" ") + 1);
  return JSON.stringify([...own.map((f) => patch.treatment[f.name]), number]);
}

const levelsOf = (patches: readonly LaidPatch[], f: Factor): readonly string[] =>
  patches.map((p) => p.treatment[f.name] as string);

/** Within boards the boards are allowed for; between planks the woods, between boards the planks. */
export function stratumOf(plan: Plan, patches: readonly LaidPatch[], factor: Factor): Stratum {
  const unit = unitOfFactor(factor);
  const unitOf = unitLabels(plan, patches, factor);
  const within = unit === "patch" || (unit === "jar" && plan.kind !== "steps"); // on step boards a jar fills a whole board
  const boards = new Map(plan.boards.map((b) => [b.board, b]));
  const surroundings = patches.map((p) => {
    const b = boards.get(p.board);
    return (within ? b?.board : unit === "board" ? b?.plank : b?.wood) as string;
  });
  const others = plan.factors.filter((f) => f.name !== factor.name && (within || unitOfFactor(f) === unit));
  const blocks = factor.name === "wood" ? [] : indicators(surroundings);
  const span = spanOf([
    patches.map(() => 1),
    ...blocks,
    ...others.flatMap((f) => indicators(levelsOf(patches, f))),
  ]);
  const withFactor = spanOf(indicators(levelsOf(patches, factor)), span);
  const withUnits = spanOf(indicators(unitOf), withFactor);
  return { unit, unitOf, df: withUnits.length - withFactor.length, others: span };
}
