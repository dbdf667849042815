import { describe, expect, test } from "vitest";
import { DomainError } from "../../domain-error.ts";
import { randomFromSeed, randomNormal } from "../../random.ts";
import { tukeyMultiplier } from "../several/tukey.ts";
import { readyTime, type WatchedJar } from "../times/ready-time.ts";
import { verdictTimes } from "./verdict-times.ts";

/** Jars that turn ready at log-normal times, looked at every two hours. */
function watched(seed: string, medians: readonly number[], each: number): WatchedJar[] {
  const random = randomFromSeed(seed);
  return medians.flatMap((median, g) =>
    Array.from({ length: each }, (): WatchedJar => {
      const time = median * Math.exp(0.2 * randomNormal(random));
      const left = 2 * Math.floor(time / 2);
      return { group: `recipe ${g + 1}`, left, right: left + 2 };
    }),
  );
}
const said = (jars: readonly WatchedJar[], matters: number) =>
  verdictTimes(readyTime(jars, "lognormal"), jars, matters);

describe("times by the three words", () => {
  test("the multiplier is that of the table of the range, for as many jars as there are beyond the recipes", () => {
    const jars = watched("a", [10, 14, 20], 12);
    // H. L. Harter (1960): q(0.95; 3, 30) = 3.486, and q(0.95; 3, 40) = 3.442; 33 lies between.
    const q = (said(jars, 1.5).multiplier * Math.SQRT2) / Math.sqrt(36 / 33);
    expect(q).toBeGreaterThan(3.442);
    expect(q).toBeLessThan(3.486);
  });

  test("twice as long is different, the same is as good as equal, few jars are not enough", () => {
    expect(said(watched("b", [10, 24], 20), 1.5).pairs[0]).toMatchObject({ verdict: "different" });
    expect(said(watched("b", [14, 14], 40), 1.5)).toMatchObject({
      pairs: [{ verdict: "equal" }],
      moreJars: 0,
    });
    expect(said(watched("b", [14, 18], 3), 1.2).pairs[0]?.verdict).toBe("unclear");
  });

  test("with so many more jars, each looked at alike, it is settled, and with one fewer it is not", () => {
    const jars = watched("c", [14, 16], 6);
    const matters = 1.3;
    const now = said(jars, matters);
    const more = now.moreJars ?? Number.NaN;
    expect(more).toBeGreaterThan(0);
    const [pair] = now.pairs;
    const needed = Math.abs(Math.log(pair?.ratio ?? 1) - Math.log(matters));
    const error = Math.log((pair?.interval[1] ?? 0) / (pair?.ratio ?? 1)) / now.multiplier;
    const reach = (each: number) =>
      error * Math.sqrt(6 / each) * tukeyMultiplier(2, 2 * each - 2) * Math.sqrt((2 * each) / (2 * each - 2));
    expect(reach(6 + more)).toBeLessThanOrEqual(needed);
    expect(reach(5 + more)).toBeGreaterThan(needed);
  });

  test.each([3, 8])(
    "of equal recipes with %d jars each, in at most 5 trials of 100 one is called longer",
    (each) => {
      let wrong = 0;
      const runs = 300;
      for (let i = 0; i < runs; i++)
        if (said(watched(`equal ${i}`, [14, 14, 14], each), 1.5).pairs.some((p) => p.directionSure)) wrong++;
      expect(wrong / runs).toBeLessThan(0.05 + 2.6 * Math.sqrt((0.05 * 0.95) / runs));
    },
  );

  test("one jar of each leaves nothing to judge by, and a ratio of one or less is refused", () => {
    const alone = watched("e", [10, 20], 1);
    expect(said(alone, 1.5).pairs).toEqual([]);
    expect(() => said(watched("d", [10, 20], 4), 1)).toThrow(DomainError);
  });
});
