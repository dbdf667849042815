import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { area } from "../../../core/registry/area.ts";
import type { AreaPartInput } from "../../../core/registry/area-input.ts";
import { calculate } from "../../../core/registry/calculation.ts";
import type { Point } from "./flat-shapes.ts";
import { barLength, layOutParts } from "./layout.ts";
import { shapesOf } from "./part-shapes.ts";
import type { AreaFound } from "./parts-total.ts";

/** The shoelace formula (Meister, 1769). */
const shoelace = (outline: readonly Point[]): number =>
  Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length] as Point;
      return sum + x * nextY - nextX * y;
    }, 0) / 2,
  );

function drawn(part: AreaPartInput) {
  const worked = calculate(area, { parts: [part] });
  if (!worked.ok) throw new Error(worked.error.message);
  const surfaces = (worked.value as AreaFound).parts[0]?.surfaces ?? [];
  const blocks = shapesOf(part, surfaces[0]?.areaM2 ?? 0);
  const areaOf = (surface: string) =>
    blocks
      .flatMap((block) => block.shapes)
      .filter((shape) => shape.surface === surface)
      .reduce((sum, shape) => sum + shoelace(shape.outline) / 1e6, 0);
  return { surfaces, blocks, areaOf };
}

const carcase = { part: "carcase", heightMm: 800, widthMm: 900, depthMm: 450, thicknessMm: 18 } as const;

describe("what is flat is drawn as large as it is counted", () => {
  test.each<[string, AreaPartInput, number]>([
    ["panel", { part: "panel", lengthMm: 1800, widthMm: 900, thicknessMm: 30 }, 1e-12],
    ["rail", { part: "rail", lengthMm: 400, widthMm: 90, thicknessMm: 20 }, 1e-12],
    ["moulding, in lengths", { part: "moulding", lengthMm: 5300, girthMm: 40 }, 1e-12],
    ["free", { part: "free", areaM2: 0.17 }, 1e-12],
    [
      "carcase",
      { ...carcase, shelves: 2, drawers: 3, drawerHeightMm: 150, finished: ["front", "inside front"] },
      1e-12,
    ],
    // 64 corners of a circle leave out 1.6 parts in a thousand of it.
    ["round top", { part: "round-panel", diameterMm: 320, thicknessMm: 30 }, 2e-3],
    // A side is as high as the leg, its slant a little longer: 1 part in 4000 here.
    ["square leg", { part: "square-leg", lengthMm: 700, topMm: 45, footMm: 25 }, 1e-3],
  ])("%s", (_, part, relative) => {
    const { surfaces, areaOf } = drawn(part);
    for (const { surface, areaM2 } of surfaces) expectNear(areaOf(surface), areaM2, { relative });
  });
});

test("a turned leg is seen from the side: as wide as its diameters, π times smaller than its surface where it is straight", () => {
  const profile = [
    { atMm: 0, diameterMm: 40 },
    { atMm: 300, diameterMm: 40 },
  ];
  const { surfaces, areaOf } = drawn({ part: "turned-leg", profile });
  expectNear(areaOf("side") * Math.PI, surfaces[0]?.areaM2 ?? 0, { relative: 1e-12 });
});

test("every shape lies within its block, and every block within the drawing", () => {
  const parts: AreaPartInput[] = [
    { ...carcase, shelves: 3 },
    { part: "panel", lengthMm: 1800, widthMm: 900, thicknessMm: 30 },
    { part: "round-leg", lengthMm: 700, topMm: 60, footMm: 0 },
  ];
  const blocks = parts.map((part) => drawn(part).blocks);
  for (const block of blocks.flat())
    for (const [x, y] of block.shapes.flatMap((shape) => shape.outline)) {
      expect(x).toBeGreaterThanOrEqual(-1e-9);
      expect(x).toBeLessThanOrEqual(block.width + 1e-9);
      expect(y).toBeGreaterThanOrEqual(-1e-9);
      expect(y).toBeLessThanOrEqual(block.height + 1e-9);
    }
  for (const width of [300, 346, 800]) {
    const layout = layOutParts(blocks, width);
    for (const [x, y] of layout.parts.flatMap((p) => p.shapes.flatMap((shape) => shape.outline))) {
      expect(x).toBeLessThanOrEqual(width + 1e-6);
      expect(y).toBeLessThanOrEqual(layout.height);
    }
    const sameScale = layout.parts[1]?.shapes.find((shape) => shape.surface === "top");
    expectNear(sameScale?.width ?? 0, 1800 * layout.scale, { relative: 1e-12 });
  }
});

test("the bar is a round length that has room", () => {
  expect(barLength(0.2, "mm", 180)).toBe(500);
  expect(barLength(0.2, "in", 180)).toBe(24 * 25.4);
  expect(barLength(100, "mm", 180)).toBe(10);
});
