import { DomainError } from "../../domain-error.ts";
import type { Compared } from "./preferences.ts";

/** All that is reached from the first name along steps. */
function reached(first: string, steps: ReadonlyMap<string, ReadonlySet<string>>): ReadonlySet<string> {
  const found = new Set([first]);
  for (const name of found) for (const next of steps.get(name) ?? []) found.add(next); // a set grows while it is walked
  return found;
}

function stepsOf(edges: readonly (readonly [string, string])[]): ReadonlyMap<string, ReadonlySet<string>> {
  const steps = new Map<string, Set<string>>();
  for (const [from, to] of edges) steps.set(from, (steps.get(from) ?? new Set()).add(to));
  return steps;
}

/**
 * Holds that worths have an end: in every division of the things into two groups, something of each was preferred to
 * something of the other.
 *
 * @param names     of all things
 * @param compared  counts of answers
 * @param ties      whether a tie counts as each being preferred a little
 * @throws DomainError naming the things that were never preferred to the others, or never less
 *
 * Source: L. R. Ford, Am. Math. Monthly 64 (1957) 28
 */
export function checkJoined(names: readonly string[], compared: readonly Compared[], ties: boolean): void {
  const beat = compared.flatMap(({ a, b, aPreferred, bPreferred, ties: tied = 0 }): [string, string][] => [
    ...(aPreferred > 0 || (ties && tied > 0) ? [[a, b] as [string, string]] : []),
    ...(bPreferred > 0 || (ties && tied > 0) ? [[b, a] as [string, string]] : []),
  ]);
  const [first] = names;
  if (first === undefined)
    throw new DomainError({ code: "not-enough-data", field: "pairs", value: 0, limits: { min: 1 } });
  const below = reached(first, stepsOf(beat));
  const above = reached(first, stepsOf(beat.map(([winner, loser]) => [loser, winner])));
  const apart = names.filter((name) => !below.has(name));
  const over = names.filter((name) => !above.has(name));
  const [left, how] = apart.length > 0 ? [apart, "never less liked than"] : [over, "never preferred to"];
  if (left.length === 0) return;
  throw new DomainError({
    code: "not-enough-data",
    field: "pairs",
    value: left,
    because: `${left.join(", ")} ${left.length === 1 ? "was" : "were"} ${how} the others, so how far apart they lie has no end. More comparisons, or fewer things, would do.`,
  });
}
