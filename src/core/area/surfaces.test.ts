import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { metre } from "../units.ts";
import { girthOfProfile } from "./girth.ts";
import { type AreaPart, surfaceNames } from "./part.ts";
import { surfacesOf, usuallyFinished } from "./surfaces.ts";
import { areaOfPart } from "./total.ts";

const m = metre;
const all = (part: AreaPart): number => surfacesOf(part).reduce((sum, s) => sum + s.areaM2, 0);
const of = (part: AreaPart, surface: string): number =>
  surfacesOf(part).find((s) => s.surface === surface)?.areaM2 ?? Number.NaN;

const panel = { part: "panel", length: m(3), width: m(2), thickness: m(1), grain: "length" } as const;
const carcase = {
  part: "carcase",
  height: m(8),
  width: m(6),
  depth: m(4),
  thickness: m(1),
  shelves: 2,
  drawers: 3,
  drawerHeight: m(2),
} as const;
const leg = { part: "square-leg", length: m(0.7), top: m(0.04), foot: m(0.02) } as const;
const girth = m(0.1);
const parts: readonly AreaPart[] = [
  panel,
  { part: "rail", length: m(3), width: m(2), thickness: m(1) },
  { part: "round-panel", diameter: m(2), thickness: m(0.5) },
  leg,
  { part: "round-leg", length: m(0.7), top: m(0.04), foot: m(0.02) },
  {
    part: "turned-leg",
    profile: [
      { at: m(0), diameter: m(0.02) },
      { at: m(0.7), diameter: m(0.04) },
    ],
  },
  { part: "moulding", length: m(2), girth },
  carcase,
  { part: "free", areaM2: 1.5 },
];

describe("surfaces", () => {
  // Euclid, Elements XI: a right box of 3 by 2 by 1 has 2·(6 + 3 + 2) = 22.
  test("a panel and a rail are boxes", () => {
    expectNear(all(panel), 22, { relative: 1e-14 });
    expectNear(all({ part: "rail", length: m(3), width: m(2), thickness: m(1) }), 22, { relative: 1e-14 });
  });

  test("a round top is a whole cylinder: 2πr(r + h)", () => {
    expectNear(all({ part: "round-panel", diameter: m(2), thickness: m(0.5) }), 2 * Math.PI * (1 + 0.5), {
      relative: 1e-14,
    });
  });

  // The lateral area of a frustum of a pyramid is half of both perimeters times the slant; here 4·(10 + 4)/2·5 with a slant of 3, 4, 5.
  test("a square leg that tapers is a frustum of a pyramid", () => {
    expectNear(of({ ...leg, length: m(4), top: m(10), foot: m(4) }, "side"), 140, { relative: 1e-14 });
  });

  // By hand, boards of 1 in a case of 8 × 6 × 4: inside 6 high, 4 wide, 3 deep.
  test("a carcase, inside and outside", () => {
    const areas = Object.fromEntries(surfacesOf(carcase).map((s) => [s.surface, s.areaM2]));
    expect(areas).toEqual({
      sides: 64,
      top: 24,
      bottom: 24,
      back: 48,
      front: 48,
      "front edges": 24,
      "drawer fronts": 24,
      "inside sides": 36,
      "inside top": 12,
      "inside bottom": 12,
      "inside back": 24,
      "inside front": 24,
      shelves: 2 * (2 * 12 + 4),
    });
  });

  test("a carcase without an inside, or with drawers higher than it, is refused", () => {
    expect(() => surfacesOf({ ...carcase, thickness: m(3) })).toThrow("thickness");
    expect(() => surfacesOf({ ...carcase, drawers: 4 })).toThrow("drawerHeight");
  });

  test("end grain is where the fibres end", () => {
    const ends = (part: AreaPart) => surfacesOf(part).flatMap((s) => (s.grain === "end" ? [s.surface] : []));
    expect(ends(panel)).toEqual(["left", "right"]);
    expect(ends({ ...panel, grain: "width" })).toEqual(["front", "back"]);
    expect(ends({ ...panel, grain: "none" })).toEqual([]);
    expect(ends(leg)).toEqual(["top", "foot"]);
  });

  test.each(parts.map((part) => [part.part, part] as const))("%s: names and the usual ones", (kind, part) => {
    expect(surfacesOf(part).map((s) => s.surface)).toEqual([...surfaceNames[kind]]);
    expect(surfaceNames[kind]).toEqual(expect.arrayContaining([...usuallyFinished(part)]));
  });
});

describe("girth", () => {
  const points = (rows: readonly (readonly [number, number])[]) =>
    rows.map(([across, up]) => ({ across: m(across), up: m(up) }));

  // A quarter round of radius r has a girth of πr/2; an ogee of two quarter rounds twice that.
  test("a quarter round of 20 mm, by 5 points within 1 %, by 200 exactly", () => {
    const quarter = (n: number) =>
      points(
        Array.from({ length: n + 1 }, (_, i) => {
          const a = (i / n) * (Math.PI / 2);
          return [0.02 * Math.sin(a), 0.02 * (1 - Math.cos(a))] as const;
        }),
      );
    expectNear(girthOfProfile(quarter(4)), (Math.PI * 0.02) / 2, { relative: 0.01 });
    expectNear(girthOfProfile(quarter(200)), (Math.PI * 0.02) / 2, { relative: 1e-5 });
  });

  // Pappus: a half round of radius 10 laid round a top of radius 500; the middle of its girth goes round at 500 + 2·10/π.
  test("a moulding round a round top", () => {
    const [R, r] = [0.5, 0.01];
    const way = 2 * Math.PI * (R + (2 * r) / Math.PI);
    const made = { part: "moulding", length: m(way), girth: m(Math.PI * r) } as const;
    expectNear(all(made), 2 * Math.PI ** 2 * R * r + 4 * Math.PI * r ** 2, { relative: 1e-12 });
  });

  test("points that coincide, and one alone, are refused", () => {
    expect(() => girthOfProfile(points([[0, 0]]))).toThrow("profile");
    expect(() =>
      girthOfProfile(
        points([
          [1, 1],
          [1, 1],
        ]),
      ),
    ).toThrow("profile");
  });
});

test("twice the size is four times the area, n of them n times, and two halves of the surfaces the whole", () => {
  const size = fc.double({ min: 0.01, max: 3, noNaN: true });
  fc.assert(
    fc.property(size, size, size, fc.integer({ min: 1, max: 50 }), (a, b, c, count) => {
      const box = (k: number) =>
        ({ part: "panel", length: m(a * k), width: m(b * k), thickness: m(c * k), grain: "length" }) as const;
      expectNear(all(box(2)), 4 * all(box(1)), { relative: 1e-12 });
      const surfaces = surfacesOf(box(1));
      const area = (finished: readonly string[], n: number) =>
        areaOfPart({ surfaces, finished, count: n, bare: false }).areaM2;
      const names = surfaceNames.panel;
      expectNear(area(names, count), count * area(names, 1), { relative: 1e-12 });
      expectNear(area(names.slice(0, 3), 1) + area(names.slice(3), 1), area(names, 1), { relative: 1e-12 });
    }),
  );
});
