import { DomainError } from "../../domain-error.ts";
import { type Random, shuffled } from "../../random.ts";
import { matches, type Plan, type Treatment } from "../plan.ts";

/** Plain draws before the search: any forbidden list that leaves 1 order in 50 is met by them but for e^-8. */
const draws = 400;
const searchSteps = 200_000;

/** Whether two treatments must not lie side by side. */
export const neighboursClash =
  (forbidden: Plan["neighboursForbidden"]) =>
  (a: Treatment, b: Treatment): boolean =>
    forbidden.some(([p, q]) => (matches(p, a) && matches(q, b)) || (matches(p, b) && matches(q, a)));

/**
 * A drawn order along one board in which no two neighbours are forbidden ones. Plain draws are made until one fits,
 * so that every admissible order is equally likely; only where hardly any fits does a search place them in turn.
 *
 * @param treatments  what stands on the board, n
 * @returns           the same in their places, n
 * @throws DomainError `contradiction` when no order fits, `no-convergence` when none was found
 */
export function drawPlaces(
  board: string,
  treatments: readonly Treatment[],
  forbidden: Plan["neighboursForbidden"],
  random: Random,
): readonly Treatment[] {
  const clash = neighboursClash(forbidden);
  const fits = (row: readonly Treatment[]) =>
    row.every((t, i) => i === 0 || !clash(row[i - 1] as Treatment, t));
  for (let i = 0; i < draws; i++) {
    const row = shuffled(treatments, random);
    if (fits(row)) return row;
  }
  return searchPlaces(board, shuffled(treatments, random), clash, random);
}

function searchPlaces(
  board: string,
  treatments: readonly Treatment[],
  clash: (a: Treatment, b: Treatment) => boolean,
  random: Random,
): readonly Treatment[] {
  let steps = 0;
  const extend = (row: readonly Treatment[], left: readonly Treatment[]): readonly Treatment[] | null => {
    if (left.length === 0) return row;
    if (++steps > searchSteps) return null;
    const last = row.at(-1);
    for (const t of shuffled([...new Set(left)], random)) {
      if (last !== undefined && clash(last, t)) continue;
      const found = extend([...row, t], left.toSpliced(left.indexOf(t), 1));
      if (found !== null) return found;
    }
    return null;
  };
  const found = extend([], treatments);
  if (found !== null) return found;
  const gaveUp = steps > searchSteps;
  throw new DomainError({
    code: gaveUp ? "no-convergence" : "contradiction",
    field: "neighboursForbidden",
    value: board,
    because: gaveUp
      ? `No order of board ${board} was found that keeps all forbidden neighbours apart.`
      : `No order of board ${board} keeps all forbidden neighbours apart.`,
  });
}
