import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { refusal, run } from "../../../test/run-calculation.ts";
import { typicalPieces } from "./typical-pieces.ts";

interface Found {
  readonly areaM2: number;
  readonly endGrainM2: number;
  readonly equivalentM2: number;
  readonly parts: readonly { readonly part: string; readonly areaM2: number }[];
  readonly flags: readonly { readonly code: string; readonly field: string }[];
}
const area = (parts: readonly object[], more: object = {}) =>
  run("area", { parts, ...more }) as unknown as Found;

const top = { part: "panel", lengthMm: 1800, widthMm: 900, thicknessMm: 30 };

// Areas of typical pieces from the trade reference, A: piece areas for planning; they are said to two figures.
describe("the sizes of the trade reference", () => {
  test.each([
    ["dining top", 3.35, 3.45],
    ["side table", 1.0, 1.5],
    ["dining chair", 0.9, 1.4],
    ["box", 0.45, 0.55],
    ["panelled door", 3.55, 3.65],
    ["acoustic guitar", 0.525, 0.535],
    ["classical guitar", 0.45, 0.55],
    ["ukulele", 0.18, 0.25],
    ["violin", 0.15, 0.18],
  ])("%s", (piece, least, most) => {
    const { areaM2 } = area(typicalPieces.find((one) => one.piece === piece)?.parts ?? []);
    expect(areaM2).toBeGreaterThanOrEqual(least);
    expect(areaM2).toBeLessThanOrEqual(most);
  });

  test("one face of a dining top is 1.6 m²", () => {
    expectNear(area([{ ...top, finished: ["top"] }]).areaM2, 1.6, { absolute: 0.05 });
  });

  test("a box of 300 × 200 × 150 mm is 0.27 m² outside", () => {
    const box = { part: "carcase", heightMm: 150, widthMm: 300, depthMm: 200, thicknessMm: 10 };
    const outside = ["sides", "top", "bottom", "front", "back"];
    expectNear(area([{ ...box, finished: outside }]).areaM2, 0.27, { relative: 1e-12 });
  });

  test("a door is 3.1 m² flat on both faces", () => {
    const door = {
      part: "panel",
      lengthMm: 2000,
      widthMm: 780,
      thicknessMm: 40,
      finished: ["top", "underside"],
    };
    expectNear(area([door]).areaM2, 3.1, { absolute: 0.05 });
  });

  // "Turned leg ≈ π × mean diameter × length": 1 % for a leg that swells and narrows.
  test("a turned leg is about π times its mean diameter times its length", () => {
    const diameters = [30, 38, 46, 50, 44, 36, 30];
    const profile = diameters.map((diameterMm, i) => ({ atMm: i * 100, diameterMm }));
    const mean = diameters.slice(1).reduce((sum, d, i) => sum + (d + (diameters[i] ?? 0)) / 2, 0) / 6;
    const leg = area([{ part: "turned-leg", profile, finished: ["side"] }]);
    expectNear(leg.areaM2, Math.PI * mean * 600 * 1e-6, { relative: 0.01 });
  });
});

test("parts are counted, and their areas make the whole", () => {
  const found = area([
    { ...top, name: "Top" },
    { part: "round-leg", lengthMm: 700, topMm: 50, count: 4, finished: ["side"] },
  ]);
  // By hand: 2·1.8·0.9 + 2·2.7·0.03 = 3.402, and 4·π·0.05·0.7 = 0.4398.
  expectNear(found.areaM2, 3.402 + 0.43982, { absolute: 1e-5 });
  expect(found.parts.map((p) => p.part)).toEqual(["panel", "round-leg"]);
  expectNear(
    found.parts.reduce((sum, p) => sum + p.areaM2, 0),
    found.areaM2,
    { relative: 1e-12 },
  );
  expect(found.parts[0]).toMatchObject({ name: "Top", count: 1 });
});

test("end grain and bare wood take so many times as much", () => {
  // By hand: the two ends of the top are 2·0.9·0.03 = 0.054 m².
  const plain = area([top]);
  expectNear(plain.endGrainM2, 0.054, { relative: 1e-12 });
  expectNear(plain.equivalentM2, 3.402 + 0.054, { relative: 1e-12 });
  expectNear(area([top], { endGrainTimes: 3 }).equivalentM2, 3.402 + 2 * 0.054, { relative: 1e-12 });
  expectNear(area([{ ...top, bare: true }], { bareWoodTimes: 1.5 }).equivalentM2, 1.5 * 3.456, {
    relative: 1e-12,
  });
  expectNear(area([{ ...top, grain: "none" }]).equivalentM2, 3.402, { relative: 1e-12 });
});

test("a surface named twice is counted once, and one face alone or none is remarked on", () => {
  const one = area([{ ...top, finished: ["top", "top"] }]);
  expectNear(one.areaM2, 1.62, { relative: 1e-12 });
  expect(one.flags).toMatchObject([{ code: "one-face", field: "parts[0].finished" }]);
  const none = area([top, { ...top, finished: [] }]);
  expectNear(none.areaM2, 3.402, { relative: 1e-12 });
  expect(none.flags).toMatchObject([{ code: "nothing-finished", field: "parts[1].finished" }]);
  expect(area([top]).flags).toEqual([]);
});

const station = (atMm: number, diameterMm: number) => ({ atMm, diameterMm });
const carcase = { part: "carcase", heightMm: 800, widthMm: 900, depthMm: 450, thicknessMm: 18 };

test.each([
  ["parts", [], "out-of-range"],
  ["parts[0].part", [{ part: "pannel" }], "unknown-name"],
  ["parts[0].part", [{}], "missing"],
  ["parts[0].lengthMm", [{ ...top, lengthMm: 0 }], "out-of-range"],
  ["parts[0].lengthMm", [{ ...top, lengthMm: Number.NaN }], "wrong-type"],
  ["parts[0].widthMm", [{ ...top, widthMm: 20_001 }], "out-of-range"],
  ["parts[1].count", [top, { ...top, count: 0 }], "out-of-range"],
  ["parts[0].count", [{ ...top, count: 1.5 }], "wrong-type"],
  ["parts[0].finished[0]", [{ ...top, finished: ["bottom"] }], "unknown-name"],
  ["parts[0].heightMm", [{ ...top, heightMm: 3 }], "unknown-field"],
  ["parts[0].profile", [{ part: "turned-leg", profile: [station(0, 30)] }], "not-enough-data"],
  [
    "parts[0].profile[2].atMm",
    [{ part: "turned-leg", profile: [station(0, 30), station(90, 30), station(80, 30)] }],
    "contradiction",
  ],
  ["parts[0].girthMm", [{ part: "moulding", lengthMm: 2000 }], "missing"],
  ["parts[0].girthMm", [{ part: "moulding", lengthMm: 2000, girthMm: 30, profile: [] }], "contradiction"],
  ["parts[0].thicknessMm", [{ ...carcase, thicknessMm: 450 }], "contradiction"],
  ["parts[0].drawerHeightMm", [{ ...carcase, drawers: 4, drawerHeightMm: 200 }], "contradiction"],
])("%s is refused by name", (field, parts, code) => {
  const refused = refusal("area", { parts });
  expect(refused).toMatchObject({ field, code });
});

test("a kind of part that is not known is told which are", () => {
  expect(refusal("area", { parts: [{ part: "pannel" }] }).limits?.allowed).toContain("panel");
});

test("a length that does not fit is said in millimetres, as it was given", () => {
  expect(refusal("area", { parts: [{ ...carcase, thicknessMm: 450 }] }).value).toBe(450);
});
