import { type Random, randomIndex, shuffled } from "../../random.ts";
import { screenRunsFor } from "../catalogue/plackett-burman.ts";
import { type Screen, screenFor } from "../catalogue/screen.ts";
import { type Plan, type Treatment, withinBoards } from "../plan.ts";
import { type Arrangement, refuseForbidden, refuseKind } from "./arrangement.ts";
import { dealToBoards } from "./deal-boards.ts";
import { drawPlaces } from "./place.ts";

const placesOf = (plan: Plan): number => plan.boards.reduce((sum, b) => sum + b.patches, 0);

/**
 * The screen that a plan comes to.
 *
 * @throws DomainError for factors of more than two levels, fewer than two of them, and too few places
 */
export function screenOfPlan(plan: Plan): Screen {
  const factors = withinBoards(plan);
  refuseForbidden("screen", plan);
  const many = factors.find((f) => f.levels.length !== 2);
  if (many !== undefined)
    refuseKind(
      "screen",
      "factors",
      many.name,
      `${many.name} has ${many.levels.length}: a screen takes two of each, the two that lie furthest apart.`,
    );
  if (factors.length < 2)
    refuseKind("screen", "factors", factors.length, "A screen takes two things or more.");
  const screen = screenFor(factors.length, placesOf(plan));
  if (screen === null)
    refuseKind(
      "screen",
      "boards",
      placesOf(plan),
      `${factors.length} things take ${screenRunsFor(factors.length)} patches at least, and the boards have ${placesOf(plan)}.`,
    );
  return screen;
}

/** The runs of the screen, each as often as the places allow, dealt to boards so that each holds as many of one level as of the other. */
export function arrangeScreen(plan: Plan, random: Random): Arrangement {
  const factors = withinBoards(plan);
  const { runs } = screenOfPlan(plan);
  const places = placesOf(plan);
  const turned = factors.map(() => (randomIndex(random, 2) === 0 ? 1 : -1));
  const signs = runs.map((run) => run.map((x, f) => x * (turned[f] as number)));
  const whole = Array.from({ length: Math.floor(places / runs.length) }, () => signs).flat();
  const dealt = evenOverBoards(
    [...whole, ...shuffled(signs, random).slice(0, places - whole.length)],
    plan.boards.map((b) => b.patches),
    random,
  );
  const fixed = dealToBoards(plan, random);
  const treatment = (run: readonly number[], b: number): Treatment => ({
    ...Object.fromEntries(
      factors.map((f, i) => [f.name, f.levels[(run[i] as number) > 0 ? 1 : 0] as string]),
    ),
    ...fixed[b],
  });
  return {
    rows: plan.boards.map((board, b) =>
      drawPlaces(
        board.board,
        (dealt[b] as readonly (readonly number[])[]).map((run) => treatment(run, b)),
        plan.neighboursForbidden,
        random,
      ),
    ),
  };
}

type Run = readonly number[];

const starts = 12;

/** How far boards are from holding as many of one level as of the other: Σ over boards and things of (Σ levels)². */
const unevenness = (held: readonly (readonly Run[])[]): number =>
  held.reduce((total, runs) => {
    const width = runs[0]?.length ?? 0;
    let sum = 0;
    for (let f = 0; f < width; f++) sum += runs.reduce((s, run) => s + (run[f] as number), 0) ** 2;
    return total + sum;
  }, 0);

function evenOverBoards(
  runs: readonly Run[],
  sizes: readonly number[],
  random: Random,
): readonly (readonly Run[])[] {
  let best: { held: Run[][]; cost: number } | null = null;
  for (let s = 0; s < starts; s++) {
    const drawn = shuffled(runs, random);
    const held = sizes.map((size) => drawn.splice(0, size));
    swapWhileItHelps(held);
    const cost = unevenness(held);
    if (best === null || cost < best.cost) best = { held, cost };
  }
  return best?.held ?? [];
}

function swapWhileItHelps(held: Run[][]): void {
  const sums = held.map((runs) =>
    (runs[0] ?? []).map((_, f) => runs.reduce((s, run) => s + (run[f] as number), 0)),
  );
  for (let helped = true; helped; ) {
    helped = false;
    for (const [a, one] of held.entries())
      for (const [b, other] of held.entries())
        if (a < b)
          for (const i of one.keys())
            for (const j of other.keys())
              helped = trySwap(one, other, i, j, sums[a] as number[], sums[b] as number[]) || helped;
  }
}

function trySwap(one: Run[], other: Run[], i: number, j: number, sumA: number[], sumB: number[]): boolean {
  const [x, y] = [one[i] as Run, other[j] as Run];
  let gain = 0;
  for (const [f, xf] of x.entries()) {
    const step = (y[f] as number) - xf;
    gain += 2 * step * ((sumA[f] as number) - (sumB[f] as number)) + 2 * step ** 2;
  }
  if (gain >= 0) return false;
  for (const [f, xf] of x.entries()) {
    const step = (y[f] as number) - xf;
    sumA[f] = (sumA[f] as number) + step;
    sumB[f] = (sumB[f] as number) - step;
  }
  [one[i], other[j]] = [y, x];
  return true;
}
