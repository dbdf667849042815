import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { randomFromSeed, shuffled } from "../../random.ts";
import { friedmanStatistic, friedmanTest } from "../ranks/friedman.ts";
import { friedmanExactUpper } from "../ranks/friedman-exact.ts";
import { durbinTest, skillingsMackTest } from "../ranks/incomplete-blocks.ts";
import { pageExactCritical, pageExactUpper, pageNullDistribution, pageTest } from "../ranks/page.ts";
import { midRanks } from "../ranks/ranks.ts";
import { pairedSharesInterval } from "./paired-shares.ts";
import type { Reading } from "./readings.ts";
import { verdictOrdered } from "./verdict-ordered.ts";

const cases: readonly { id: string; rows: number[][] }[] = JSON.parse(
  readFileSync(new URL("../../../../test/check-values/trials/ranking/cases.json", import.meta.url), "utf8"),
).cases;
const rowsOf = (id: string): number[][] => cases.find((c) => c.id === id)?.rows ?? [];

describe("Friedman", () => {
  test("ties: 8.0973 and F = 3.1922 (Conover 1999, 12 homeowners and 4 grasses)", () => {
    const found = friedmanTest(rowsOf("conover-grass"));
    expectNear(found.statistic, 8.0973, { absolute: 5e-5 });
    expectNear(found.f.statistic, 3.1922, { absolute: 5e-5 });
    expect(found.rankSums).toEqual([38, 23.5, 24.5, 34]);
  });
  test("11.143 with p = 0.003805 (Hollander and Wolfe, rounding first base)", () => {
    const found = friedmanTest(rowsOf("rounding-first-base"));
    expectNear(found.statistic, 11.143, { absolute: 5e-4 });
    expectNear(found.pValue, 0.003805, { absolute: 5e-7 });
  });
  test("all blocks agree: W is 1, and Conover's F has no end", () => {
    const found = friedmanTest([1, 2, 3, 4].map((b) => [b, b + 1, b + 2]));
    expect(found.kendallW).toBe(1);
    expect(found.f).toMatchObject({ statistic: Number.POSITIVE_INFINITY, pValue: 0 });
  });
  test("two treatments without ties are the sign test: (8 − 2)²/10", () => {
    const rows = Array.from({ length: 10 }, (_, i) => (i < 8 ? [0, 1] : [1, 0]));
    expectNear(friedmanTest(rows).statistic, 3.6, { relative: 1e-12 });
  });
  test("the exact chance: 0.042 at 6.5 and 0.005 at 8 for 3 in 4 blocks (Hollander and Wolfe)", () => {
    expectNear(friedmanExactUpper(3, 4, 6.5), 0.042, { absolute: 5e-4 });
    expectNear(friedmanExactUpper(3, 4, 8), 0.005, { absolute: 5e-4 });
    expectNear(friedmanExactUpper(3, 4, 0), 1, { relative: 1e-12 });
  });
  test.each([
    [[[1, 2, 3]]],
    [[[1], [2]]],
    [[[1, 2], [1]]],
    [
      [
        [1, 1],
        [2, 2],
      ],
    ],
  ])("%j is refused", (rows) => {
    expect(() => friedmanTest(rows)).toThrow(DomainError);
  });
});

describe("Page", () => {
  test("128 at 5 % and 131 at 1 % for 3 in 10 blocks (Page 1963)", () => {
    const distribution = pageNullDistribution(3, 10);
    expect(pageExactCritical(distribution, 0.05)).toBe(128);
    expect(pageExactCritical(distribution, 0.01)).toBe(131);
    expectNear(pageExactUpper(distribution, 0), 1, { relative: 1e-12 });
  });
  test("ties have no exact chance", () => {
    expect(pageTest([[1, 1, 2]]).pValueExact).toBeNull();
  });
});

describe("blocks with gaps", () => {
  test("without gaps and ties Skillings–Mack is Friedman's", () => {
    const rows = rowsOf("turmeric-6x7");
    expectNear(skillingsMackTest(rows).statistic, friedmanStatistic([7, 14, 21, 28, 36, 41], 7), {
      relative: 1e-10,
    });
    expectNear(durbinTest(rows).statistic, friedmanTest(rows).statistic, { relative: 1e-10 });
  });
  test("treatments that never meet are refused, and so is a lopsided Durbin", () => {
    const apart = [
      [1, 2, null, null],
      [null, null, 1, 2],
    ];
    expect(() => skillingsMackTest(apart)).toThrow(DomainError);
    expect(() =>
      durbinTest([
        [1, 2, 3],
        [1, 2, null],
      ]),
    ).toThrow(DomainError);
  });
});

test("equal values share their ranks", () => {
  expect(midRanks([3, 1, 3, 3, 0])).toEqual([4, 2, 4, 4, 1]);
});

