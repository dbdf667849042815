import { describe, expect, test } from "vitest";
import { refusalOf } from "../../../../test/refusal-of.ts";
import { balancedBlocks, countBlocks, numbersOf } from "./block-design.ts";
import { blockExistence, hasSolution } from "./block-existence.ts";

describe("what exists", () => {
  test("x² = a·y² + b·z² is solved by trial where the conditions say so, and by no trial where they do not", () => {
    const solvedByTrial = (a: number, b: number) => {
      for (let y = 0; y <= 40; y++)
        for (let z = 0; z <= 40; z++) {
          const square = a * y * y + b * z * z;
          if ((y > 0 || z > 0) && square >= 0 && Number.isInteger(Math.sqrt(square))) return true;
        }
      return false;
    };
    for (let a = 1; a <= 14; a++)
      for (let b = -14; b <= 14; b++)
        if (b !== 0) expect([a, b, hasSolution(a, b)]).toEqual([a, b, solvedByTrial(a, b)]);
  });

  // Handbook of Combinatorial Designs (2007), II.1 and II.6
  test.each([
    [43, 7, 1, "impossible"],
    [22, 7, 2, "impossible"],
    [15, 5, 2, "impossible"],
    [21, 6, 2, "impossible"],
    [111, 11, 1, "impossible"],
    [46, 6, 1, "impossible"],
    [22, 8, 4, "impossible"],
    [7, 3, 1, "exists"],
    [25, 4, 1, "exists"],
    [91, 10, 1, "exists"],
    [51, 6, 1, "not known"],
    [40, 10, 3, "not known"],
  ] as const)("%d treatments, %d on a board, together %d times: %s", (v, k, l, verdict) => {
    expect(blockExistence(numbersOf(v, k, l)).verdict).toBe(verdict);
  });

  test("numbers that do not add up are told in patches", () => {
    const { because } = blockExistence({ treatments: 6, blocks: 4, timesEach: 2, blockSize: 4, meetings: 1 });
    expect(because).toContain("6 treatments, 2 times each, are 12 patches, and 4 boards of 4 are 16");
  });
});

describe("what is made", () => {
  test("every design of up to 13 treatments on boards of 3 to 6 with the fewest boards", () => {
    for (let k = 3; k <= 6; k++)
      for (let v = k; v <= 13; v++)
        for (let l = 1; l <= 60; l++) {
          const numbers = numbersOf(v, k, l);
          if (blockExistence(numbers).verdict === "impossible") continue;
          const counted = countBlocks(balancedBlocks(numbers));
          expect(counted.because).toBeNull();
          expect(counted.numbers).toEqual(numbers);
          break;
        }
  });

  test("what cannot be is refused with the condition, what is not known with other words", () => {
    const refusal = (v: number, k: number, l: number) => refusalOf(() => balancedBlocks(numbersOf(v, k, l)));
    expect(refusal(29, 8, 2)).toMatchObject({ code: "contradiction" });
    expect(refusal(29, 8, 2).because).toContain("x² = 6·y² + 2·z² has no solution");
    expect(refusal(51, 6, 1)).toMatchObject({ code: "no-convergence" });
    expect(refusal(51, 6, 1)?.because).toContain("there may be one");
  });
});

test.each([
  [["a b", "a b c"], "The boards are not of one size."],
  [["a a b", "b c a"], "A board holds something twice."],
  [["a b", "a c", "a d"], "Not everything stands equally often."],
  [["a b", "c d"], "Not every pair meets equally often."],
] as const)("blocks %j are not balanced", (blocks, because) => {
  expect(countBlocks(blocks.map((b) => b.split(" ")))).toMatchObject({ balanced: false, because });
});
