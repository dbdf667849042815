import { Desk } from "./bench-notebook.ts";

/** A notebook whose shelf holds so many grams of lemon flakes at 46 a kilogram, and a litre of ethanol of 95 % by volume at 14. */
export function shelfWith(flakesG: number): Desk {
  const desk = new Desk();
  desk.write(100, "notebook-begun", { name: "Test bench" });
  desk.write(90, "material-bought", {
    form: "resin",
    name: "Lemon flakes",
    resin: { grade: "lemon" },
    amount: { typed: `${flakesG} g`, unit: "g", si: flakesG / 1e3 },
    price: { amount: 0.046 * flakesG, currency: "EUR" },
  });
  desk.write(90, "material-bought", {
    form: "solvent",
    name: "Ethanol 95 %",
    solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
    amount: { typed: "1 l", unit: "l", si: 0.001 },
    price: { amount: 14, currency: "EUR" },
  });
  return desk;
}
