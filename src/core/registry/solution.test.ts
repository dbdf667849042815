import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { refusal, run } from "../../../test/run-calculation.ts";
import { calculationNamed } from "./all.ts";

/** The examples that every door must give; their source stands in each file. */
const names = [
  "alcohol-density",
  "alcohol-strength",
  "alcohol-blend",
  "mix",
  "thin",
  "dry-down",
  "film-build",
];

type Tolerance = readonly [kind: "abs" | "rel", x: number];
interface Example {
  readonly input: unknown;
  readonly output: Record<string, unknown>;
  readonly tolerance: Readonly<Record<string, Tolerance>>;
}

function expectNear(got: unknown, expected: unknown, tolerance: Tolerance): void {
  if (typeof expected === "number") {
    const allowed = tolerance[0] === "abs" ? tolerance[1] : tolerance[1] * Math.abs(expected);
    expect(Math.abs((got as number) - expected)).toBeLessThanOrEqual(allowed);
    return;
  }
  for (const [key, value] of Object.entries(expected as object))
    expectNear((got as Record<string, unknown>)[key], value, tolerance);
}

describe("the published examples", () => {
  test.each(names)("%s", (name) => {
    const file = new URL(`../../../test/check-values/calc/${name}.json`, import.meta.url);
    const example = JSON.parse(readFileSync(file, "utf8")) as Example;
    const got = run(name, example.input);
    for (const [key, value] of Object.entries(example.output))
      expectNear(got[key], value, (example.tolerance[key] ?? example.tolerance["*"]) as Tolerance);
  });
});

const ethanol95 = { alcohol: "ethanol", volumeFraction: 0.95 };

describe("each calculation's own example", () => {
  const own = [
    "alcohol-density",
    "alcohol-strength",
    "alcohol-blend",
    "mix",
    "thin",
    "working-cuts",
    "blend-jars",
  ];
  test.each([...own, "restore", "dry-down", "film-build"])("%s", (name) => {
    const example = calculationNamed(name)?.example;
    const got = run(name, example?.input);
    for (const [key, value] of Object.entries(example?.output as object))
      typeof value === "boolean" ? expect(got[key]).toBe(value) : expectNear(got[key], value, ["rel", 1e-3]);
  });
});

