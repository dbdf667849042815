import { DomainError } from "../../domain-error.ts";
import { type Random, shuffled } from "../../random.ts";
import { balancedBlocks, numbersOf } from "../catalogue/block-design.ts";
import { blockExistence } from "../catalogue/block-existence.ts";
import { type Board, combinations, matches, type Plan, type Treatment, withinBoards } from "../plan.ts";
import type { Arrangement } from "./arrangement.ts";
import { dealToBoards } from "./deal-boards.ts";
import { drawPlaces } from "./place.ts";
import { type Block, shareOut } from "./share-out.ts";

/** Every board holds everything that it can; what is left over is shared out as evenly as possible. */
export function arrangeInBlocks(plan: Plan, random: Random): Arrangement {
  const fixed = dealToBoards(plan, random);
  const candidates = combinations(withinBoards(plan)).flatMap((t) =>
    new Array<Treatment>(timesOf(plan, t)).fill(t),
  );
  const blocks = plan.boards.map((b, i) => blockOf(plan, b, fixed[i] as Treatment, candidates));
  checkPlaces(plan, candidates, blocks);
  const held =
    evenPairs(plan, blocks, candidates.length, random) ?? shareOut(blocks, candidates.length, random);
  return {
    rows: plan.boards.map((b, i) => {
      const here = candidates.map((t) => ({ ...t, ...fixed[i] }));
      const there = (held[i] as readonly number[]).map((t) => here[t] as Treatment);
      return drawPlaces(b.board, there, plan.neighboursForbidden, random);
    }),
  };
}

/** How often a treatment stands for once of the rest. */
const timesOf = (plan: Plan, treatment: Treatment): number =>
  Math.max(1, ...(plan.moreOften ?? []).filter(({ what }) => matches(what, treatment)).map((m) => m.times));

/**
 * Boards that are too small for everything, with every pair together equally often, names and boards by lot; null
 * where the boards do not come to such a plan, or none is known, unless it is asked for: then it is refused.
 */
function evenPairs(
  plan: Plan,
  blocks: readonly Block[],
  treatments: number,
  random: Random,
): readonly (readonly number[])[] | null {
  const asked = plan.kind === "even-pairs";
  const size = blocks[0]?.places ?? 0;
  const alike = blocks.every((b) => b.places === size && b.allowed.length === treatments);
  if (!alike && asked)
    refuse(
      "Even pairs take boards of one size, with nothing forbidden on them. Every board as it comes, or the best use of the places, would do.",
    );
  if (!alike || size > treatments || (size === treatments && !asked)) {
    if (asked)
      refuse(
        `The boards hold ${size} patches, and there are only ${treatments} to tell apart: every board would do.`,
      );
    return null;
  }
  const numbers = numbersOf(
    treatments,
    size,
    (blocks.length * size * (size - 1)) / (treatments * (treatments - 1)),
  );
  if (!asked && (!isWhole(numbers) || blockExistence(numbers).verdict !== "exists")) return null;
  if (!isWhole(numbers)) refuse(noSuchNumbers(treatments, size, blocks.length));
  try {
    const names = shuffled([...Array(treatments).keys()], random);
    return shuffled(balancedBlocks(numbers), random).map((block) => block.map((t) => names[t] as number));
  } catch (error) {
    if (!(error instanceof DomainError) || asked) throw error;
    return null; // there is one that cannot be made here: exchanges come near it
  }
}

const isWhole = (numbers: ReturnType<typeof numbersOf>): boolean =>
  numbers.blockSize > 1 && Object.values(numbers).every((n) => Number.isInteger(n));

const farthest = 200;

function noSuchNumbers(treatments: number, size: number, boards: number): string {
  const told = `With ${treatments} on ${boards} boards of ${size} not every pair can meet equally often.`;
  for (let n = boards + 1; n <= farthest; n++) {
    const numbers = numbersOf(treatments, size, (n * size * (size - 1)) / (treatments * (treatments - 1)));
    if (isWhole(numbers) && blockExistence(numbers).verdict === "exists")
      return `${told} ${n} boards would do.`;
  }
  return told;
}

function refuse(because: string): never {
  throw new DomainError({ code: "contradiction", field: "boards", value: "even-pairs", because });
}

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
      because: `There are ${possible.size} treatments${(plan.moreOften ?? []).length === 0 ? "" : ", counted as often as each stands,"} and only ${places} ${places === 1 ? "place" : "places"} for them. A screen of their ends, or only the patches that tell most, takes fewer (kind "screen" or "best").`,
    });
}
