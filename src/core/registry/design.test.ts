import { describe, expect, test } from "vitest";
import { calculate } from "./calculation.ts";
import { layoutCalculation } from "./design.ts";

const layout = (input: unknown) => {
  const answer = calculate(layoutCalculation as never, input);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.value as {
    patches: { code: string; jar: string }[];
    cannotTell: unknown[];
    smallestDifference: { factor: string; value: number; about: string; degreesOfFreedom: number }[];
  };
};
const refusal = (input: unknown) => {
  const answer = calculate(layoutCalculation as never, input);
  if (answer.ok) throw new Error("was not refused");
  return answer.error;
};

/** Two methods dealt to the patches of one long board: two samples with nothing allowed for. */
const twoSamples = (perLevel: number) => ({
  factors: [{ name: "method", levels: ["brush", "pad"], appliedTo: "patch" }],
  boards: [{ board: "b1", plank: "p1", wood: "ash", patches: 2 * perLevel }],
  noise: { patch: 1 },
  seed: "s",
});

describe("smallestDifference", () => {
  // J. Cohen, "A power primer", Psychol. Bull. 112 (1992) 155, table 2: two means, 5 %, power 0.80: a difference of
  // 0.80 SD takes 26 a group, one of 0.50 takes 64; one fewer would not do.
  test.each([
    [0.8, 26],
    [0.5, 64],
  ])("%d SD takes %d patches a level", (difference, n) => {
    const value = (perLevel: number) => layout(twoSamples(perLevel)).smallestDifference[0]?.value as number;
    expect(value(n)).toBeLessThanOrEqual(difference);
    expect(value(n - 1)).toBeGreaterThan(difference);
  });

  const planned = (jarsPerLevel: number) =>
    layout({
      factors: [{ name: "alcohol", levels: ["e", "i"], appliedTo: "jar" }],
      jarsPerLevel,
      boards: [1, 2, 3, 4].map((n) => ({ board: `b${n}`, plank: `p${n}`, wood: "ash", patches: 6 })),
      noise: { patch: 1, jar: 0.5, plank: 3 },
      seed: "s",
    });

  test("twenty patches from one jar are one jar, and are said to be about that jar", () => {
    const one = planned(1).smallestDifference[0];
    expect(one?.about).toBe("these jars");
    expect(planned(1).cannotTell).toEqual([{ term: "alcohol", with: ["jar"] }]);
    const three = planned(3).smallestDifference[0];
    expect(three?.about).toBe("alcohol");
    expect(three?.degreesOfFreedom).toBe(4);
  });

  test("the standard error by hand: 2(σ_jar²/J + σ²/n) with boards allowed for", () => {
    const three = planned(3).smallestDifference[0] as unknown as { standardError: number };
    expect(three.standardError).toBeCloseTo(Math.sqrt(2 * (0.25 / 3 + 1 / 12)), 10);
  });
});

describe("the JSON edge", () => {
  const good = twoSamples(3);
  test("an unknown field is refused by name", () => {
    expect(refusal({ ...good, boardz: [] })).toMatchObject({ code: "unknown-field", field: "boardz" });
  });
  test("a missing seed is refused by name", () => {
    expect(refusal({ ...good, seed: undefined })).toMatchObject({ code: "missing", field: "seed" });
  });
  test("too few places say how many would do", () => {
    const few = { ...good, boards: [{ board: "b1", plank: "p1", wood: "ash", patches: 1 }] };
    expect(refusal(few)).toMatchObject({ field: "boards", limits: { min: 2 } });
  });
  test("the registered example gives what it says", () => {
    const { example } = layoutCalculation;
    expect(layout(example.input)).toMatchObject(example.output as object);
  });
});
