import { expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { profileLikeness, similarityLessScatter } from "./profile-likeness.ts";

// Published: 10 points apart throughout gives about 50, 2 points about 83 (the sources' own anchors); a course against itself 100.
test.each([
  [10, 50, 0.5],
  [2, 83, 0.5],
  [0, 100, 0],
])("f2 of courses %d points apart is about %d", (apart, similarity, within) => {
  const reference = [20, 40, 60, 80];
  const found = profileLikeness(
    reference,
    reference.map((r) => r - apart),
  );
  expectNear(found.similarity, similarity, { absolute: within });
  expectNear(found.difference, (100 * apart) / 50, { absolute: 1e-12 });
});

// V. P. Shah et al. (1998): means of twelve units; their table gives f2 = 60.03 and 51.08.
test.each([
  [[40.3391666667, 67.1458333333, 87.0075, 97.725], 60.03],
  [[49.3333333333, 65.3333333333, 86.75, 102.833333333], 51.08],
])("f2 as printed, %#", (other, printed) => {
  const reference = [34.9166666667, 59.5, 79.2666666667, 95.075];
  expectNear(profileLikeness(reference, other).similarity, printed, { absolute: 0.005 });
});

test("f2 is the same whichever is the reference, f1 is not", () => {
  const [a, b] = [
    [20, 50, 90],
    [30, 60, 95],
  ] as const;
  expect(profileLikeness(a, b).similarity).toBe(profileLikeness(b, a).similarity);
  expect(profileLikeness(a, b).difference).not.toBe(profileLikeness(b, a).difference);
});

test("without scatter the corrected f2 is f2; scatter raises it; beyond its distance there is none", () => {
  const units = (values: readonly number[], spread: number) => values.map((v) => [v - spread, v + spread]);
  const [a, b] = [
    [20, 50],
    [30, 60],
  ] as const;
  expectNear(similarityLessScatter(units(a, 0), units(b, 0)) ?? 0, profileLikeness(a, b).similarity, {
    absolute: 1e-12,
  });
  expect(similarityLessScatter(units(a, 3), units(b, 3))).toBeGreaterThan(profileLikeness(a, b).similarity);
  expect(similarityLessScatter(units(a, 20), units(b, 20))).toBeNull();
});

test("refused: different numbers of times, and one jar only", () => {
  expect(() => profileLikeness([1, 2], [1])).toThrow(/other/);
  expect(() => profileLikeness([], [])).toThrow(/other/);
  expect(() => similarityLessScatter([[1]], [[1, 2]])).toThrow(/not-enough-data/);
});
