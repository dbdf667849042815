import { DomainError } from "../../domain-error.ts";
import { type Random, shuffled } from "../../random.ts";
import {
  type Board,
  combinations,
  type Factor,
  factorsOn,
  isWood,
  type Plan,
  type Treatment,
} from "../plan.ts";

/**
 * What belongs to a whole board: its wood as it is, the rest dealt to planks and boards as evenly as they come.
 *
 * @param alsoWhole  factors that otherwise change from patch to patch, and here from board to board
 * @returns          a treatment for each board, without what changes on it
 * @throws DomainError for fewer planks or boards than combinations
 */
export function dealToBoards(
  plan: Plan,
  random: Random,
  alsoWhole: readonly Factor[] = [],
): readonly Treatment[] {
  const onPlanks = deal(plan, (b) => b.plank, factorsOn(plan, "plank"), random);
  const onBoards = deal(plan, (b) => b.board, [...alsoWhole, ...factorsOn(plan, "board")], random);
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
