import { DomainError } from "../../domain-error.ts";
import { layOut } from "../layout.ts";
import { type Board, factorsOn, type Plan } from "../plan.ts";
import { cannotTell } from "./cannot-tell.ts";
import { type Noise, type SmallestDifference, smallestDifferences } from "./smallest-difference.ts";

/** A larger or smaller version of a plan, and what it can show. */
export interface CurvePoint {
  readonly jarsPerLevel: number;
  readonly boards: number;
  readonly smallestDifference: readonly SmallestDifference[];
}

const mostJars = 5;
const mostTimes = 3;
const mostPatches = 192;

/** The same boards again, from planks of their own, named on. */
export function boardsTimes(boards: readonly Board[], times: number): readonly Board[] {
  return Array.from({ length: times }, (_, round) =>
    boards.map((b) =>
      round === 0 ? b : { ...b, board: `${b.board} (${round + 1})`, plank: `${b.plank} (${round + 1})` },
    ),
  ).flat();
}

const patchesOf = (boards: readonly Board[]): number => boards.reduce((sum, b) => sum + b.patches, 0);

/** A plan laid out once, by a fixed lot, or nothing where it cannot be. */
function tried(plan: Plan): ReturnType<typeof layOut> | null {
  try {
    return layOut(plan, "what it can show");
  } catch (error) {
    if (error instanceof DomainError) return null;
    throw error;
  }
}

/**
 * The smallest difference that a plan can show as it grows: with one to five jars of each recipe, and with its boards
 * once, twice and three times.
 *
 * @param noise  as `smallestDifferences`
 * @returns      points in order of jars, then boards; plans that cannot be laid out are left out
 *
 * Valid:    what `layOut` and `smallestDifferences` take
 * Accuracy: one lot of each plan stands for all; lots of one plan differ little
 * Source:   as `smallestDifferences`
 */
export function differenceCurve(plan: Plan, noise: Noise): readonly CurvePoint[] {
  const onJars = factorsOn(plan, "jar").length > 0;
  const jars = onJars ? Array.from({ length: mostJars }, (_, i) => i + 1) : [plan.jarsPerLevel];
  return jars.flatMap((jarsPerLevel) =>
    Array.from({ length: mostTimes }, (_, i) => boardsTimes(plan.boards, i + 1)).flatMap((boards) => {
      if (patchesOf(boards) > mostPatches) return [];
      const larger = { ...plan, jarsPerLevel, boards };
      const patches = tried(larger);
      return patches === null
        ? []
        : [
            {
              jarsPerLevel,
              boards: boards.length,
              smallestDifference: smallestDifferences(larger, patches, noise),
            },
          ];
    }),
  );
}

/** What may be wrong with a plan, the worst first. */
export const faultKinds = ["cannot-tell", "nothing-left-over", "would-miss"] as const;

/** What is worst about a plan. */
export interface Fault {
  readonly kind: (typeof faultKinds)[number];
  readonly factor: string;
  /** What it cannot be told from. */
  readonly with: readonly string[];
}

/** A change of the plan that takes its worst fault away, and adds least. */
export interface Mend {
  readonly change: "jars" | "planks" | "boards" | "jars and boards";
  readonly jarsPerLevel: number;
  readonly boards: readonly Board[];
}

export interface Faulted {
  readonly fault: Fault;
  /** Null where none of the changes that are tried takes it away. */
  readonly mend: Mend | null;
}

/** The worst fault first: what cannot be told at all, then what has nothing to be judged by, then what is missed. */
function worstFault(
  plan: Plan,
  patches: ReturnType<typeof layOut>,
  noise: Noise | null,
  matters: number | null,
): Fault | null {
  const mixed = cannotTell(plan, patches)[0];
  if (mixed !== undefined) return { kind: "cannot-tell", factor: mixed.term, with: mixed.with };
  if (noise === null) return null;
  const shown = smallestDifferences(plan, patches, noise);
  const blind = shown.find((s) => s.value === null);
  if (blind !== undefined) return { kind: "nothing-left-over", factor: blind.factor, with: [] };
  const short = shown.find((s) => matters !== null && (s.value ?? 0) > matters);
  return short === undefined ? null : { kind: "would-miss", factor: short.factor, with: [] };
}

/** The same boards and more of each wood, so many, each from a plank of its own. */
function boardsAnd(boards: readonly Board[], more: number): readonly Board[] {
  const firsts = boards.filter((b, i) => boards.findIndex((o) => o.wood === b.wood) === i);
  return [
    ...boards,
    ...Array.from({ length: more }, (_, n) => boardsTimes(firsts, n + 2).slice(-firsts.length)).flat(),
  ];
}

const isSame = (a: Fault, b: Fault): boolean => a.kind === b.kind && a.factor === b.factor;

/** Every board from a plank of its own. */
const ownPlanks = (boards: readonly Board[]): readonly Board[] =>
  boards.map((b, i) =>
    boards.findIndex((o) => o.plank === b.plank) === i ? b : { ...b, plank: `${b.plank} (${b.board})` },
  );

function changesOf(plan: Plan): readonly Mend[] {
  const now = { jarsPerLevel: plan.jarsPerLevel, boards: plan.boards };
  const onJars = factorsOn(plan, "jar").length > 0;
  const jars = [1, 2, 3].map((n): Mend => ({ ...now, change: "jars", jarsPerLevel: plan.jarsPerLevel + n }));
  const boards = [1, 2, 3, 4, 6].map(
    (n): Mend => ({ ...now, change: "boards", boards: boardsAnd(plan.boards, n) }),
  );
  const both = [2, 3, 4, 5, 6].flatMap((sum) =>
    jars.slice(0, sum - 1).map(
      (more, i): Mend => ({
        ...more,
        change: "jars and boards",
        boards: boardsAnd(plan.boards, sum - 1 - i),
      }),
    ),
  );
  const planks: Mend = { ...now, change: "planks", boards: ownPlanks(plan.boards) };
  const woods = new Set(plan.boards.map((b) => b.plank)).size < plan.boards.length ? [planks] : [];
  return onJars ? [...jars, ...woods, ...boards, ...both] : [...woods, ...boards];
}

/**
 * The worst fault of a plan, and the nearest plan without it: more jars first, then a plank for each board, then more
 * boards of each wood, then jars and boards together, the fewest first.
 *
 * @param noise    what `smallestDifferences` takes; null where nothing is known of it
 * @param matters  the difference that must not be missed, in the same unit; null where it is not told
 * @returns        null where the plan has no fault
 *
 * Valid:    what `layOut` takes
 * Source:   Lacbench's own order of changes: what costs liquid alone before what costs wood
 */
export function worstFaultMended(
  plan: Plan,
  patches: ReturnType<typeof layOut>,
  noise: Noise | null,
  matters: number | null,
): Faulted | null {
  const fault = worstFault(plan, patches, noise, matters);
  if (fault === null) return null;
  const mend = changesOf(plan).find((change) => {
    const next = { ...plan, jarsPerLevel: change.jarsPerLevel, boards: change.boards };
    const laid = patchesOf(change.boards) > mostPatches ? null : tried(next);
    const left = laid === null ? fault : worstFault(next, laid, noise, matters);
    return (
      left === null ||
      (faultKinds.indexOf(left.kind) >= faultKinds.indexOf(fault.kind) && !isSame(left, fault))
    );
  });
  return { fault, mend: mend ?? null };
}
