import { expect, test } from "vitest";
import { calculate } from "./calculation.ts";
import { piecePlan } from "./pieces.ts";

const table = {
  areaM2: 1,
  method: "pad",
  coats: 1,
  cutLbPerGal: 2,
  solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
  windows: [["2026-10-05T18:00", "2026-10-05T22:00"]],
};
const run = (change: object) => calculate(piecePlan, { ...table, ...change });
const got = (change: object) => {
  const result = run(change);
  if (!result.ok) throw new Error(result.error.message);
  return result.value as {
    dryUm: number;
    resinG: number;
    solventMl: number;
    solutionToMixMl: number;
    steps: { what: string; at: string | null; solutionMl: number }[];
  };
};

// trade reference B3: 0.92 L of 2 lb a square metre with half lost stands 3 mil (76 µm), and resin weighs 30 g/m² a mil.
test("three mil of 2 lb by the planning figure", () => {
  const plan = got({ millilitresPerM2PerCoat: 920 / 1.2, transfer: 0.5, spareShare: 0 });
  expect(plan.dryUm / 25.4).toBeGreaterThan(2.95);
  expect(plan.dryUm / 25.4).toBeLessThan(3.05);
  // 30 g/m² a mil, three mil, half lost: 180 g of flakes
  expect(plan.resinG).toBeGreaterThan(175);
  expect(plan.resinG).toBeLessThan(187);
});

// trade reference B4 answer 1: 24 g a 100 mL of alcohol makes a 2 lb cut
test("flakes and alcohol stand at 24 g to 100 mL at 2 lb", () => {
  const plan = got({});
  expect(plan.resinG / plan.solventMl).toBeCloseTo(0.24, 3);
});

// By hand, padded: 57 mL/m² · 1.2 on bare wood (common practice), and twice that on the 0.1 m² of end grain:
// 68.4 + 6.84 for the first coat, 57 for the second; what end grain drinks is no film.
test("end grain takes more of the first coat, and the film is none the thicker", () => {
  const [plain, ends] = [got({ coats: 2 }), got({ coats: 2, endGrainM2: 0.1 })];
  const coats = ends.steps.filter((step) => step.what === "coat").map((step) => step.solutionMl);
  expect(coats[0]).toBeCloseTo(75.24, 6);
  expect(coats[1]).toBeCloseTo(57, 6);
  expect(ends.dryUm).toBeCloseTo(plain.dryUm, 9);
});

test("dates are said as they were given", () => {
  expect(got({}).steps[0]?.at).toBe("2026-10-05T18:00");
});

test.each([
  ["areaM2", { areaM2: 0 }],
  ["coats", { coats: 1.5 }],
  ["method", { method: "roller" }],
  ["windows[0][0]", { windows: [["Monday", "2026-10-05T22:00"]] }],
  ["windows[0]", { windows: [["2026-10-05T18:00", "2026-10-06T01:00"]] }],
  ["cutLbPerGal", { cutLbPerGal: 0 }],
  ["endGrainM2", { endGrainM2: 1.1 }],
  ["endGrainTimes", { endGrainM2: 0.1, endGrainTimes: 0.5 }],
  ["windws", { windws: [] }],
])("%s is refused by name", (field, change) => {
  const result = run(change);
  expect(result.ok ? null : result.error.field).toBe(field);
});

const sides = [
  { name: "underside", share: 0.5 },
  { name: "top", share: 0.5, turned: true },
];

// By hand: padding takes 20 min a square metre, ten for each side; 57 mL · 1.2 on bare wood, shared out; the one coat of a
// plain schedule dries 15 min before it is lain on.
test("a coat on two sides is one coat to mix, at two hours, and each says its side", () => {
  const plan = got({ surfaces: sides });
  const coats = plan.steps.filter((step) => step.what === "coat");
  expect(coats).toMatchObject([
    { coat: 1, surface: "underside", at: "2026-10-05T18:26" },
    { coat: 1, surface: "top", at: "2026-10-05T18:51" },
  ]);
  expect(coats.map((step) => step.solutionMl)).toEqual([34.2, 34.2]);
  expect((plan as unknown as { mixes: { coats: number }[] }).mixes.map((mix) => mix.coats)).toEqual([1]);
  expect(plan.steps.every((step) => step.what !== "rub out" || !("surface" in step && step.surface))).toBe(
    true,
  );
});

test.each([
  ["surfaces", { surfaces: [{ name: "top", share: 0.9 }] }],
  ["surfaces[0].side", { surfaces: [{ name: "top", share: 1, side: 2 }] }],
  ["surfaces[1].turnd", { surfaces: [sides[0], { ...sides[1], turnd: true }] }],
  ["hands", { hands: 0 }],
  ["hands", { hands: 1.5 }],
  ["dryingPlaces", { dryingPlaces: 13 }],
  ["turnMinutes", { turnMinutes: Number.NaN }],
  ["begunOn[0].at", { surfaces: sides, begunOn: [{ surface: "top", coats: 1, at: "noon" }] }],
  ["begunOn[0].surface", { begunOn: [{ surface: "top", coats: 1, at: "2026-10-05T18:00" }] }],
  [
    "begunOn",
    {
      begun: { coats: 1, at: "2026-10-05T18:00" },
      begunOn: [{ surface: "top", coats: 1, at: "2026-10-05T18:00" }],
    },
  ],
])("of surfaces %s is refused by name", (field, change) => {
  const result = run(change);
  expect(result.ok ? null : result.error.field).toBe(field);
});
