import { expect, test } from "vitest";
import { Pen, typed } from "../demo/pen.ts";
import { Notebook } from "../notebook/notebook.ts";
import { materialIds, materialView } from "./material.ts";

const at = "2026-10-01T08:00:00.000Z";
const open = (pen: Pen): Notebook => {
  const notebook = new Notebook(pen.notebook);
  notebook.add(pen.entries);
  return notebook;
};

test("a kilogram for 46 is 0.046 a gram; 57 g mixed leave 943 g", () => {
  const pen = new Pen("materials", "Europe/Berlin");
  const flakes = pen.write(at, "material-bought", {
    form: "resin",
    name: "Lemon",
    resin: { grade: "lemon" },
    amount: typed("1 kg", "mass"),
    price: { amount: 46, currency: "EUR" },
    bought: "2026-09-28",
  });
  pen.write(
    at,
    "batch-mixed",
    { code: "L1", resins: [{ material: flakes, amount: typed("57 g", "mass") }], solvents: [] },
    { about: [flakes] },
  );
  const view = materialView(open(pen), flakes);
  expect((view?.price?.perKg ?? 0) / 1e3).toBeCloseTo(0.046, 12);
  expect(view?.left?.kg).toBeCloseTo(0.943, 12);
  expect(view?.uses).toHaveLength(1);
});

test("alcohol bought by the litre and used by weight is one stock, by its density (OIML R 22: 811.38 kg/m³)", () => {
  const pen = new Pen("materials", "Europe/Berlin");
  const spirit = pen.write(at, "material-bought", {
    form: "solvent",
    name: "Ethanol 95 %",
    solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
    amount: typed("1 l", "volume"),
    price: { amount: 12, currency: "EUR" },
  });
  pen.write(
    at,
    "batch-mixed",
    { code: "L1", resins: [], solvents: [{ material: spirit, amount: typed("405.69 g", "mass") }] },
    { about: [spirit] },
  );
  const view = materialView(open(pen), spirit);
  expect((view?.left?.m3 ?? 0) * 1e6).toBeCloseTo(500, 1);
  expect((view?.price?.perM3 ?? 0) / 1e6).toBeCloseTo(0.012, 9);
});

test("a strength that cannot be is kept as written, with what is wrong", () => {
  const pen = new Pen("materials", "Europe/Berlin");
  const odd = pen.write(at, "material-bought", {
    form: "solvent",
    name: "Odd",
    solvent: { alcohol: "ethanol", volumeFraction: 1.4 },
  });
  const notebook = open(pen);
  expect(materialIds(notebook)).toEqual([odd]);
  expect(materialView(notebook, odd)?.composition).toBeNull();
  expect(materialView(notebook, odd)?.strengthProblem?.field).toContain("volumeFraction");
});

test("used up is used up, whatever the sums say", () => {
  const pen = new Pen("materials", "Europe/Berlin");
  const flakes = pen.write(at, "material-bought", {
    form: "resin",
    name: "Lemon",
    amount: typed("1 kg", "mass"),
  });
  pen.write(at, "material-used-up", {}, { about: [flakes] });
  expect(materialView(open(pen), flakes)).toMatchObject({ usedUp: true, left: { kg: 0, m3: 0 } });
});
