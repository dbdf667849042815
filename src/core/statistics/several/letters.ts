/**
 * Letters for a table of means: two levels share a letter when they were not told apart. Maximal sets of levels
 * that were all not told apart from each other, in the order of the levels given.
 *
 * @param levels  in the order in which letters are dealt
 * @param apart   whether two levels were told apart
 * @returns       letters by level
 *
 * Source: H.-P. Piepho, J. Comput. Graph. Statist. 13 (2004) 456: insert and absorb
 */
export function compactLetters(
  levels: readonly string[],
  apart: (a: string, b: string) => boolean,
): Record<string, string> {
  let sets: ReadonlySet<string>[] = [new Set(levels)];
  levels.forEach((a, i) => {
    for (const b of levels.slice(i + 1)) {
      if (!apart(a, b)) continue;
      sets = absorbed(
        sets.flatMap((set) => (set.has(a) && set.has(b) ? [without(set, a), without(set, b)] : [set])),
      );
    }
  });
  const first = (set: ReadonlySet<string>): number => levels.findIndex((level) => set.has(level));
  const ordered = [...sets].sort((a, b) => first(a) - first(b));
  return Object.fromEntries(
    levels.map((level) => [level, ordered.map((set, i) => (set.has(level) ? letter(i) : "")).join("")]),
  );
}

const without = (set: ReadonlySet<string>, x: string): ReadonlySet<string> =>
  new Set([...set].filter((y) => y !== x));

/** Sets that lie within another say nothing more, and go. */
const absorbed = (sets: readonly ReadonlySet<string>[]): ReadonlySet<string>[] =>
  sets.filter(
    (set, i) =>
      !sets.some(
        (other, j) => i !== j && [...set].every((x) => other.has(x)) && (other.size > set.size || j < i),
      ),
  );

const alphabet = "abcdefghijklmnopqrstuvwxyz";
const letter = (i: number): string => alphabet[i] ?? `(${i + 1})`;
