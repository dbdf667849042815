import { expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { type MassFraction, massFraction } from "../units.ts";
import { relativeEvaporationRate } from "./relative-rate.ts";
import type { Volatile } from "./volatiles.ts";

const names: Record<string, Volatile> = {
  MEK: "mek",
  MIBK: "mibk",
  "ethyl acetate": "ethyl-acetate",
  "2-propanol": "isopropanol",
  "1-propanol": "n-propanol",
  "1-butanol": "n-butanol",
  "n-butyl acetate": "n-butyl-acetate",
  "ethanol anhydrous": "ethanol",
};
const one = massFraction(1);
const compositionOf = (solvent = ""): Partial<Record<Volatile, MassFraction>> =>
  solvent === "ethanol 95%"
    ? { ethanol: massFraction(0.924), water: massFraction(0.076) }
    : { [names[solvent] ?? (solvent as Volatile)]: one };

// Four published lists (a safety glossary, a distributor's guide, Ind. Eng. Chem. 27 (1935) 1169, producers' charts): the
// spread of each solvent, widened by a quarter.
test.each(checkTable("solutions/relative_evaporation_rates_spread.csv"))("$solvent: $low to $high", (row) => {
  const got = relativeEvaporationRate(compositionOf(row.solvent));
  expect(got).toBeGreaterThan(Number(row.low) / 1.25);
  expect(got).toBeLessThan(Number(row.high) * 1.25);
});

test("the order of the lists: acetone, MEK, the two alcohols, butyl acetate, butanol; methanol before ethanol", () => {
  const rate = (liquid: Volatile): number => relativeEvaporationRate({ [liquid]: one });
  const order = [rate("acetone"), rate("mek"), rate("ethanol"), 1, rate("n-butanol")];
  for (let i = 1; i < order.length; i++) expect(order[i]).toBeLessThan(order[i - 1] ?? 0);
  expect(rate("isopropanol")).toBeGreaterThan(1);
  expect(rate("methanol")).toBeGreaterThan(rate("ethanol"));
});

test("a part without a name is refused", () => {
  expect(() => relativeEvaporationRate({ unknown: one })).toThrow(/unknown/);
});
