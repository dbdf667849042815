import { expect, test } from "vitest";
import { largestResiduals } from "./largest-residuals.ts";
import { topic as typeA } from "./uncertainty-type-a.ts";

const quantity = (expected: number, got: number, tolerance: string, ok: boolean | null = true) => ({
  quantity: "density",
  expected,
  got,
  tolerance,
  residual: got - expected,
  ok,
});
const report = (rows: readonly (readonly [string, ReturnType<typeof quantity>])[]) => ({
  topic: "solutions",
  passed: 0,
  failed: 0,
  notRead: 0,
  cases: rows.map(([id, q]) => ({ id, outcome: "passed" as const, quantities: [q] })),
  unread: [],
  sources: { "a.csv": "a handbook" },
});

test("of each column the case that lies furthest from its source, and how many were compared", () => {
  const rows = [
    ["a.csv row 1", quantity(1, 1.25, "abs 1")],
    ["a.csv row 2", quantity(9, 8, "abs 2")],
    ["a.csv row 3", quantity(9, 4, "abs 1", null)], // shown only
    ["b.csv row 1", quantity(1, 2, "abs 1")], // nobody printed it
  ] as const;
  expect([...largestResiduals(report(rows))]).toEqual([
    "largest of 2 against a handbook\tdensity of a.csv row 2\t9\t8\tabs 2\t-1.00\tshown",
  ]);
});

test("where the tolerance is of the value, so is the residual that counts", () => {
  const rows = [
    ["a.csv row 1", quantity(1, 1.5, "rel 0.6")],
    ["a.csv row 2", quantity(100, 101, "rel 0.6")],
  ] as const;
  expect([...largestResiduals(report(rows))][0]).toContain("a.csv row 1");
});

test("a calibration line and a day-to-day analysis are read, and what is not known in them is not read", () => {
  const line = {
    kind: "calibration-line",
    model: { t: [0, 1, 2, 3], b: [1, 2.1, 2.9, 4], t0: 1, at: 4 },
    expected: { y1: 1, y2: 1, r_y1_y2: 0, value: 5 },
  };
  const read = typeA.kinds?.["calibration-line"];
  expect(read?.(line, undefined as never)).toMatchObject({
    y1: expect.closeTo(2.01, 9),
    y2: expect.closeTo(0.98, 9),
    value: expect.closeTo(4.95, 9),
  });
  expect(() => read?.({ ...line, expected: { colour: 1 } }, undefined as never)).toThrow("colour");
  expect(() => read?.({ ...line, model: { t: [1, 2] } }, undefined as never)).toThrow("t0");
  const days = {
    kind: "anova-type-a",
    model: { means: [1, 2], sds: [0.5, 0.5], per_day: 4 },
    expected: { F: 8 },
  };
  expect(typeA.kinds?.["anova-type-a"]?.(days, undefined as never)).toMatchObject({
    F: expect.closeTo(8, 9),
  });
});
