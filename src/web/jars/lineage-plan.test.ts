import { expect, test } from "vitest";
import { Pen, typed } from "../../core/demo/pen.ts";
import { jarView } from "../../core/views/jar.ts";
import { lineagePlan } from "./lineage-plan.ts";

const at = (hour: number) => `2026-10-01T${String(hour).padStart(2, "0")}:00:00.000Z`;
const pen = new Pen("lineage", "Europe/Berlin");
const ml = (n: number) => typed(`${n} ml`, "volume");

const mixed = (code: string, hour: number) =>
  pen.write(at(hour), "batch-mixed", {
    code,
    resins: [{ name: "Lemon", amount: typed("60 g", "mass") }],
    solvents: [{ name: "Spirit", amount: ml(250) }],
  });
const stock = mixed("A", 8);
const other = mixed("B", 9);
const strained = pen.write(at(10), "batch-filtered", { code: "A1", kept: ml(240) }, { about: [stock] });
const thinned = [1, 2].map((n) =>
  pen.write(
    at(10 + n),
    "batch-thinned",
    { code: `A1${n}`, taken: ml(50), added: [{ name: "Spirit", amount: ml(50) }] },
    { about: [strained] },
  ),
);
const blend = pen.write(
  at(14),
  "batch-blended",
  {
    code: "C",
    parts: [
      { batch: strained, amount: ml(50) },
      { batch: other, amount: ml(50) },
    ],
  },
  { about: [strained, other] },
);
const look = (id: string) => jarView(pen.book, id);
const planOf = (id: string) => {
  const jar = look(id);
  if (jar === null) throw new Error("no jar");
  return lineagePlan(jar, look, 338);
};
const rows = (id: string) => {
  const { kin } = planOf(id);
  const heights = [...new Set(kin.map((one) => one.y))].sort((a, b) => a - b);
  return heights.map((y) => kin.filter((one) => one.y === y).map((one) => one.jar.code));
};

test("a blend stands below both that it came from, by the longer way", () => {
  expect(rows(blend)).toEqual([["A", "B"], ["A1"], ["C"]]);
  expect(planOf(blend).pours.map(({ from, to }) => `${from.jar.code}>${to.jar.code}`)).toEqual([
    "A>A1",
    "A1>C",
    "B>C",
  ]);
});

test("a jar is seen with what it came from and what came from it, not with its sisters", () => {
  expect(rows(strained)).toEqual([["A"], ["A1"], ["A11", "A12", "C"]]);
  expect(rows(thinned[0] ?? "")).toEqual([["A"], ["A1"], ["A11"]]);
});

test("nothing is drawn outside the page", () => {
  for (const { x } of planOf(strained).kin) {
    expect(x).toBeGreaterThan(31);
    expect(x).toBeLessThan(338 - 31);
  }
});
