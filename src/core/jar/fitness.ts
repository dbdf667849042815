import type { NotebookEntry } from "../notebook/entry.ts";
import { epochMilliseconds } from "../notebook/instant.ts";
import type { Body } from "../notebook/kinds/all.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { defaultValue, type TradeDefault } from "../views/default-value.ts";

/** When a jar is to be tested before use. Editable; all of them common practice, and the drop test decides. */
export const fitnessDefaults = {
  testAfterDays: { name: "jar-test-after-days", value: 180, unit: "days", known: "common practice" },
  testHoldsDays: { name: "jar-test-holds-days", value: 90, unit: "days", known: "common practice" },
  hardWithinMinutes: {
    name: "jar-hard-within-minutes",
    value: 240,
    unit: "minutes",
    known: "common practice",
  },
} as const satisfies Record<string, TradeDefault>;

/** Whether to use a jar, and why. `because` is the first reason that applies, the weightiest first. */
export interface Fitness {
  readonly state: "use" | "test first" | "discard";
  readonly because:
    | "contaminated"
    | "soft-in-the-drop-test"
    | "slow-in-the-drop-test"
    | "leftovers-poured-back"
    | "old"
    | "age-not-known"
    | "hard-in-the-drop-test"
    | "fresh";
  readonly entry: string | null;
  /** The threshold that decided, where one did. */
  readonly threshold: number | null;
}

export interface DropTest {
  readonly entry: string;
  readonly at: string;
  readonly result: Body<"batch-drop-tested">["result"];
  readonly hardAfterMinutes: number | null;
}

const dayMs = 86_400_000;
/** Days from one instant to another, with their fraction. */
export const daysBetween = (from: string, to: string): number =>
  (epochMilliseconds(to) - epochMilliseconds(from)) / dayMs;

/** The drop tests among the entries, in their order. */
export const dropTestsOf = (entries: readonly NotebookEntry[]): readonly DropTest[] =>
  entries
    .filter((entry) => entry.kind === "batch-drop-tested")
    .map((entry) => {
      const body = entry.body as Body<"batch-drop-tested">;
      return {
        entry: entry.id,
        at: entry.happened,
        result: body.result,
        hardAfterMinutes: body.hardAfterMinutes ?? null,
      };
    });

const is = (
  state: Fitness["state"],
  because: Fitness["because"],
  entry: string | null = null,
  threshold: number | null = null,
): Fitness => ({ state, because, entry, threshold });

/**
 * Whether a jar may be used, is to be tested first, or is past using, by what was seen of it and how long its oldest
 * resin has been in solution.
 *
 * @param read        for the thresholds as this notebook has them
 * @param entries     the jar's entries, its ancestors' contaminations among them
 * @param resinSince  when the oldest resin went into solution, or null
 * @param now         the instant to judge it at
 */
export function fitnessOf(
  read: NotebookReader,
  entries: readonly NotebookEntry[],
  resinSince: string | null,
  now: string,
): Fitness {
  const spoiled = entries.findLast((entry) => entry.kind === "batch-contaminated");
  if (spoiled !== undefined) return is("discard", "contaminated", spoiled.id);
  const test = dropTestsOf(entries).at(-1);
  const within = defaultValue(read, fitnessDefaults.hardWithinMinutes);
  if (test !== undefined && test.result !== "hard") return is("discard", "soft-in-the-drop-test", test.entry);
  if (test?.hardAfterMinutes != null && test.hardAfterMinutes > within)
    return is("test first", "slow-in-the-drop-test", test.entry, within);
  const holds = defaultValue(read, fitnessDefaults.testHoldsDays);
  const tested = test !== undefined && daysBetween(test.at, now) <= holds;
  const back = entries.findLast((entry) => entry.kind === "leftovers-poured-back");
  if (back !== undefined && !(tested && test.at > back.happened))
    return is("test first", "leftovers-poured-back", back.id);
  if (tested) return is("use", "hard-in-the-drop-test", test.entry, holds);
  const after = defaultValue(read, fitnessDefaults.testAfterDays);
  if (resinSince === null) return is("test first", "age-not-known");
  if (daysBetween(resinSince, now) > after) return is("test first", "old", null, after);
  return is("use", "fresh", null, after);
}
