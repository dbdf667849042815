import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { studentTTails } from "../distribution/student-t.ts";
import { threeWords } from "../verdict/three-words.ts";
import { dunnettCdf, dunnettQuantile } from "./dunnett.ts";
import { compactLetters } from "./letters.ts";
import { fTestPower, smallestDifference } from "./power.ts";
import { tukeyDifference } from "./tukey.ts";

// D. C. Montgomery and G. C. Runger, hardwood concentration: MSE 6.50833 with 20 degrees of freedom, 6 a level;
// limits printed with q rounded to 3.96, so that they are met to 0.003.
describe("Tukey's intervals of the hardwood example", () => {
  const error = Math.sqrt(6.50833333 * (2 / 6));
  test.each([
    [10 - 15.66667, -9.791, -1.542],
    [15.66667 - 21.16667, -9.624, -1.376],
    [17 - 21.16667, -8.291, -0.042],
  ])("a difference of %d", (d, low, high) => {
    const { interval } = tukeyDifference(d, error, 4, 20);
    expectNear(interval[0], low, { absolute: 0.003 });
    expectNear(interval[1], high, { absolute: 0.003 });
  });
  test("p-value of 20 against 15 % (R, TukeyHSD): 0.0470251", () => {
    expectNear(tukeyDifference(4.16666666667, error, 4, 20).pValue, 0.0470251, { absolute: 1e-6 });
  });
});

test("an error of nought is refused", () => {
  expect(() => tukeyDifference(1, 0, 3, 10)).toThrow(DomainError);
});

describe("Dunnett", () => {
  test("one level against the control is Student's t", () => {
    expectNear(dunnettCdf(2.1, [5], 7, 10), 1 - 2 * studentTTails(2.1, 10).upper, { absolute: 1e-10 });
  });
  // C. W. Dunnett (1964), Biometrics 20, 482, table: two-sided 5 %, equal numbers, from memory.
  test.each([
    [2, 10, 2.57],
    [3, 20, 2.54],
    [4, 30, 2.58],
  ])("the printed value for %d levels at %d degrees of freedom is %d", (k, df, d) => {
    expectNear(dunnettQuantile(0.95, new Array(k).fill(6), 6, df), d, { absolute: 6e-3 });
  });
});

describe("letters", () => {
  test("a chain shares letters with its neighbours only", () => {
    const apart = (a: string, b: string) => Math.abs("abcd".indexOf(a) - "abcd".indexOf(b)) > 1;
    expect(compactLetters(["a", "b", "c", "d"], apart)).toEqual({ a: "a", b: "ab", c: "bc", d: "c" });
  });
  test.each([[true], [false]])("all apart: %s", (all) => {
    const letters = Object.values(compactLetters(["x", "y", "z"], () => all));
    expect(new Set(letters).size).toBe(all ? 3 : 1);
  });
  test("two levels share a letter exactly when they are not apart", () => {
    const pairs = new Set(["pq", "ps", "qr", "rt", "pt"]);
    const apart = (a: string, b: string) => pairs.has([a, b].sort().join(""));
    const levels = ["p", "q", "r", "s", "t"];
    const letters = compactLetters(levels, apart);
    for (const a of levels)
      for (const b of levels)
        if (a < b)
          expect(
            [...(letters[a] ?? "")].some((x) => letters[b]?.includes(x)),
            a + b,
          ).toBe(!apart(a, b));
  });
});

describe("the three words", () => {
  test.each([
    [[5, 9], 5, "different", true],
    [[-9, -5], 5, "different", true],
    [[-4.9, 4.9], 5, "equal", false],
    [[1, 4], 5, "equal", true],
    [[1, 6], 5, "unclear", true],
    [[-6, 1], 5, "unclear", false],
    [[-5, 3], 5, "unclear", false],
    [[0.1, 0.2], 0, "different", true],
    [[-0.1, 0.2], 0, "unclear", false],
    [[0, 0.2], 0, "unclear", false],
  ] as const)("I = %j with m = %d", (interval, matters, verdict, directionSure) => {
    expect(threeWords(interval, matters)).toEqual({ verdict, directionSure });
  });
});

describe("power", () => {
  // J. Cohen, Statistical Power Analysis (1988), as pwr.anova.test prints it: f 0.28, k 4, n 20.
  test("of an F test", () => {
    expectNear(fTestPower(4 * 20 * 0.28 ** 2, 3, 76, 0.05), 0.5149793, { absolute: 1e-7 });
  });
  // scipy 1.17.1: root of nct.sf(t.ppf(0.975, 38), 38, d) = 0.8, times √(2/20).
  test("the smallest difference of two groups of 20", () => {
    const plan = { levels: 2, unitsPerLevel: 20, patchesPerUnit: 1, unitDeviation: 0, patchDeviation: 1 };
    expectNear(smallestDifference(plan), 0.909130127626996, { relative: 1e-9 });
  });
  test("more patches of the same two jars do little where the jars differ", () => {
    const plan = { levels: 2, unitsPerLevel: 2, patchesPerUnit: 4, unitDeviation: 1, patchDeviation: 1 };
    const patches = smallestDifference({ ...plan, patchesPerUnit: 400 });
    const jars = smallestDifference({ ...plan, unitsPerLevel: 4 });
    expect(jars).toBeLessThan(patches);
  });
  test("without a second unit there is nothing to hold a difference against", () => {
    const plan = { levels: 2, unitsPerLevel: 1, patchesPerUnit: 9, unitDeviation: 1, patchDeviation: 1 };
    expect(() => smallestDifference(plan)).toThrow(DomainError);
  });
});
