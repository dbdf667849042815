import { DomainError } from "../domain-error.ts";
import { type Random, randomFromSeed, shuffled } from "../random.ts";
import { checkPlan } from "./check-plan.ts";
import { drawCodes } from "./codes.ts";
import { dealJars, jarOf } from "./deal-jars.ts";
import { drawOrders } from "./orders.ts";
import { drawPlaces } from "./place.ts";
import {
  type Board,
  combinations,
  factorsOn,
  isWood,
  type LaidPatch,
  matches,
  type Plan,
  type Treatment,
} from "./plan.ts";
import { type Block, shareOut } from "./share-out.ts";

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
  const fixed = dealToBoards(plan, random);
  const candidates = combinations(factorsOn(plan, "jar", "patch"));
  const blocks = plan.boards.map((b, i) => blockOf(plan, b, fixed[i] as Treatment, candidates));
  checkPlaces(plan, candidates, blocks);
  const held = shareOut(blocks, candidates.length, random);
  const rows = plan.boards.map((b, i) => {
    const here = candidates.map((t) => ({ ...t, ...fixed[i] }));
    const there = (held[i] as readonly number[]).map((t) => here[t] as Treatment);
    return drawPlaces(b.board, there, plan.neighboursForbidden, random);
  });
  return writeDown(plan, rows, random);
}

function writeDown(
  plan: Plan,
  rows: readonly (readonly Treatment[])[],
  random: Random,
): readonly LaidPatch[] {
  const places = plan.boards.flatMap((b, i) =>
    (rows[i] as readonly Treatment[]).map((t, p) => ({ b, place: p + 1, t: inFactorOrder(plan, t) })),
  );
  const jars = dealJars(
    plan,
    places.map((p) => p.t),
    places.map((p) => p.b.wood),
    random,
  );
  const codes = drawCodes(places.length, random);
  const orders = drawOrders(
    places.map((p) => p.b.board),
    plan.sessions,
    random,
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

const inFactorOrder = (plan: Plan, t: Treatment): Treatment =>
  Object.fromEntries(plan.factors.map((f) => [f.name, t[f.name] as string]));

/** What belongs to a whole board: its wood as it is, the rest dealt to planks and boards as evenly as they come. */
function dealToBoards(plan: Plan, random: Random): readonly Treatment[] {
  const onPlanks = deal(plan, (b) => b.plank, factorsOn(plan, "plank"), random);
  const onBoards = deal(plan, (b) => b.board, factorsOn(plan, "board"), random);
  const wood = plan.factors.find(isWood);
  return plan.boards.map((b) => ({
    ...(wood === undefined ? {} : { [wood.name]: b.wood }),
    ...onPlanks.get(b.plank),
    ...onBoards.get(b.board),
  }));
}

/** Deals combinations to planks or boards, wood by wood and plank by plank, so that each wood gets them evenly. */
function deal(
  plan: Plan,
  nameOf: (b: Board) => string,
  factors: Plan["factors"],
  random: Random,
): ReadonlyMap<string, Treatment> {
  const things = new Map(plan.boards.map((b) => [nameOf(b), b]));
  const hands = shuffled(combinations(factors), random);
  if (factors.length > 0 && hands.length > things.size)
    throw new DomainError({
      code: "not-enough-data",
      field: "boards",
      value: things.size,
      limits: { min: hands.length },
      because: `${factors.map((f) => f.name).join(" and ")} needs ${hands.length} of them.`,
    });
  const inTurn = drawnGroups([...things.values()], (b) => b.wood, random).flatMap((ofWood) =>
    drawnGroups(ofWood, (b) => b.plank, random).flat(),
  );
  return new Map(inTurn.map((b, i) => [nameOf(b), hands[i % hands.length] as Treatment]));
}

/** The boards that agree in something together, groups and members both in drawn order. */
const drawnGroups = (
  boards: readonly Board[],
  by: (b: Board) => string,
  random: Random,
): readonly (readonly Board[])[] =>
  shuffled([...new Set(boards.map(by))], random).map((g) =>
    shuffled(
      boards.filter((b) => by(b) === g),
      random,
    ),
  );

function blockOf(plan: Plan, b: Board, fixed: Treatment, candidates: readonly Treatment[]): Block {
  const surroundings = { board: b.board, plank: b.plank, wood: b.wood, ...fixed };
  const allowed = candidates.flatMap((t, i) =>
    plan.forbidden.some((p) => matches(p, { ...surroundings, ...t })) ? [] : [i],
  );
  if (allowed.length === 0)
    throw new DomainError({
      code: "contradiction",
      field: "forbidden",
      value: b.board,
      because: `It leaves nothing that may stand on board ${b.board}.`,
    });
  return { places: b.patches, allowed };
}

function checkPlaces(plan: Plan, candidates: readonly Treatment[], blocks: readonly Block[]): void {
  const possible = new Set(blocks.flatMap((b) => b.allowed));
  const nowhere = candidates.find((_, i) => !possible.has(i));
  if (nowhere !== undefined && plan.forbidden.every((p) => !matches(p, nowhere)))
    throw new DomainError({
      code: "contradiction",
      field: "forbidden",
      value: nowhere,
      because: "It is forbidden on every board.",
    });
  const places = plan.boards.reduce((sum, b) => sum + b.patches, 0);
  if (places < possible.size)
    throw new DomainError({
      code: "not-enough-data",
      field: "boards",
      value: places,
      limits: { min: possible.size },
      because: `There are ${possible.size} treatments and only ${places} ${places === 1 ? "place" : "places"} for them.`,
    });
}