describe("what is refused, with the field", () => {
  const mixed = { resinG: 57, cutLbPerGal: 2, solvent: ethanol95 };
  const stock = { solutionMl: 1000, cutLbPerGal: 3, solvent: ethanol95 };
  const thinned = { stock, toCutLbPerGal: 1, with: ethanol95 };
  const dried = { wetG: 10, dryG: 2, solvent: ethanol95 };
  const coat = { cutLbPerGal: 2, wetUm: 100 };
  test.each([
    ["mix", { ...mixed, resinG: -1 }, "resinG", "out-of-range"],
    ["mix", { ...mixed, resinG: 0 }, "resinG", "out-of-range"],
    ["mix", { ...mixed, cutLbPerGal: 0 }, "cutLbPerGal", "out-of-range"],
    ["mix", { ...mixed, resinG: "57" }, "resinG", "wrong-type"],
    ["mix", { ...mixed, resinG: Number.NaN }, "resinG", "wrong-type"],
    ["mix", { ...mixed, flakesG: 57 }, "flakesG", "unknown-field"],
    ["mix", { ...mixed, solvent: { ...ethanol95, strength: 1 } }, "solvent.strength", "unknown-field"],
    [
      "mix",
      { ...mixed, solvent: { alcohol: "ethanol", volumeFraction: 1.2 } },
      "solvent.volumeFraction",
      "out-of-range",
    ],
    ["mix", { ...mixed, solvent: { alcohol: "gin" } }, "solvent.alcohol", "unknown-name"],
    [
      "mix",
      { ...mixed, solvent: { ...ethanol95, massFraction: 0.9 } },
      "solvent.volumeFraction",
      "contradiction",
    ],
    [
      "mix",
      { ...mixed, solvent: { ...ethanol95, atTemperatureC: 50 } },
      "solvent.atTemperatureC",
      "out-of-range",
    ],
    [
      "mix",
      { ...mixed, solvent: { alcohol: "isopropanol", usProof: 190 } },
      "solvent.usProof",
      "contradiction",
    ],
    [
      "mix",
      { ...mixed, solvent: { alcohol: "water", massFraction: 0.5 } },
      "solvent.massFraction",
      "contradiction",
    ],
    [
      "mix",
      { ...mixed, solvent: { parts: [{ ...ethanol95, massShare: 0.5 }] } },
      "solvent.parts",
      "contradiction",
    ],
    ["mix", { ...mixed, solvent: { parts: [ethanol95] } }, "solvent.parts[0].massShare", "missing"],
    ["mix", { ...mixed, temperatureC: 41 }, "temperatureC", "out-of-range"],
    ["mix", { ...mixed, temperatureC: -300 }, "temperatureC", "out-of-range"],
    ["mix", { ...mixed, headspaceFraction: 0.1 }, "headspaceFraction", "contradiction"],
    ["mix", { ...mixed, gramsPerLitreSolvent: 240 }, "gramsPerLitreSolvent", "contradiction"],
    ["mix", { ...mixed, resins: [{ massShare: 0.5 }] }, "resins.massShare", "contradiction"],
    [
      "mix",
      { ...mixed, resins: [{ partialDensityKgM3: 1.2 }] },
      "resins[0].partialDensityKgM3",
      "out-of-range",
    ],
    ["mix", { solvent: ethanol95, resinG: 57 }, "cutLbPerGal", "missing"],
    ["mix", { solvent: ethanol95, cutLbPerGal: 2 }, "resinG", "missing"],
    ["mix", { resinG: 57, cutLbPerGal: 2 }, "solvent", "missing"],
    ["mix", { resinG: 600, solutionMl: 400, solvent: ethanol95 }, "solutionMl", "contradiction"],
    ["thin", { ...thinned, toCutLbPerGal: 4 }, "toCutLbPerGal", "out-of-range"],
    ["thin", { ...thinned, toCutLbPerGal: 0 }, "toCutLbPerGal", "out-of-range"],
    ["thin", { ...thinned, stock: { ...stock, solutionG: 900 } }, "stock.solutionG", "contradiction"],
    ["thin", { ...thinned, stock: { cutLbPerGal: 3, solvent: ethanol95 } }, "stock.solutionMl", "missing"],
    ["thin", { ...thinned, stock: { solutionMl: 1000, solvent: ethanol95 } }, "stock.cutLbPerGal", "missing"],
    ["thin", { ...thinned, with: { alcohol: "ethanol", usProof: 201 } }, "with.usProof", "out-of-range"],
    ["dry-down", { ...dried, dryG: 10 }, "dryG", "out-of-range"],
    ["dry-down", { ...dried, dryG: 12 }, "dryG", "out-of-range"],
    ["dry-down", { ...dried, wetG: 0 }, "wetG", "out-of-range"],
    ["alcohol-density", { alcohol: "ethanol", massFraction: 1.01 }, "massFraction", "out-of-range"],
    ["alcohol-density", { alcohol: "isopropanol", temperatureC: -11 }, "temperatureC", "out-of-range"],
    ["alcohol-density", { alcohol: "ethanol", temperatureC: -21 }, "temperatureC", "out-of-range"],
    ["alcohol-strength", { alcohol: "ethanol", atTemperatureC: 20 }, "atTemperatureC", "contradiction"],
    ["alcohol-blend", { parts: [] }, "parts", "out-of-range"],
    ["alcohol-blend", { parts: [{ alcohol: "water" }] }, "parts[0].volumeMl", "missing"],
    [
      "alcohol-blend",
      { parts: [{ alcohol: "water", massG: 1, volumeMl: 1 }] },
      "parts[0].volumeMl",
      "contradiction",
    ],
    ["restore", { jar: stock, lostG: 2000 }, "lostG", "out-of-range"],
    ["film-build", { coats: [{ cutLbPerGal: 2 }] }, "coats[0].wetUm", "missing"],
    ["film-build", { coats: [{ ...coat, gramsPerM2: 90 }] }, "coats[0].gramsPerM2", "contradiction"],
    [
      "film-build",
      { coats: [coat], sanded: [{ afterCoat: 1, removedUm: 50 }] },
      "sanded[0].removedUm",
      "out-of-range",
    ],
    [
      "film-build",
      { coats: [coat], sanded: [{ afterCoat: 2, removedUm: 5 }] },
      "sanded[0].afterCoat",
      "out-of-range",
    ],
  ])("%s %j: %s", (name, input, field, code) => {
    const refused = refusal(name as string, input);
    expect([refused.field, refused.code]).toEqual([field, code]);
    expect(refused.message.length).toBeGreaterThan(10);
  });

  test("three amounts are one too many, and the refusal says what the first two make of the third", () => {
    const refused = refusal("mix", { ...mixed, solventMl: 300 });
    expect([refused.code, refused.field]).toEqual(["contradiction", "solventMl"]);
    expect(refused.message).toContain("resinG and cutLbPerGal already make it 237.84");
  });

  test("thinning to a stronger cut says how much resin would do it", () => {
    expect(refusal("thin", { ...thinned, toCutLbPerGal: 4 }).message).toMatch(/g more of dry resin/);
  });
});
