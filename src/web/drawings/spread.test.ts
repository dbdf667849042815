import { describe, expect, test } from "vitest";
import { spread } from "./spread.ts";

describe("spread(labels, from, to)", () => {
  test("names that have room stay where they belong", () => {
    expect(
      spread(
        [
          { at: 20, width: 20 },
          { at: 80, width: 20 },
        ],
        0,
        100,
      ),
    ).toEqual([20, 80]);
  });

  test("names over one another are pushed apart, in their order", () => {
    const [a, b] = spread(
      [
        { at: 50, width: 30 },
        { at: 48, width: 30 },
      ],
      0,
      100,
    );
    expect(b).toBeLessThan(a as number);
    expect((a as number) - (b as number)).toBeGreaterThanOrEqual(30);
  });

  test("nothing lies over an end", () => {
    expect(spread([{ at: 0, width: 40 }], 0, 100)).toEqual([20]);
    expect(
      spread(
        [
          { at: 100, width: 40 },
          { at: 99, width: 40 },
        ],
        0,
        100,
      ),
    ).toEqual([80, 40]);
  });
});
