import { type Random, randomFromSeed } from "../random.ts";
import { arrangeBest } from "./arrange/arrange-best.ts";
import { arrangeInBlocks } from "./arrange/arrange-blocks.ts";
import { arrangeScreen } from "./arrange/arrange-screen.ts";
import { arrangeInDoubleSquares, arrangeInSquares } from "./arrange/arrange-square.ts";
import { arrangeSteps } from "./arrange/arrange-steps.ts";
import type { Arrangement } from "./arrange/arrangement.ts";
import { drawCodes } from "./arrange/codes.ts";
import { dealJars, jarOf } from "./arrange/deal-jars.ts";
import { drawOrders } from "./arrange/orders.ts";
import { checkPlan } from "./check-plan.ts";
import type { Board, LaidPatch, LayoutKind, Plan, Treatment } from "./plan.ts";

/**
 * A fair layout by lot. Each board is a block: it holds every treatment when it can, else the treatments are shared
 * out so that they come and meet as evenly as possible. Treatments are dealt to places, jars to the patches of
 * their recipe, codes to patches, and an order of coating is drawn for every session.
 *
 * @param plan  what varies and on what; n places in all
 * @param seed  the lot: the same seed gives the same layout, and nothing else does
 * @returns     n patches, in the order of the boards and their places
 * @throws DomainError for a plan that contradicts itself, for fewer places than treatments, for jars that cannot all
 *         be used, for more patches than codes, for forbidden lists that leave nothing
 *
 * Valid:    up to 192 patches
 * Source:   randomised blocks, R. A. Fisher, The Design of Experiments (1935), ch. IV; incomplete blocks as `shareOut`
 */
export function layOut(plan: Plan, seed: string): readonly LaidPatch[] {
  checkPlan(plan);
  const random = randomFromSeed(seed);
  return writeDown(plan, arrangers[plan.kind ?? "every-board"](plan, random), random);
}

const arrangers: Readonly<Record<LayoutKind, (plan: Plan, random: Random) => Arrangement>> = {
  "every-board": arrangeInBlocks,
  "even-pairs": arrangeInBlocks,
  square: arrangeInSquares,
  "double-square": arrangeInDoubleSquares,
  screen: arrangeScreen,
  best: arrangeBest,
  steps: arrangeSteps,
};

function writeDown(plan: Plan, { rows, turns }: Arrangement, random: Random): readonly LaidPatch[] {
  const places = plan.boards.flatMap((b, i) =>
    (rows[i] as readonly Treatment[]).map((t, p) => ({ b, place: p + 1, t: inFactorOrder(plan, t) })),
  );
  const jars = jarNumbers(plan, places, random);
  const codes = drawCodes(places.length, random);
  const orders = drawOrders(
    places.map((p) => p.b.board),
    plan.sessions,
    random,
    turns?.flat(),
  );
  return places.map(({ b, place, t }, i) => ({
    patch: `${b.board}-${place}`,
    board: b.board,
    place,
    treatment: t,
    jar: jarOf(plan, t, jars[i] as number),
    code: codes[i] as string,
    order: orders[i] as readonly number[],
  }));
}

interface Place {
  readonly b: Board;
  readonly t: Treatment;
}

/** The jar of every place; on step boards a whole board comes from one jar. */
function jarNumbers(plan: Plan, places: readonly Place[], random: Random): readonly number[] {
  const treatments = (list: readonly Place[]) => list.map((p) => p.t);
  const boards = (list: readonly Place[]) => list.map((p) => p.b);
  if (plan.kind !== "steps") return dealJars(plan, treatments(places), boards(places), random);
  const first = places.filter((p, i) => places.findIndex((q) => q.b === p.b) === i);
  const whole = { ...plan, factors: plan.factors.filter((f) => f.appliedTo !== "patch") };
  const ofBoard = dealJars(whole, treatments(first), boards(first), random, "board");
  return places.map((p) => ofBoard[first.findIndex((q) => q.b === p.b)] as number);
}

const inFactorOrder = (plan: Plan, t: Treatment): Treatment =>
  Object.fromEntries(plan.factors.map((f) => [f.name, t[f.name] as string]));
