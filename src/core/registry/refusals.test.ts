import { describe, expect, test } from "vitest";
import { checkTable } from "../../../test/check-table.ts";
import { refusal, run } from "../../../test/run-calculation.ts";

const ethanol95 = { alcohol: "ethanol", volumeFraction: 0.95 };
const mixed = { resinG: 57, cutLbPerGal: 2, solvent: ethanol95 };
const stock = { solutionMl: 1000, cutLbPerGal: 3, solvent: ethanol95 };
const thinned = { stock, toCutLbPerGal: 1, with: ethanol95 };
const dried = { wetG: 10, dryG: 2, solvent: ethanol95 };
const looked = (notYetH: number, doneByH: number | null) => ({
  model: "weibull",
  jars: [{ jar: "a", group: "A", notYetH, doneByH }],
});

describe("what is refused, with the field and the limits that would do", () => {
  test.each<[string, string, unknown, string, object]>([
    ["negative", "mix", { ...mixed, resinG: -1 }, "resinG", { min: 0.001 }],
    ["zero", "mix", { ...mixed, cutLbPerGal: 0 }, "cutLbPerGal", { min: 0.001 }],
    ["zero", "dry-down", { ...dried, wetG: 0 }, "wetG", { min: 0.001 }],
    [
      "a strength over 100 %",
      "mix",
      { ...mixed, solvent: { alcohol: "ethanol", volumeFraction: 1.01 } },
      "solvent.volumeFraction",
      { max: 1 },
    ],
    [
      "a strength over 200 proof",
      "thin",
      { ...thinned, with: { alcohol: "ethanol", usProof: 201 } },
      "with.usProof",
      { max: 200 },
    ],
    [
      "a temperature outside the formula",
      "alcohol-density",
      { alcohol: "ethanol", temperatureC: 41 },
      "temperatureC",
      { min: -20, max: 40 },
    ],
    [
      "a temperature outside the table",
      "alcohol-density",
      { alcohol: "n-propanol", temperatureC: -11 },
      "temperatureC",
      { min: -10, max: 40 },
    ],
    [
      "thinning to a stronger cut",
      "thin",
      { ...thinned, toCutLbPerGal: 4 },
      "toCutLbPerGal",
      { min: 0, max: 3 },
    ],
    ["a dry-down heavier than wet", "dry-down", { ...dried, dryG: 12 }, "dryG", { min: 0, max: 10 }],
    ["looks out of order", "ready-time", looked(20, 3), "jars[0].doneByH", { min: 20 }],
    ["a look before the mixing", "ready-time", looked(-1, 3), "jars[0].notYetH", { min: 0 }],
  ])("%s (%s)", (_, name, input, field, limits) => {
    const refused = refusal(name, input);
    expect([refused.field, refused.code]).toEqual([field, "out-of-range"]);
    expect(refused.limits).toEqual(limits);
  });

  test.each(["resinG", "cutLbPerGal", "temperatureC"])("NaN as %s", (field) => {
    expect(refusal("mix", { ...mixed, [field]: Number.NaN })).toMatchObject({ field, code: "wrong-type" });
  });

  test("a density that no mixture of the two has, with those that one has", () => {
    for (const densityKgM3 of [700, 1100]) {
      const refused = refusal("alcohol-strength", { alcohol: "ethanol", densityKgM3 });
      expect(refused).toMatchObject({ field: "densityKgM3", code: "out-of-range" });
      expect(refused.limits).toEqual({ min: expect.closeTo(789.24, 2), max: expect.closeTo(998.2, 1) });
    }
    const both = { ...ethanol95, densityKgM3: 811 };
    expect(refusal("alcohol-strength", both)).toMatchObject({ field: "densityKgM3", code: "contradiction" });
    const unmeasured = { alcohol: "acetone", densityKgM3: 900 };
    expect(refusal("alcohol-strength", unmeasured)).toMatchObject({ field: "alcohol", code: "unknown-name" });
  });

  test("more of the stock than there is: the plan says what is missing, and pours none of it in silence", () => {
    const small = { ...stock, solutionMl: 100 };
    const plan = run("working-cuts", {
      stock: small,
      cuts: [{ toCutLbPerGal: 1, resultMl: 1000 }],
      with: ethanol95,
    });
    expect(plan.suffices).toBe(false);
    expect(plan.stockLeftMl).toBeLessThan(0);
  });
});

// NBS Bulletin 9: the strengths of its density grid, read back from the densities, within a rounding of the table over its slope.
test.each(checkTable("solutions/ethanol_water_density_nbs.csv"))(
  "$ethanol_mass_percent % by mass from its density at 20 °C (NBS Bulletin 9)",
  (row) => {
    const densityKgM3 = Number(row.density_20C_g_cm3) * 1e3;
    const { massFraction } = run("alcohol-strength", { alcohol: "ethanol", densityKgM3 });
    expect(Math.abs(100 * (massFraction as number) - Number(row.ethanol_mass_percent))).toBeLessThan(0.07);
  },
);
