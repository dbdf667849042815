import { DomainError } from "../../domain-error.ts";
import type { Random } from "../../random.ts";
import {
  type CodedFactor,
  columnsOf,
  contrasts,
  type OptimalProblem,
  optimalLevels,
} from "../optimal/coordinate-exchange.ts";
import { type Factor, isWood, matches, type Plan, type Treatment, withinBoards } from "../plan.ts";
import { type Arrangement, refuseKind } from "./arrangement.ts";
import { dealToBoards } from "./deal-boards.ts";
import { drawPlaces } from "./place.ts";

/** Fresh starts: a few tenths of a second for fifty patches. */
const starts = 60;

/** Factors of the model: those that change on the board, and those of whole boards that are asked together with one. */
interface Asked {
  readonly factors: readonly Factor[];
  readonly inner: ReadonlySet<string>;
}

function askedOf(plan: Plan): Asked {
  const within = withinBoards(plan);
  const inner = new Set(within.map((f) => f.name));
  const outer = plan.factors.filter(
    (f) => !inner.has(f.name) && (plan.together ?? []).some((pair) => pair.includes(f.name)),
  );
  return { factors: [...within, ...outer], inner };
}

function checkTogether(plan: Plan, { factors, inner }: Asked): readonly (readonly [number, number])[] {
  return (plan.together ?? []).map(([a, b], i) => {
    const found = [a, b].map((name) => factors.findIndex((f) => f.name === name));
    const missing = [a, b][found.indexOf(-1)];
    if (missing !== undefined)
      throw new DomainError({
        code: "unknown-name",
        field: `together[${i}]`,
        value: missing,
        limits: { allowed: plan.factors.map((f) => f.name) },
      });
    if (a === b || !(inner.has(a) || inner.has(b)))
      refuseKind(
        "best",
        `together[${i}]`,
        [a, b],
        "It takes two different things, and at least one that changes on the board.",
      );
    return [found[0] as number, found[1] as number];
  });
}

/** What whole boards keep is in the boards' own columns: by itself it needs none. */
const coded = (factor: Factor, changes: boolean): CodedFactor => {
  const crossed = contrasts(factor.levels.length);
  return { own: changes ? crossed : crossed.map(() => []), crossed };
};

function problemOf(plan: Plan, asked: Asked, fixed: readonly Treatment[]): OptimalProblem {
  const boardOf = plan.boards.flatMap((b, i) => new Array<number>(b.patches).fill(i));
  const levelsOf = (levels: readonly number[]): Treatment =>
    Object.fromEntries(asked.factors.map((f, i) => [f.name, f.levels[levels[i] as number] as string]));
  const surroundings = plan.boards.map((b, i) => ({
    board: b.board,
    plank: b.plank,
    wood: b.wood,
    ...fixed[i],
  }));
  return {
    factors: asked.factors.map((f) => coded(f, asked.inner.has(f.name))),
    together: checkTogether(plan, asked),
    blockOf: boardOf,
    blocks: plan.boards.length,
    fixed: boardOf.map((b) =>
      asked.factors.map((f) =>
        asked.inner.has(f.name)
          ? null
          : f.levels.indexOf(
              isWood(f) ? (plan.boards[b]?.wood ?? "") : ((fixed[b] as Treatment)[f.name] as string),
            ),
      ),
    ),
    allowed: (run, levels) => {
      const there = { ...surroundings[boardOf[run] as number], ...levelsOf(levels) };
      return !plan.forbidden.some((p) => matches(p, there));
    },
  };
}

function checkEnough(plan: Plan, asked: Asked, problem: OptimalProblem): void {
  const columns = columnsOf(problem);
  const places = problem.blockOf.length;
  if (places >= columns) return;
  const parts = [
    `${plan.boards.length} for the boards`,
    ...asked.factors
      .filter((f) => asked.inner.has(f.name))
      .map((f) => `${f.levels.length - 1} for ${f.name}`),
    ...(plan.together ?? []).map(([a, b]) => `some for ${a} and ${b} together`),
  ];
  refuseKind(
    "best",
    "boards",
    places,
    `There are ${columns} things to find out (${parts.join(", ")}) and only ${places} patches: ${columns} would do.`,
  );
}

/**
 * The patches that tell most: of all combinations those that together give the largest determinant, boards allowed
 * for, whatever is forbidden, on boards of any size.
 *
 * @throws DomainError for fewer patches than things to find out, and for forbidden lists that leave nothing
 */
export function arrangeBest(plan: Plan, random: Random): Arrangement {
  const asked = askedOf(plan);
  const fixed = dealToBoards(plan, random);
  const problem = problemOf(plan, asked, fixed);
  checkEnough(plan, asked, problem);
  const found = optimalLevels(problem, starts, random);
  const can = found.filter((f) => f.logDeterminant > Number.NEGATIVE_INFINITY);
  if (can.length === 0)
    refuseKind(
      "best",
      "forbidden",
      plan.forbidden,
      "What is left cannot tell everything apart: forbid less, or ask less.",
    );
  const within = asked.factors.filter((f) => asked.inner.has(f.name));
  for (const [i, { levels }] of can.entries()) {
    try {
      return { rows: placed(plan, problem, within, levels, fixed, random) };
    } catch (error) {
      // neighbours that cannot be kept apart on one choice of patches may be on the next best
      if (
        !(error instanceof DomainError) ||
        error.detail.field !== "neighboursForbidden" ||
        i === can.length - 1
      )
        throw error;
    }
  }
  return { rows: [] };
}

function placed(
  plan: Plan,
  problem: OptimalProblem,
  within: readonly Factor[],
  levels: readonly (readonly number[])[],
  fixed: readonly Treatment[],
  random: Random,
): readonly (readonly Treatment[])[] {
  return plan.boards.map((board, b) => {
    const here = levels
      .filter((_, run) => problem.blockOf[run] === b)
      .map((run) => ({
        ...Object.fromEntries(within.map((f, i) => [f.name, f.levels[run[i] as number] as string])),
        ...fixed[b],
      }));
    return drawPlaces(board.board, here, plan.neighboursForbidden, random);
  });
}
