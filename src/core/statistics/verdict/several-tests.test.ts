import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { randomFromSeed } from "../../random.ts";
import { holmAdjusted } from "../several/holm.ts";
import { logRankPermutation } from "./log-rank-permutation.ts";
import { equalFrom } from "./over-coats.ts";

describe("Holm across responses", () => {
  test("R's p.adjust: 0.01, 0.04, 0.03, 0.005 give 0.03, 0.06, 0.06, 0.02", () => {
    const adjusted = holmAdjusted([0.01, 0.04, 0.03, 0.005]);
    [0.03, 0.06, 0.06, 0.02].forEach((p, i) => {
      expectNear(adjusted[i] ?? Number.NaN, p, { absolute: 1e-12 });
    });
  });
  test("never beyond 1, never less than before, and nothing for nothing", () => {
    expect(holmAdjusted([0.9, 0.8])).toEqual([1, 1]);
    expect(holmAdjusted([0.2])).toEqual([0.2]);
    expect(holmAdjusted([])).toEqual([]);
    expect(() => holmAdjusted([Number.NaN])).toThrow(DomainError);
  });
});

describe("from which coat on recipes are as good as equal", () => {
  const words = (...said: readonly ("equal" | "different" | "unclear")[]) =>
    said.map((verdict, i) => ({ coat: i + 1, verdict }));
  test("from the last coat backwards, up to the first that is not", () => {
    expect(equalFrom(words("equal", "unclear", "equal", "equal"))).toBe(3);
    expect(equalFrom(words("equal", "equal", "different"))).toBeNull();
    expect(equalFrom(words("equal", "equal").reverse())).toBe(1);
    expect(equalFrom([])).toBeNull();
  });
});

describe("times of jars: log-rank by dealing groups anew", () => {
  const jar = (group: string, left: number, right: number | null) => ({ group, left, right });
  test("four early and four late jars: 2 of 70 dealings", () => {
    const jars = [1, 2, 3, 4, 11, 12, 13, 14].map((t, i) => jar(i < 4 ? "e" : "i", t, t + 0.5));
    expect(logRankPermutation(jars, randomFromSeed("t"))).toMatchObject({ pValue: 2 / 70, exact: true });
  });
  test("jars that were never ready count as late", () => {
    const jars = [
      jar("e", 0, 4),
      jar("e", 2, 6),
      jar("e", 4, 8),
      jar("i", 20, null),
      jar("i", 24, null),
      jar("i", 30, null),
    ];
    expectNear(logRankPermutation(jars, randomFromSeed("t"))?.pValue ?? Number.NaN, 2 / 20, {
      absolute: 1e-12,
    });
  });
  test("times seen exactly, three early and three late: 2 of 20 dealings", () => {
    const jars = [1, 2, 3, 4, 5, 6].map((t, i) => jar(i < 3 ? "e" : "i", t, t));
    expectNear(logRankPermutation(jars, randomFromSeed("t"))?.pValue ?? Number.NaN, 2 / 20, {
      absolute: 1e-12,
    });
  });
  test("looks that set none apart, and one group alone, give none", () => {
    expect(logRankPermutation([jar("e", 0, 5), jar("i", 0, 5)], randomFromSeed("t"))).toBeNull();
    expect(logRankPermutation([jar("e", 0, 5), jar("e", 5, 9)], randomFromSeed("t"))).toBeNull();
  });
});
