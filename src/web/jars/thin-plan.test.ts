import { expect, test } from "vitest";
import { Pen, typed } from "../../core/demo/pen.ts";
import { jarView } from "../../core/views/jar.ts";
import { thinPlan } from "./thin-plan.ts";

const at = "2026-10-01T08:00:00.000Z";
const pen = new Pen("thin plan", "Europe/Berlin");
const spirit = pen.write(at, "material-bought", {
  form: "solvent",
  name: "Ethanol 95 %",
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
});
const stock = pen.write(
  at,
  "batch-mixed",
  {
    code: "L1",
    resins: [{ name: "Lemon", amount: typed("359.48 g", "mass") }],
    solvents: [{ material: spirit, amount: typed("1 l", "volume") }],
  },
  { about: [spirit] },
);
const jar = jarView(pen.book, stock);
if (jar === null) throw new Error("no jar");

test("3 lb to 1 lb takes 1.54 parts, where the simple ratio says 2 and gives 0.83 (mass balance; trade reference)", () => {
  const plan = thinPlan(jar, 1, jar.composition, { takenMl: 1000 });
  expect(plan.ok && plan.value.thinned.addMl).toBeCloseTo(1540.4, 0);
  expect(plan.ok && plan.value.thinned.simpleRatioWouldGive.cutLbPerGal).toBeCloseTo(0.834, 3);
});

test("so much wanted comes out as so much made", () => {
  const plan = thinPlan(jar, 1.5, jar.composition, { madeMl: 200 });
  expect(plan.ok && plan.value.thinned.resultMl).toBeCloseTo(200, 6);
  expect(plan.ok && plan.value.shortByMl).toBe(0);
});

test("a stock that does not suffice says by how much", () => {
  const plan = thinPlan(jar, 1, jar.composition, { takenMl: 1400 });
  expect(plan.ok && plan.value.shortByMl).toBeCloseTo(1400 - 1298.3, 0);
});

test("thinning to a stronger cut is refused with the cut that is there", () => {
  const plan = thinPlan(jar, 4, jar.composition, { takenMl: 100 });
  expect(!plan.ok && plan.error.field).toBe("toCutLbPerGal");
});