describe("the score interval of paired shares", () => {
  test("all blocks agree: (n − z²)/(n + z²), by hand from the likelihood", () => {
    const z = 1.959963984540054;
    expectNear(pairedSharesInterval(8, 0, 8, z)[0], (8 - z * z) / (8 + z * z), { absolute: 1e-9 });
    expect(pairedSharesInterval(8, 0, 8, z)[1]).toBe(1);
  });
  test("no block told them apart: ± z²/(n + z²), by hand from the likelihood", () => {
    const z = 1.959963984540054;
    const [low, high] = pairedSharesInterval(0, 0, 20, z);
    expectNear(high, (z * z) / (20 + z * z), { absolute: 1e-9 });
    expectNear(low, -high, { absolute: 1e-9 });
  });
  test("turned round, the interval turns round", () => {
    const [low, high] = pairedSharesInterval(7, 2, 12, 2.3);
    const [back, forth] = pairedSharesInterval(2, 7, 12, 2.3);
    expectNear(back, -high, { absolute: 1e-9 });
    expectNear(forth, -low, { absolute: 1e-9 });
  });
  test.each([
    [-1, 0, 5],
    [3, 3, 5],
    [Number.NaN, 0, 5],
    [0, 0, 0],
  ])("%d above and %d below of %d is refused", (above, below, blocks) => {
    expect(() => pairedSharesInterval(above, below, blocks, 2)).toThrow(DomainError);
  });
});

/** The grasses as a trial: homeowners are the boards. */
const grasses: Reading[] = rowsOf("conover-grass").flatMap((row, b) =>
  row.map((value, t) => ({
    patch: `${b}-${t}`,
    jar: undefined,
    plank: undefined,
    board: `home ${b}`,
    judge: undefined,
    factors: { grass: `g${t}` },
    value,
  })),
);
const aboutGrass = { compare: "grass", appliedTo: "patch", matters: 0.3 } as const;

describe("the verdict on ordered responses", () => {
  const verdict = verdictOrdered(grasses, aboutGrass);
  test("Friedman stands beside the pairs: 8.0973 (Conover 1999)", () => {
    expectNear(verdict.overall?.statistic ?? Number.NaN, 8.0973, { absolute: 5e-5 });
    expect(verdict.degreesOfFreedom).toBe(3);
  });
  test("how often the first grass is put above the second less how often below, counted by hand: 9/12", () => {
    const pair = verdict.pairs.find((p) => p.a === "g0" && p.b === "g1");
    // rows: 4>3 4>2 3>1.5 3>1 4>2 2=2 1<3 2<4 3.5>1 4>1 4>2 3.5>1
    expectNear(pair?.difference ?? Number.NaN, (9 - 2) / 12, { relative: 1e-12 });
    expect(verdict.levels[0]?.mean).toBe(38 / 12);
  });
  test("it never says as good as equal", () => {
    const { pairs } = verdictOrdered(grasses, { ...aboutGrass, matters: 0.99 });
    expect(pairs.map((p) => p.verdict)).not.toContain("equal");
  });
  test("the order of rows does not matter", () => {
    expect(verdictOrdered(shuffled(grasses, randomFromSeed("grass")), aboutGrass).pairs).toEqual(
      verdict.pairs,
    );
  });
  test("any rising numbers for the steps give the same", () => {
    const cubed = grasses.map((r) => ({ ...r, value: r.value ** 3 - 7 }));
    expect(verdictOrdered(cubed, aboutGrass)).toMatchObject({
      pairs: verdict.pairs,
      overall: verdict.overall,
    });
  });
  test("one board and many judges: the judges are the blocks, and it is about these patches", () => {
    const judged = grasses.map((r) => ({
      ...r,
      patch: r.factors.grass ?? "",
      judge: r.board,
      board: "one",
    }));
    const found = verdictOrdered(judged, aboutGrass);
    expect(found.about).toBe("these patches");
    expect(found.method.errorTerm).toBe("judge");
    expectNear(found.overall?.statistic ?? Number.NaN, 8.0973, { absolute: 5e-5 });
  });
  test("boards of one level each: a judge holds them against each other, but not ranks given board by board", () => {
    const woods = grasses.map((r) => ({
      ...r,
      patch: `${r.factors.grass}`,
      board: r.factors.grass,
      judge: r.board,
    }));
    expect(verdictOrdered(woods, aboutGrass).method.errorTerm).toBe("judge");
    const ranked = { ...aboutGrass, rankedWithinBoards: true };
    expect(verdictOrdered(woods, ranked).method.errorTerm).toBe("judge");
    const twoABoard = [...woods, ...woods.map((r) => ({ ...r, patch: `${r.patch} again` }))];
    expect(() => verdictOrdered(twoABoard, ranked)).toThrow(DomainError);
  });
  test("fewer than two blocks, and values all alike, are refused", () => {
    const one = grasses.filter((r) => r.board === "home 0");
    expect(() => verdictOrdered(one, aboutGrass)).toThrow(DomainError);
    expect(() =>
      verdictOrdered(
        grasses.map((r) => ({ ...r, value: 2 })),
        aboutGrass,
      ),
    ).toThrow(DomainError);
  });
});
