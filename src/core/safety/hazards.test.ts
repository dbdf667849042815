import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Component } from "../registry/solvent.ts";
import { hazardsOf, lowestLimit } from "./hazards.ts";

// IEC 60079-20-1:2010, NFPA 497 (2008), OSHA Z-1 and NIOSH limits as collected in the solvents reference table.
const file = "test/check-values/solutions/flammability_exposure.csv";
const names: Record<string, Component> = {
  "2-propanol": "isopropanol",
  "1-propanol": "n-propanol",
  "1-butanol": "n-butanol",
  MEK: "mek",
  MIBK: "mibk",
  "ethyl acetate": "ethyl-acetate",
  "n-butyl acetate": "n-butyl-acetate",
};
const [head = "", ...lines] = readFileSync(file, "utf8").trim().split(/\r?\n/);
const columns = head.split(",");
const rows = lines.map((line) => {
  const cells = line.split(",");
  return Object.fromEntries(columns.map((name, i) => [name, cells[i] ?? ""]));
});
const numbers = (...texts: (string | undefined)[]): number[] =>
  texts.flatMap((text) => (text === undefined || text === "" ? [] : [Number(text)]));

test("every row of the table is read", () => expect(rows).toHaveLength(11));

test.each(rows)("hazardsOf: $name against both lists, the more careful of the two", (row) => {
  const name = row.name as string;
  const hazards = hazardsOf(names[name] ?? (name as Component));
  expect(hazards?.flashPoint).toBe(Math.min(...numbers(row.flash_point_iec_C, row.flash_point_nfpa_C)));
  expect(hazards?.lowerFlammableLimit).toBeCloseTo(
    Math.min(...numbers(row.lfl_iec_vol_percent, row.lfl_nfpa_vol_percent)) / 100,
    12,
  );
  expect(hazards?.upperFlammableLimit).toBeCloseTo(
    Math.max(...numbers(row.ufl_iec_vol_percent, row.ufl_nfpa_vol_percent)) / 100,
    12,
  );
  const day = hazards?.limits.filter((limit) => limit.over === "day").map((limit) => limit.ppm);
  expect(day).toEqual(numbers(row.osha_pel_twa_ppm, row.niosh_rel_twa_ppm));
  expect(hazards?.goesThroughSkin).toBe(row.skin_notation !== "");
});

test("lowestLimit takes the ceiling where it is the lowest", () => {
  const butanol = hazardsOf("n-butanol");
  expect(butanol && lowestLimit(butanol)).toMatchObject({ ppm: 50, over: "ceiling", body: "NIOSH" });
});

test("water and an unnamed part have no row", () => {
  expect(hazardsOf("water")).toBeUndefined();
  expect(hazardsOf("unknown")).toBeUndefined();
});
