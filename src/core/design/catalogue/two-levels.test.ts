import { describe, expect, test } from "vitest";
import { DomainError } from "../../domain-error.ts";
import { bestGenerators, fractionOf, fractionRuns } from "./fraction.ts";
import { isOrthogonal, screenOf, screenRunsFor } from "./plackett-burman.ts";

/** NIST/SEMATECH e-Handbook of Statistical Methods, table 5.3.3.4.7: things, runs, resolution. */
const handbook = [
  [3, 4, 3],
  [4, 8, 4],
  [5, 16, 5],
  [5, 8, 3],
  [6, 32, 6],
  [6, 16, 4],
  [6, 8, 3],
  [7, 64, 7],
  [7, 32, 4],
  [7, 16, 4],
  [7, 8, 3],
  [8, 64, 5],
  [8, 32, 4],
  [8, 16, 4],
  [9, 128, 6],
  [9, 64, 4],
  [9, 32, 4],
  [9, 16, 3],
  [10, 128, 5],
  [10, 64, 4],
  [10, 32, 4],
  [10, 16, 3],
  [11, 128, 5],
  [11, 64, 4],
  [11, 32, 4],
  [11, 16, 3],
  [15, 16, 3],
] as const;

describe("fractions", () => {
  test.each(handbook)(
    "%d things in %d runs: resolution %d, as the handbook's",
    (factors, runs, resolution) => {
      const generators = bestGenerators(factors, runs);
      expect(fractionOf(factors, generators)).toMatchObject({ runs, resolution });
      const laid = fractionRuns(factors, generators);
      expect(laid).toHaveLength(runs);
      expect(isOrthogonal(laid)).toBe(true);
    },
  );

  test("an alias is the same column: every pair that shares a word comes out alike in all runs", () => {
    const generators = ["E=ABC", "F=BCD"];
    const { aliases } = fractionOf(6, generators);
    const runs = fractionRuns(6, generators);
    const column = (effect: string) =>
      runs.map((run) =>
        [..."ABCDEF"].reduce((x, l, i) => (effect.includes(l) ? x * (run[i] as number) : x), 1),
      );
    for (const [effect, others] of Object.entries(aliases))
      for (const other of Object.keys(aliases)) {
        const [a, b] = [column(effect), column(other)];
        const alike = a.every((x, i) => x === b[i]) || a.every((x, i) => x === -(b[i] as number));
        expect([effect, other, alike]).toEqual([effect, other, effect === other || others.includes(other)]);
      }
  });

  test.each([
    [["E=AI"], "I is none of"],
    [["E=ABE"], "stands in it twice"],
    [["EA"], "an equals sign"],
    [["E=AB", "E=AB"], "follows from the others"],
  ])("%j is refused: %s", (generators, words) => {
    expect(() => fractionOf(5, generators)).toThrow(words);
  });

  test("runs that are no power of two are refused", () => {
    expect(() => bestGenerators(5, 12)).toThrow("a power of two");
  });
});

describe("screens", () => {
  test("of every multiple of 4 up to 88: balanced, each column against each other", () => {
    for (let n = 4; n <= 88; n += 4) {
      const runs = screenOf(n);
      expect([n, runs.length, runs[0]?.length, isOrthogonal(runs)]).toEqual([n, n, n - 1, true]);
    }
  });
  test("11 things take 12 runs, 12 take 16", () => {
    expect([screenRunsFor(11), screenRunsFor(12)]).toEqual([12, 16]);
  });
  test.each([
    [10, "12 would do"],
    [92, "96 would do"],
  ])("%d runs are refused: %s", (runs, words) => {
    expect(() => screenOf(runs)).toThrow(DomainError);
    expect(() => screenOf(runs)).toThrow(words);
  });
});
