import { describe, expect, test, vi } from "vitest";
import { type Random, randomFromSeed, randomNormal } from "../../random.ts";
import type { Reading } from "./readings.ts";
import { type Verdict, verdictMeasured } from "./verdict-measured.ts";
import { verdictOrdered } from "./verdict-ordered.ts";

/** Made-up trials in which the truth is known: what the intervals say of themselves must come true. */
interface World {
  readonly jarsPerLevel: number;
  readonly boards: number;
  readonly jarNoise: number;
  /** Share of patches lost. */
  readonly lost?: number;
  readonly truth: Readonly<Record<string, number>>;
}

vi.setConfig({ testTimeout: 120_000 }); // hundreds of trials each

const runs = 400;
const matters = 2;

function drawTrial(world: World, random: Random): Reading[] {
  const boards = Array.from({ length: world.boards }, () => 2 * randomNormal(random));
  return Object.entries(world.truth).flatMap(([level, effect]) =>
    Array.from({ length: world.jarsPerLevel }, (_, j) => `${level}${j}`).flatMap((jar) => {
      const luck = world.jarNoise * randomNormal(random);
      return boards.flatMap((board, b) => {
        const value = effect + luck + board + randomNormal(random);
        const kept = random() >= (world.lost ?? 0);
        return kept
          ? [
              {
                patch: `${jar}${b}`,
                jar,
                plank: undefined,
                board: `b${b}`,
                judge: undefined,
                factors: { alcohol: level },
                value,
              },
            ]
          : [];
      });
    }),
  );
}

interface Tally {
  /** Trials in which every interval held its true difference. */
  readonly covered: number;
  /** Trials that called a pair different, or its direction sure, that is none of it. */
  readonly falselyDifferent: number;
  readonly falselySure: number;
  /** Of the pairs that are truly 4 apart, those called different. */
  readonly found: number;
}

function tally(seed: string, world: World, judge: (readings: Reading[]) => Verdict): Tally {
  const random = randomFromSeed(seed);
  const trials = Array.from({ length: runs }, () => {
    const pairs = judge(drawTrial(world, random)).pairs.map((p) => ({
      ...p,
      true: (world.truth[p.a] ?? 0) - (world.truth[p.b] ?? 0),
    }));
    const alike = pairs.filter((p) => Math.abs(p.true) < matters);
    const apart = pairs.filter((p) => Math.abs(p.true) >= matters);
    return {
      covered: pairs.every((p) => p.interval[0] <= p.true && p.true <= p.interval[1]),
      falselyDifferent: alike.some((p) => p.verdict === "different"),
      falselySure: alike.some((p) => p.true === 0 && p.directionSure),
      found: apart.length === 0 ? 0 : apart.filter((p) => p.verdict === "different").length / apart.length,
    };
  });
  const share = (of: (t: (typeof trials)[number]) => number): number =>
    trials.reduce((total, t) => total + of(t), 0) / runs;
  return {
    covered: share((t) => Number(t.covered)),
    falselyDifferent: share((t) => Number(t.falselyDifferent)),
    falselySure: share((t) => Number(t.falselySure)),
    found: share((t) => t.found),
  };
}

const measured = (readings: Reading[]): Verdict =>
  verdictMeasured(readings, { compare: "alcohol", appliedTo: "jar", matters });
const alike = { e: 0, i: 0, p: 0 };

/** 400 trials tell 95 % to ± 2.2 points, two standard errors. */
const nominal = { low: 0.925, high: 0.98 };

describe("measured: 95 % intervals cover in 95 of 100 trials", () => {
  test.each<[string, World]>([
    ["two jars a level", { jarsPerLevel: 2, boards: 6, jarNoise: 0.5, truth: alike }],
    [
      "three jars a level, one alcohol glossier",
      { jarsPerLevel: 3, boards: 4, jarNoise: 0.5, truth: { e: 0, i: 0, p: 6 } },
    ],
    [
      "two jars a level, one patch in seven lost",
      { jarsPerLevel: 2, boards: 6, jarNoise: 0.5, lost: 0.15, truth: { e: 0, p: 0 } },
    ],
    ["one jar a level, and jars all alike", { jarsPerLevel: 1, boards: 6, jarNoise: 0, truth: alike }],
  ])("%s", (name, world) => {
    const { covered, falselyDifferent, falselySure } = tally(name, world, measured);
    expect(covered).toBeGreaterThanOrEqual(nominal.low);
    expect(covered).toBeLessThanOrEqual(nominal.high);
    expect(falselyDifferent).toBeLessThanOrEqual(0.07);
    expect(falselySure).toBeLessThanOrEqual(0.075);
  });

  test("what differs by three times what matters is found, mostly", () => {
    const world: World = { jarsPerLevel: 4, boards: 4, jarNoise: 0.5, truth: { e: 0, p: 6 } };
    expect(tally("found", world, measured).found).toBeGreaterThan(0.8);
  });
});

// Forgetting the jar: the same readings, with patches taken for what was made apart.
test("patches of one jar are no replicates: taken for such, intervals cover fewer than 90 of 100", () => {
  const world: World = { jarsPerLevel: 2, boards: 6, jarNoise: 0.5, truth: alike };
  const naive = (readings: Reading[]): Verdict =>
    verdictMeasured(
      readings.map((r) => ({ ...r, jar: undefined })),
      { compare: "alcohol", appliedTo: "patch", matters },
    );
  expect(tally("trap", world, naive).covered).toBeLessThan(0.9);
  expect(tally("trap", world, measured).covered).toBeGreaterThanOrEqual(nominal.low);
});

test("one jar of each: the verdict speaks of these jars, for which alone its interval holds", () => {
  const world: World = { jarsPerLevel: 1, boards: 6, jarNoise: 0.5, truth: alike };
  expect(measured(drawTrial(world, randomFromSeed("these"))).about).toBe("these jars");
  expect(tally("one jar", world, measured).covered).toBeLessThan(0.9);
});

describe("ordered: five steps of a scale", () => {
  const ordered = (readings: Reading[]): Verdict =>
    verdictOrdered(
      readings.map((r) => ({ ...r, value: Math.max(0, Math.min(4, Math.round(r.value / 2 + 2))) })),
      { compare: "alcohol", appliedTo: "jar", matters: 0.3 },
    );
  test.each<[string, World]>([
    ["one jar a level, jars alike, eight boards", { jarsPerLevel: 1, boards: 8, jarNoise: 0, truth: alike }],
    [
      "one jar a level, jars alike, twelve boards",
      { jarsPerLevel: 1, boards: 12, jarNoise: 0, truth: alike },
    ],
    ["two jars a level that differ", { jarsPerLevel: 2, boards: 8, jarNoise: 0.5, truth: alike }],
  ])("what is alike is seldom called different: %s", (name, world) => {
    const { falselyDifferent, falselySure } = tally(name, world, ordered);
    expect(falselyDifferent).toBeLessThanOrEqual(0.05);
    expect(falselySure).toBeLessThanOrEqual(0.07);
  });
  test("a large difference is found on sixteen boards", () => {
    const world: World = { jarsPerLevel: 1, boards: 16, jarNoise: 0, truth: { e: 0, p: 6 } };
    expect(tally("large", world, ordered).found).toBeGreaterThan(0.8);
  });
});
