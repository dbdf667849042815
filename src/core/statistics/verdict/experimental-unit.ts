import { DomainError } from "../../domain-error.ts";
import type { Patch, Place } from "./readings.ts";

/** Something made apart (a jar, a plank, a board), each for one level of the factor only. */
export interface Unit {
  readonly place: Exclude<Place, "patch">;
  /** How many there are, and in the level that has fewest. */
  readonly count: number;
  readonly fewestPerLevel: number;
}

export interface Units {
  /** What each level has two or more of, fewest first: the noise between these is what a difference is held against. */
  readonly error: Unit | null;
  /** What some level has only one of: then the difference may be that thing's own. */
  readonly single: Unit | null;
}

const unitPlaces = ["jar", "plank", "board"] as const;

/** The unit at a place, if each of its things carries one level only; undefined if levels meet within one. */
function unitAt(patches: readonly Patch[], compare: string, place: Unit["place"]): Unit | undefined {
  const levelOf = new Map<string, string>();
  for (const p of patches) {
    const [thing, level] = [p[place], p.factors[compare]];
    if (thing === undefined || level === undefined) return undefined;
    if ((levelOf.get(thing) ?? level) !== level) return undefined;
    levelOf.set(thing, level);
  }
  const levels = [...levelOf.values()];
  const counts = [...new Set(levels)].map((level) => levels.filter((x) => x === level).length);
  return { place, count: levelOf.size, fewestPerLevel: Math.min(...counts) };
}

/**
 * What was made independently for each level of a factor. Patches coated from one jar share that jar's luck, so that
 * their scatter says nothing of another jar of the same recipe; so for patches of one plank, or of one board when a
 * board carries one level only, whatever the factor was said to sit on.
 *
 * @param patches    n patches
 * @param compare    the factor
 * @param appliedTo  where the factor was said to sit
 * @returns          {error, single}
 * @throws DomainError when patches lack the thing that the factor sits on, or one thing carries two levels
 *
 * Source: S. H. Hurlbert, Ecol. Monogr. 54 (1984) 187, on units that are not independent
 */
export function experimentalUnits(patches: readonly Patch[], compare: string, appliedTo: Place): Units {
  const found = unitPlaces.flatMap((place) => unitAt(patches, compare, place) ?? []);
  if (appliedTo !== "patch" && !found.some((unit) => unit.place === appliedTo)) {
    const field = appliedTo === "board" ? "block" : appliedTo;
    const missing = patches.findIndex((p) => p[appliedTo] === undefined);
    const because = `${compare} is said to sit on ${appliedTo}s.`;
    throw missing >= 0
      ? new DomainError({ code: "missing", field: `rows.${field}`, value: undefined, because })
      : new DomainError({
          code: "contradiction",
          field: `appliedTo.${compare}`,
          value: appliedTo,
          because: `One ${appliedTo} carries two levels of it.`,
        });
  }
  const coarsestFirst = found.sort((a, b) => a.count - b.count);
  return {
    error: coarsestFirst.find((unit) => unit.fewestPerLevel >= 2) ?? null,
    single: coarsestFirst.find((unit) => unit.fewestPerLevel < 2) ?? null,
  };
}
