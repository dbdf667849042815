import { describe, expect, test } from "vitest";
import { checkTable } from "../../../../test/check-table.ts";
import { expectNear } from "../../../../test/near.ts";
import { DomainError } from "../../domain-error.ts";
import { binomialAtLeast, binomialAtMost, clopperPearson } from "../distribution/binomial.ts";
import { countPower, criticalCount, similarityCount, trialsNeeded } from "./difference-count.ts";
import {
  differenceEstimate,
  differenceForms,
  dPrimeFromShare,
  guessingOf,
  shareFromDPrime,
} from "./odd-one-out.ts";

const triangle = guessingOf.triangle;

describe("counts", () => {
  test("the printed triangle table, all rows (FAO, docrep V7180E, appendix A)", () => {
    const alphas = { crit_10pc: 0.1, crit_5pc: 0.05, crit_1pc: 0.01, "crit_0.1pc": 0.001 };
    const rows = checkTable("trials/difference/fao-triangle-published.csv");
    expect(rows.length).toBeGreaterThan(30);
    for (const row of rows)
      for (const [column, alpha] of Object.entries(alphas)) {
        const printed = row[column] === "" ? null : Number(row[column]);
        expect(criticalCount(Number(row.n), triangle, alpha), `${row.n} at ${alpha}`).toBe(printed);
      }
  });
  test("66 trials for a third of discriminators at 5 and 5 % (ISO 4120)", () => {
    expect(trialsNeeded(triangle, 0.3, 0.05, 0.05).first).toBe(66);
    expect(() => trialsNeeded(triangle, 0, 0.05, 0.05)).toThrow(DomainError);
  });
  test("power is the size of the test when nobody can tell", () => {
    const critical = criticalCount(30, triangle, 0.05) ?? Number.NaN;
    expectNear(countPower(30, triangle, 0.05, 0), binomialAtLeast(critical, 30, 1 / 3), { relative: 1e-12 });
    expect(countPower(2, triangle, 0.05, 0.9)).toBe(0);
  });
  test("too few trials for a similarity have no count", () => {
    expect(similarityCount(3, 1 / 3, 0.2, 0.05)).toBeNull();
  });
  test.each([
    [-1, 1],
    [0, 1],
    [6, 0],
  ])("P(X ≥ %d) of 5 is %d", (x, p) => {
    expect(binomialAtLeast(x, 5, 0.4)).toBe(p);
    expectNear(binomialAtMost(x - 1, 5, 0.4), 1 - p, { absolute: 0 });
  });
  test("no success in n: the upper limit is 1 − (α/2)^(1/n)", () => {
    const [low, high] = clopperPearson(0, 12);
    expect(low).toBe(0);
    expectNear(high, 1 - 0.025 ** (1 / 12), { relative: 1e-11 });
    expect(() => clopperPearson(3, 2)).toThrow(DomainError);
  });
});

describe("d′", () => {
  test("shares by quadrature, all rows (agrees with sensR 1.5-3 to 5e-10)", () => {
    const forms = { duotrio: "duo-trio", twoAFC: "two-afc", threeAFC: "three-afc" } as const;
    const rows = checkTable("trials/difference/psychometric.csv");
    expect(rows.length).toBeGreaterThan(30);
    for (const { protocol = "", dprime, pc } of rows) {
      const name = protocol in forms ? forms[protocol as keyof typeof forms] : protocol;
      const form = differenceForms.find((f) => f === name);
      expect(form, protocol).toBeDefined();
      if (form !== undefined)
        expectNear(shareFromDPrime(form, Number(dprime)), Number(pc), { absolute: 1e-9 });
    }
  });
  test.each(differenceForms)("%s: a share and d′ undo each other, and more is more", (form) => {
    for (const d of [0.3, 1.2, 3])
      expectNear(dPrimeFromShare(form, shareFromDPrime(form, d)) ?? Number.NaN, d, { absolute: 1e-9 });
    expectNear(shareFromDPrime(form, 0), guessingOf[form].guessing, { absolute: 1e-12 });
    expect(shareFromDPrime(form, 2)).toBeGreaterThan(shareFromDPrime(form, 1));
  });
  test("below guessing there is none, and with all right it has no end", () => {
    expect(differenceEstimate("triangle", 8, 30)).toMatchObject({ dPrime: 0, discriminators: 0 });
    expect(differenceEstimate("triangle", 12, 12).dPrime).toBeNull();
  });
  test("13 of 30 in a triangle test (sensR 1.5-3, discrim)", () => {
    const found = differenceEstimate("triangle", 13, 30);
    expectNear(found.dPrime ?? Number.NaN, 1.09505874919, { absolute: 1e-8 });
    expectNear(found.standardErrors.dPrime ?? Number.NaN, 0.546870102726, { relative: 1e-6 });
  });
  test("two-sided: which was chosen turns the sign and nothing else", () => {
    const [few, many] = [
      differenceEstimate("paired-two-sided", 4, 20),
      differenceEstimate("paired-two-sided", 16, 20),
    ];
    expect(few.pValue).toBe(many.pValue);
    // 2 P(X ≤ 4) for 20 throws of a coin: 2 · 6196/2²⁰
    expectNear(few.pValue, (2 * 6196) / 2 ** 20, { relative: 1e-12 });
    expectNear(few.dPrime ?? Number.NaN, -(many.dPrime ?? Number.NaN), { relative: 1e-9 });
  });
  test.each([Number.NaN, 41, -0.1])("d′ of %d is refused", (d) => {
    expect(() => shareFromDPrime("triangle", d)).toThrow(DomainError);
  });
});
