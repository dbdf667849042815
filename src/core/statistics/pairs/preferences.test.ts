import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { refusalOf } from "../../../../test/refusal-of.ts";
import { preferencePairs, preferredBy } from "./preference-shares.ts";
import { type Compared, fitPreferences, type PreferenceModel } from "./preferences.ts";

const plain: PreferenceModel = { baseline: "a", ties: false, order: false };
const counts = (a: string, b: string, aPreferred: number, bPreferred: number, ties = 0): Compared => ({
  ...{ a, b, aPreferred, bPreferred, ties },
});
/** A. Agresti, Categorical Data Analysis (2002), p. 448: four journals that cite each other; printed to four places. */
test("journals that cite each other, as printed", () => {
  const fit = fitPreferences(
    [
      counts("a", "b", 730, 33),
      counts("a", "c", 498, 320),
      counts("a", "d", 221, 284),
      counts("b", "c", 68, 813),
      counts("b", "d", 17, 276),
      counts("c", "d", 142, 325),
    ],
    plain,
  );
  const printed = { a: [0, 0], b: [-2.9491, 0.10255], c: [-0.4796, 0.06059], d: [0.269, 0.07083] } as const;
  for (const { name, logWorth, standardError } of fit.items) {
    const [worth, error] = printed[name as keyof typeof printed];
    expectNear(logWorth, worth, { absolute: 5e-5 });
    expectNear(standardError, error, { absolute: 5e-6 });
  }
  expect(fit.degreesOfFreedom).toBe(3);
});

describe("two things, by hand", () => {
  const fit = fitPreferences([counts("a", "b", 30, 10)], plain);
  test("the worth is the share of the answers, its error that of a logit", () => {
    expectNear(fit.items[0]?.worth ?? 0, 0.75, { relative: 1e-9 });
    expectNear(fit.items[1]?.standardError ?? 0, Math.sqrt(1 / 30 + 1 / 10), { relative: 1e-9 });
    expectNear(fit.deviance, 0, { absolute: 1e-9 });
  });
  test("with ties the model gives each answer its own share", () => {
    const tied = fitPreferences([counts("a", "b", 20, 10, 10)], { ...plain, ties: true });
    expectNear((tied.items[0]?.worth ?? 0) / (tied.items[1]?.worth ?? 1), 2, { relative: 1e-9 });
    expectNear(tied.tieFactor ?? 0, 10 / Math.sqrt(200), { relative: 1e-9 }); // ν√(2·1) : 2 : 1 as 10 : 20 : 10
    expectNear(preferencePairs(tied, 0.3)[0]?.difference ?? 0, 0.25, { relative: 1e-9 });
  });
  test("an order that helps is told from liking: shown first 3 to 1 either way round", () => {
    const { order, items } = fitPreferences(
      [
        { ...counts("a", "b", 30, 10), order: 1 },
        { ...counts("a", "b", 10, 30), order: -1 },
      ],
      { ...plain, order: true },
    );
    expectNear(order?.value ?? 0, Math.log(3), { relative: 1e-9 });
    expectNear(items[0]?.worth ?? 0, 0.5, { relative: 1e-9 });
  });
});

test("swapping the sides, the baseline and the order of the pairs changes no worth", () => {
  const pairs = [counts("a", "b", 8, 3, 2), counts("b", "c", 4, 6, 1), counts("c", "a", 5, 5, 4)];
  const turned = pairs
    .map(({ a, b, aPreferred, bPreferred, ties }) => counts(b, a, bPreferred, aPreferred, ties))
    .reverse();
  const worths = (list: readonly Compared[], baseline: string) =>
    Object.fromEntries(
      fitPreferences(list, { ...plain, baseline, ties: true }).items.map(({ name, worth }) => [name, worth]),
    );
  const [straight, back] = [worths(pairs, "a"), worths(turned, "c")];
  for (const [name, worth] of Object.entries(straight))
    expectNear(back[name] ?? 0, worth, { relative: 1e-9 });
});

test("shares are opposite when the sides are, and never beyond one", () => {
  for (const log of [-700, -3, -0.1, 0, 0.1, 3, 700]) {
    expectNear(preferredBy(log, 0.7), -preferredBy(-log, 0.7), { absolute: 1e-15 });
    expect(Math.abs(preferredBy(log, 0.7))).toBeLessThanOrEqual(1);
  }
});

describe("refused, naming what has no end", () => {
  test.each([
    [
      "never less liked",
      [counts("a", "b", 5, 0), counts("a", "c", 3, 0), counts("b", "c", 2, 2)],
      ["b", "c"],
      /never preferred/,
    ],
    ["never compared with the rest", [counts("a", "b", 5, 5), counts("c", "d", 3, 3)], ["c", "d"], /no end/],
    ["never preferred", [counts("a", "b", 5, 5), counts("a", "c", 3, 0)], ["c"], /never preferred/],
  ] as const)("%s", (_, pairs, value, because) => {
    const detail = refusalOf(() => fitPreferences(pairs, plain));
    expect(detail).toMatchObject({ code: "not-enough-data", field: "pairs", value });
    expect(detail.because).toMatch(because);
  });
  test("a baseline that was not compared; nothing compared", () => {
    expect(
      refusalOf(() => fitPreferences([counts("a", "b", 1, 1)], { ...plain, baseline: "z" })),
    ).toMatchObject({
      code: "unknown-name",
      field: "baseline",
      limits: { allowed: ["a", "b"] },
    });
  });
  test("an order that every answer followed", () => {
    const pairs = [
      { ...counts("a", "b", 9, 0), order: 1 },
      { ...counts("a", "b", 0, 9), order: -1 },
    ];
    expect(refusalOf(() => fitPreferences(pairs, { ...plain, order: true })).code).toBe("no-convergence");
  });
});
