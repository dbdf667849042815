import { expect, test } from "vitest";
import { Pen, typed } from "../demo/pen.ts";
import { shoppingList } from "./shopping-list.ts";

const at = "2026-10-01T08:00:00.000Z";

function shelf() {
  const pen = new Pen("shopping", "Europe/Berlin");
  const flakes = (lot: string, grams: number, bought: string, price: number, wax = 0.005, grade = "lemon") =>
    pen.write(at, "material-bought", {
      form: "resin",
      name: `Lemon ${lot}`,
      resin: { grade, waxMassFraction: wax },
      lot,
      amount: typed(`${grams} g`, "mass"),
      price: { amount: price, currency: "EUR" },
      bought,
    });
  const newer = flakes("B", 100, "2026-03-01", 5);
  const older = flakes("A", 60, "2024-02-01", 2);
  flakes("waxy", 500, "2024-01-01", 9, 0.05);
  flakes("garnet", 500, "2024-01-01", 9, 0.005, "garnet");
  const spirit = pen.write(at, "material-bought", {
    form: "solvent",
    name: "Ethanol 96 %",
    solvent: { alcohol: "ethanol", volumeFraction: 0.96 },
    amount: typed("1 l", "volume"),
    price: { amount: 14, currency: "CHF" },
  });
  return { pen, newer, older, spirit };
}

// By hand: 200 g of flakes: the 60 g of 2024 first, 100 g of 2026, and 40 g to buy at 5 for 100 g; 1.5 L of alcohol: the litre, and half of one to buy at 14 a litre.
test("every lot of the same is used, the oldest first, and the rest is bought at what was paid last", () => {
  const { pen, newer, older, spirit } = shelf();
  const needed = { resin: newer, solvent: spirit, resinKg: 0.2, solventM3: 1.5e-3 };
  const { flakes, alcohol } = shoppingList(pen.book, needed, "2026-10-02");
  expect(flakes?.taken.map(({ id, old }) => [id, old])).toEqual([
    [older, true],
    [newer, false],
  ]);
  expect(flakes?.taken.map(({ amount }) => amount * 1e3)).toEqual([
    expect.closeTo(60, 9),
    expect.closeTo(100, 9),
  ]);
  expect((flakes?.toBuy ?? 0) * 1e3).toBeCloseTo(40, 9);
  expect(flakes?.cost?.amount).toBeCloseTo(2, 9);
  expect(flakes?.cost?.currency).toBe("EUR");
  expect((alcohol?.toBuy ?? 0) * 1e6).toBeCloseTo(500, 6);
  expect(alcohol?.cost?.amount).toBeCloseTo(7, 9);
  expect(alcohol?.cost?.currency).toBe("CHF");
});

test("nothing chosen is nothing said, and where the shelf holds enough nothing is bought", () => {
  const { pen, newer } = shelf();
  const needed = { resin: newer, solvent: null, resinKg: 0.05, solventM3: 1e-3 };
  const list = shoppingList(pen.book, needed, "2026-10-02");
  expect(list.alcohol).toBeNull();
  expect(list.flakes?.toBuy).toBe(0);
  expect(list.flakes?.cost).toBeNull();
});
