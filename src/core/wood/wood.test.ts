import { expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { expectNear } from "../../../test/near.ts";
import { celsius, massFraction, metre } from "../units.ts";
import { equilibriumMoisture, validWoodTemperature } from "./equilibrium-moisture.ts";
import { movement } from "./movement.ts";
import { type Shrinkage, shrinkageOf, woodSpecies } from "./shrinkage.ts";

// USDA Wood Handbook, table 4-2. A row that says it is suspect is not a value to hold to.
const rows = checkTable("solutions/wood_emc_check.csv").filter((row) => !/SUSPECT/.test(row.note ?? ""));
test.each(rows)("wood at $t_C °C and $rh_percent %: $emc_percent_reference % to 0.1", (row) => {
  const got = equilibriumMoisture(celsius(Number(row.t_C)), Number(row.rh_percent) / 100);
  expectNear(100 * got, Number(row.emc_percent_reference), { absolute: 0.1 });
});

test("damper air makes wetter wood, warmer air drier wood", () => {
  for (let h = 0.05; h < 1; h += 0.05)
    expect(equilibriumMoisture(celsius(20), h)).toBeGreaterThan(equilibriumMoisture(celsius(20), h - 0.05));
  expect(equilibriumMoisture(celsius(30), 0.5)).toBeLessThan(equilibriumMoisture(celsius(10), 0.5));
});

const cherry = shrinkageOf("cherry, black") as Shrinkage;
const teak = shrinkageOf("teak") as Shrinkage;
const of = (from: number, to: number, wood = cherry, grain: "radial" | "tangential" = "tangential") =>
  movement(metre(0.3), massFraction(from), massFraction(to), wood, grain);

// Wood Handbook, ch. 13, eq. 13-2, with its own coefficients: 300 mm × 0.00248 × 4 %.
test("movement between 6 and 14 % by the printed coefficient", () => {
  expectNear(of(0.06, 0.1).change * 1e3, 2.976, { relative: 1e-9 });
  expect(of(0.06, 0.1).method).toBe("coefficient");
  expectNear(of(0.06, 0.1, cherry, "radial").change * 1e3, 300 * 0.00126 * 4, { relative: 1e-9 });
});

test("elsewhere by the total shrinkage, which the coefficient was worked out from: within a tenth of each other", () => {
  const whole = movement(metre(0.3), massFraction(0.05), massFraction(0.13), cherry, "tangential");
  expect(whole.method).toBe("total shrinkage");
  expectNear(whole.change / 8, of(0.06, 0.1).change / 4, { relative: 0.1 });
  expect(of(0.06, 0.12, teak).method).toBe("total shrinkage");
});

test("above fibre saturation nothing moves, and there and back is nowhere", () => {
  expect(of(0.32, 0.4).change).toBe(0);
  const out = of(0.05, 0.2);
  const back = movement(out.width, massFraction(0.2), massFraction(0.05), cherry, "tangential");
  expectNear(back.width, 0.3, { absolute: 1e-9 });
});

test("27 woods, each once; another has no row", () => {
  expect(new Set(woodSpecies).size).toBe(27);
  expect(shrinkageOf("bamboo")).toBeUndefined();
});

test("both ends are in the range; just outside and NaN are not", () => {
  const { min, max } = validWoodTemperature;
  expect(() => equilibriumMoisture(min, 0)).not.toThrow();
  expect(() => equilibriumMoisture(max, 1)).not.toThrow();
  expect(() => equilibriumMoisture(celsius(min - 0.1), 0.5)).toThrow(/temperatureC/);
  expect(() => equilibriumMoisture(celsius(max + 0.1), 0.5)).toThrow(/temperatureC/);
  expect(() => equilibriumMoisture(celsius(20), 1.01)).toThrow(/relativeHumidity/);
  expect(() => equilibriumMoisture(celsius(20), Number.NaN)).toThrow(/relativeHumidity/);
});
