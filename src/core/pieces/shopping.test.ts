import fc from "fast-check";
import { expect, test } from "vitest";
import { calendarDay } from "./calendar-day.ts";
import { goodUntil } from "./good-until.ts";
import { fromShelf, type Stock } from "./shopping.ts";

// By hand: the bag that goes off in March before that of June though it was bought later, then the one that keeps.
test("what expires first is used first, and the rest is bought", () => {
  const stock: Stock[] = [
    { id: "keeps", left: 10, goodUntil: null, bought: "2020-01-01" },
    { id: "june", left: 30, goodUntil: "2027-06-01", bought: "2024-01-01" },
    { id: "march", left: 20, goodUntil: "2027-03-01", bought: "2025-01-01" },
    { id: "not known", left: null, goodUntil: "2026-12-01", bought: null },
    { id: "overdrawn", left: -5, goodUntil: "2026-12-01", bought: null },
  ];
  expect(fromShelf(45, stock)).toEqual({
    taken: [
      { id: "march", amount: 20 },
      { id: "june", amount: 25 },
    ],
    toBuy: 0,
    unknown: ["not known"],
  });
  expect(fromShelf(75, stock).toBuy).toBe(15);
});

test("what is taken and what is bought come to what is needed, and nothing is taken that is not there", () => {
  const amount = fc.double({ min: 0, max: 1e3, noNaN: true });
  const one = fc.record({
    left: fc.option(amount),
    goodUntil: fc.constantFrom(null, "2026-01-01", "2027-01-01"),
    bought: fc.constantFrom(null, "2025-01-01"),
  });
  fc.assert(
    fc.property(amount, fc.array(one), (need, found) => {
      const stock = found.map((s, i) => ({ ...s, id: String(i) }));
      const { taken, toBuy } = fromShelf(need, stock);
      expect(taken.reduce((sum, t) => sum + t.amount, toBuy)).toBeCloseTo(need, 6);
      for (const { id, amount: used } of taken)
        expect(used).toBeLessThanOrEqual(stock[Number(id)]?.left ?? 0);
    }),
  );
});

test.each([-1, Number.NaN])("a need of %d is refused", (need) => {
  expect(() => fromShelf(need, [])).toThrow("need");
});

// trade reference B4: waxy flakes keep for years, dewaxed and pale ones one to three, bleached ones least
test("dewaxed flakes are tried after one to three years, waxy ones later, bleached ones sooner", () => {
  const bought = calendarDay("2026-01-01");
  const until = (grade: string, wax: number | null) => goodUntil({ grade, wax }, bought);
  expect(until("blonde", 0.005) >= "2027-01-01" && until("blonde", 0.005) <= "2029-01-01").toBe(true);
  expect(until("button", 0.05) > until("blonde", 0.005)).toBe(true);
  expect(until("bleached", 0.005) < until("blonde", 0.005)).toBe(true);
  expect(until("lemon", null)).toBe(until("lemon", 0.005));
});
