import { describe, expect, test } from "vitest";
import { propagated } from "./propagation.ts";

describe("the law of propagation", () => {
  test("JCGM 100:2008, H.1: the end gauge of 50 mm, uc = 31.7 nm (printed 32)", () => {
    const parts = { l_s: 25, d: 9.7, delta_alpha: 2.9, delta_theta: 16.6 };
    const inputs = Object.entries(parts).map(([quantity, standardUncertainty]) => ({
      quantity,
      source: quantity,
      standardUncertainty,
    }));
    const sum = (moved: Readonly<Record<string, number>>): number =>
      Object.values(moved).reduce((a, b) => a + b, 0);
    const { standardUncertainty, contributions } = propagated(sum, inputs);
    expect(standardUncertainty).toBeCloseTo(31.6711224935, 9);
    expect(contributions[0]?.source).toBe("l_s");
    expect(contributions.reduce((total, c) => total + c.share, 0)).toBeCloseTo(1, 12);
  });

  test("JCGM 100:2008, G.4.1: a product's relative variances add (1.03 %)", () => {
    const x = { x1: 3, x2: 7, x3: 11 };
    const product = (m: Readonly<Record<keyof typeof x, number>>): number =>
      (3 + m.x1) * (7 + m.x2) * (11 + m.x3);
    const found = propagated(product, [
      { quantity: "x1", source: "a", standardUncertainty: 0.0025 * 3 },
      { quantity: "x2", source: "b", standardUncertainty: 0.0057 * 7 },
      { quantity: "x3", source: "c", standardUncertainty: 0.0082 * 11 },
    ]);
    expect((100 * found.standardUncertainty) / (3 * 7 * 11)).toBeCloseTo(1.0295, 4);
  });

  test("two readings of one scale are one contribution", () => {
    const found = propagated(
      (m) => m.a + m.b + m.c,
      [
        { quantity: "a", source: "scale", standardUncertainty: 1 },
        { quantity: "b", source: "scale", standardUncertainty: 1 },
        { quantity: "c", source: "jug", standardUncertainty: Math.SQRT2 },
      ],
    );
    expect(found.contributions.map((c) => c.share)).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.5, 9)]);
  });

  test("a bound cuts the step and keeps the slope; what is exact does not contribute", () => {
    const found = propagated(
      (m) => 5 * m.a + m.b,
      [
        { quantity: "a", source: "a", standardUncertainty: 2, most: 0.5 },
        { quantity: "b", source: "b", standardUncertainty: 0 },
      ],
    );
    expect(found.standardUncertainty).toBeCloseTo(10, 9);
    expect(found.contributions).toEqual([{ source: "a", share: 1 }]);
  });
});
