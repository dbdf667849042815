import { type Random, shuffled } from "../../random.ts";
import { randomGraecoLatin, whyNoGraecoLatin } from "../catalogue/graeco-latin.ts";
import { randomLatinSquare } from "../catalogue/latin-square.ts";
import {
  combinations,
  type Factor,
  type LayoutKind,
  type Plan,
  type Treatment,
  withinBoards,
} from "../plan.ts";
import { type Arrangement, refuseForbidden, refuseKind } from "./arrangement.ts";
import { dealToBoards } from "./deal-boards.ts";
import { neighboursClash } from "./place.ts";

/** Squares drawn before forbidden neighbours are given up. */
const draws = 400;

/** What stands at a place, and the mark of its turn. */
interface Cell {
  readonly treatment: Treatment;
  readonly mark: number;
}

/** Everything once on each board and once at each place of every group of boards. */
export function arrangeInSquares(plan: Plan, random: Random): Arrangement {
  const candidates = combinations(withinBoards(plan));
  checkBoards("square", plan, candidates.length);
  const square = () =>
    randomLatinSquare(candidates.length, random).map((row) =>
      row.map((t) => ({ treatment: candidates[t] as Treatment, mark: 0 })),
    );
  return { rows: apart("square", plan, random, square).map((row) => row.map((cell) => cell.treatment)) };
}

/**
 * Two squares at once: with two factors of n levels each level of one meets each of the other once; with one, the
 * second square says the turn, so that everything comes once at each place and once at each turn.
 */
export function arrangeInDoubleSquares(plan: Plan, random: Random): Arrangement {
  const kind = "double-square";
  const [first, second] = twoFactors(plan);
  const n = first.levels.length;
  const none = whyNoGraecoLatin(n);
  if (none !== null) refuseKind(kind, "factors", n, none);
  checkBoards(kind, plan, n);
  const square = () => {
    const [latin, greek] = randomGraecoLatin(n, random);
    return latin.map((row, r) =>
      row.map((x, c) => {
        const mark = greek[r]?.[c] as number;
        const also = second === undefined ? {} : { [second.name]: second.levels[mark] as string };
        return { treatment: { [first.name]: first.levels[x] as string, ...also }, mark };
      }),
    );
  };
  const cells = apart(kind, plan, random, square);
  const rows = cells.map((row) => row.map((cell) => cell.treatment));
  return second === undefined ? { rows, turns: cells.map((row) => row.map((cell) => cell.mark)) } : { rows };
}

function twoFactors(plan: Plan): readonly [Factor, Factor | undefined] {
  const kind = "double-square";
  const [first, second, ...others] = withinBoards(plan);
  if (first === undefined || others.length > 0)
    refuseKind(
      kind,
      "factors",
      withinBoards(plan).length,
      "It takes one or two things that change on the board.",
    );
  if (second !== undefined && second.levels.length !== first.levels.length)
    refuseKind(
      kind,
      "factors",
      second.levels.length,
      `${first.name} has ${first.levels.length} and ${second.name} ${second.levels.length}: the two need equally many.`,
    );
  return [first, second];
}

function checkBoards(kind: LayoutKind, plan: Plan, n: number): void {
  refuseForbidden(kind, plan);
  const wrong = plan.boards.findIndex((b) => b.patches !== n);
  if (wrong >= 0)
    refuseKind(
      kind,
      `boards[${wrong}].patches`,
      plan.boards[wrong]?.patches,
      `There are ${n} to tell apart, so every board needs ${n} patches.`,
    );
  if (plan.boards.length % n !== 0)
    refuseKind(
      kind,
      "boards",
      plan.boards.length,
      `A square of ${n} takes ${n} boards: ${n}, ${2 * n} or ${3 * n} would do.`,
    );
}

/** Draws squares for groups of boards until no forbidden neighbours lie side by side. */
function apart(
  kind: LayoutKind,
  plan: Plan,
  random: Random,
  square: () => readonly (readonly Cell[])[],
): readonly (readonly Cell[])[] {
  const fixed = dealToBoards(plan, random);
  const clash = neighboursClash(plan.neighboursForbidden);
  for (let draw = 0; draw < draws; draw++) {
    const cells = intoBoards(plan, random, square).map((row, b) =>
      row.map((cell) => ({ ...cell, treatment: { ...cell.treatment, ...fixed[b] } })),
    );
    if (
      cells.every((row) =>
        row.every((cell, i) => i === 0 || !clash((row[i - 1] as Cell).treatment, cell.treatment)),
      )
    )
      return cells;
  }
  return refuseKind(
    kind,
    "neighboursForbidden",
    plan.neighboursForbidden,
    `In ${draws} draws no square kept all forbidden neighbours apart: fewer of them, or everything on every board, would do.`,
  );
}

/** Rows of squares to boards by lot; boards of one wood fill a square together as far as they go. */
function intoBoards(
  plan: Plan,
  random: Random,
  square: () => readonly (readonly Cell[])[],
): readonly (readonly Cell[])[] {
  const woods = shuffled([...new Set(plan.boards.map((b) => b.wood))], random);
  const order = woods.flatMap((wood) =>
    shuffled(
      plan.boards.flatMap((b, i) => (b.wood === wood ? [i] : [])),
      random,
    ),
  );
  const rows: (readonly Cell[])[] = [];
  while (rows.length < order.length) rows.push(...square());
  return plan.boards.map((_, i) => rows[order.indexOf(i)] as readonly Cell[]);
}
