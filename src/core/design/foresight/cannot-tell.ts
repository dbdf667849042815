import type { Factor, LaidPatch, Plan } from "../plan.ts";
import { indicators, spanOf } from "./span.ts";
import { stratumOf, unitOfFactor } from "./strata.ts";

/** An effect that this layout cannot part from something else, whatever is seen. */
export interface CannotTell {
  readonly term: string;
  /** Other factors, or the thing that carries the level: `jar`, `plank`, `board`, `patch`. */
  readonly with: readonly string[];
}

/**
 * Which effects a layout cannot tell apart, by the rank of its model matrix. A factor is the same thing as another
 * when their columns span no more together than alone, and the same thing as its jar (plank, board) when the jars
 * add nothing to the rank beyond the factors: then there is one jar for each level, however many patches.
 *
 * @param patches  the layout, n
 * @returns        one item for each factor with two levels or more that is not free
 *
 * Source:   aliasing by rank, R. A. Bailey, Design of Comparative Experiments (2008), ch. 10 and 14
 */
export function cannotTell(plan: Plan, patches: readonly LaidPatch[]): readonly CannotTell[] {
  const asked = plan.factors.filter((f) => f.levels.length > 1);
  return asked.flatMap((factor) => {
    const same = [...sameFactors(asked, patches, factor), ...sameUnit(plan, patches, factor)];
    return same.length === 0 ? [] : [{ term: factor.name, with: same }];
  });
}

const columns = (patches: readonly LaidPatch[], factor: Factor) =>
  indicators(patches.map((p) => p.treatment[factor.name] as string));

/** How many of a factor's differences remain once other columns are allowed for. */
function free(
  others: readonly (readonly number[])[],
  own: readonly (readonly number[])[],
  n: number,
): number {
  const span = spanOf([new Array<number>(n).fill(1), ...others]);
  return spanOf(own, span).length - span.length;
}

function sameFactors(asked: readonly Factor[], patches: readonly LaidPatch[], factor: Factor): string[] {
  const own = columns(patches, factor);
  const others = asked.filter((f) => f.name !== factor.name);
  const n = patches.length;
  const alone = factor.levels.length - 1;
  if (
    free(
      others.flatMap((f) => columns(patches, f)),
      own,
      n,
    ) === alone
  )
    return [];
  const each = others.filter((f) => free(columns(patches, f), own, n) < alone);
  return (each.length > 0 ? each : others).map((f) => f.name);
}

function sameUnit(plan: Plan, patches: readonly LaidPatch[], factor: Factor): string[] {
  const stratum = stratumOf(plan, patches, factor);
  const own = spanOf(columns(patches, factor), stratum.others).length - stratum.others.length;
  const lostInBoards =
    own < factor.levels.length - 1 && isWithinBoards(plan, factor) && !isLostInFactors(plan, patches, factor);
  return [...(stratum.df === 0 ? [stratum.unit] : []), ...(lostInBoards ? ["board"] : [])];
}

const isWithinBoards = (plan: Plan, factor: Factor): boolean =>
  unitOfFactor(factor) === "patch" || (unitOfFactor(factor) === "jar" && plan.kind !== "steps");

const isLostInFactors = (plan: Plan, patches: readonly LaidPatch[], factor: Factor): boolean =>
  sameFactors(
    plan.factors.filter((f) => f.levels.length > 1),
    patches,
    factor,
  ).length > 0;
