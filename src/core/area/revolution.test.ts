import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { metre } from "../units.ts";
import { lateralAreaOfFrustum } from "./frustum.ts";
import { areaOfRevolution } from "./revolution.ts";

/** A curve measured at n + 1 places: radius and height from a parameter that runs from 0 to 1. */
const measured = (n: number, curve: (t: number) => readonly [radius: number, at: number]) =>
  Array.from({ length: n + 1 }, (_, i) => {
    const [radius, at] = curve(i / n);
    return { at: metre(at), diameter: metre(2 * Math.max(0, radius)) };
  });
const circle =
  (r: number, from = 0) =>
  (t: number): readonly [number, number] => [
    from + r * Math.sin(Math.PI * t),
    r * (1 - Math.cos(Math.PI * t)),
  ];

describe("one frustum", () => {
  // Archimedes, On the Sphere and Cylinder I: props. 13, 14, 16. The slant is a Pythagorean triple: radii 9 and 4, height 12, slant 13.
  test.each([
    ["cylinder, prop. 13", 2, 2, 5, Math.PI * 2 * 5],
    ["cone, prop. 14: radius 3, height 4, slant 5", 6, 0, 4, Math.PI * 3 * 5],
    ["frustum, prop. 16", 18, 8, 12, Math.PI * (9 + 4) * 13],
    ["flat ring between circles of radius 5 and 3", 10, 6, 0, Math.PI * (25 - 9)],
  ])("%s", (_, d1, d2, h, published) => {
    expectNear(lateralAreaOfFrustum(metre(d1), metre(d2), metre(h)), published, { relative: 1e-14 });
    expectNear(lateralAreaOfFrustum(metre(d2), metre(d1), metre(h)), published, { relative: 1e-14 });
  });
});

describe("by a measured profile", () => {
  // Prop. 33: a sphere is four of its great circles. From within, so always short, and four times nearer with twice the places.
  test("a sphere is come nearer to, from below", () => {
    const sphere = 4 * Math.PI;
    const short = [8, 16, 32, 64, 128].map((n) => 1 - areaOfRevolution(measured(n, circle(1))) / sphere);
    for (const [i, part] of short.entries()) {
      expect(part).toBeGreaterThan(0);
      if (i > 0) expectNear((short[i - 1] ?? 0) / part, 4, { relative: 0.02 });
    }
    expect(short[0]).toBeLessThan(0.02);
    expect(short.at(-1)).toBeLessThan(1e-4);
  });

  // Prop. 42: a cap of a sphere is the circle whose radius is the line from its top to its rim; here of 60°, chord 1.
  test("a cap of a sphere", () => {
    const cap = measured(2000, (t) => [Math.sin((t * Math.PI) / 3), 1 - Math.cos((t * Math.PI) / 3)]);
    expectNear(areaOfRevolution(cap), Math.PI, { relative: 1e-6 });
  });

  // Pappus, Collection VII: a ring of radius R and thickness 2r has 4π²Rr; its outer half 2π²Rr + 4πr², its inner 2π²Rr − 4πr².
  test("a ring, outer and inner half", () => {
    const [R, r, n] = [5, 1, 4000];
    const outer = areaOfRevolution(measured(n, circle(r, R)));
    const inner = areaOfRevolution(
      measured(n, (t) => [R - r * Math.sin(Math.PI * t), r * (1 - Math.cos(Math.PI * t))]),
    );
    expectNear(outer, 2 * Math.PI ** 2 * R * r + 4 * Math.PI * r ** 2, { relative: 1e-6 });
    expectNear(inner, 2 * Math.PI ** 2 * R * r - 4 * Math.PI * r ** 2, { relative: 1e-6 });
    expectNear(outer + inner, 4 * Math.PI ** 2 * R * r, { relative: 1e-6 });
  });

  // W. H. Beyer, CRC Standard Mathematical Tables, mensuration: prolate spheroid S = 2πb² + 2πab·asin(e)/e.
  test("a prolate spheroid of 5 by 3", () => {
    const [a, b] = [5, 3];
    const e = Math.sqrt(1 - (b / a) ** 2);
    const got = areaOfRevolution(
      measured(4000, (t) => [b * Math.sin(Math.PI * t), a * (1 - Math.cos(Math.PI * t))]),
    );
    expectNear(got, 2 * Math.PI * b ** 2 + (2 * Math.PI * a * b * Math.asin(e)) / e, { relative: 1e-6 });
  });

  // A calculus course's worked example: y = x³ from 0 to 1 about its axis, π/27·(10^1.5 − 1) = 3.563.
  test("a cubic horn", () => {
    expectNear(areaOfRevolution(measured(4000, (t) => [t ** 3, t])), 3.563, { absolute: 5e-4 });
  });

  // Same tables: paraboloid of base radius r and height h, S = πr/(6h²)·((r² + 4h²)^1.5 − r³); r = 1, h = 1.
  test("a paraboloid", () => {
    const got = areaOfRevolution(measured(4000, (t) => [t, t ** 2]));
    expectNear(got, (Math.PI / 6) * (5 ** 1.5 - 1), { relative: 1e-6 });
  });

  test("a shoulder is the ring that it shows, and further places on a straight line change nothing", () => {
    const at = (z: number, d: number) => ({ at: metre(z), diameter: metre(d) });
    const stepped = areaOfRevolution([at(0, 2), at(3, 2), at(3, 4), at(5, 4)]);
    expectNear(stepped, Math.PI * (2 * 3 + (4 - 1) + 4 * 2), { relative: 1e-14 });
    const length = fc.double({ min: 0.01, max: 10, noNaN: true });
    fc.assert(
      fc.property(length, length, length, fc.double({ min: 0, max: 1, noNaN: true }), (d1, d2, h, t) => {
        const ends = [at(0, d1), at(h, d2)] as const;
        const between = at(t * h, d1 + t * (d2 - d1));
        const whole = areaOfRevolution(ends);
        expectNear(areaOfRevolution([ends[0], between, ends[1]]), whole, { relative: 1e-9 });
      }),
    );
  });

  test.each([
    ["one place", [[0, 1]]],
    ["no place", []],
    [
      "all at one height",
      [
        [1, 1],
        [1, 2],
      ],
    ],
    [
      "heights that go back",
      [
        [0, 1],
        [2, 1],
        [1, 1],
      ],
    ],
  ])("%s is refused", (_, rows) => {
    const profile = rows.map(([at = 0, d = 0]) => ({ at: metre(at), diameter: metre(d) }));
    expect(() => areaOfRevolution(profile)).toThrow("profile");
  });
});
