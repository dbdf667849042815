import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { randomFromSeed } from "../../random.ts";
import { shareOut } from "./share-out.ts";

// Balanced designs that exist: Hanani, Discrete Math. 11 (1975) 255, and the Handbook of Combinatorial Designs, as
// listed in the catalogue file; those of up to 60 places, which is more than any home trial has in small blocks.
const catalogue = readFileSync("test/check-values/trials/design/bibd-catalogue.csv", "utf8")
  .trim()
  .split("\n")
  .slice(1)
  .map((line) => line.split(",").slice(0, 6).map(Number) as [number, number, number, number, number, number])
  .filter(([, b, , k, , exists]) => exists === 1 && b * k <= 60);

const all = (n: number) => [...Array(n).keys()];
const tally = (held: readonly (readonly number[])[]) => {
  const used = new Map<number, number>();
  const met = new Map<string, number>();
  for (const block of held)
    for (const t of block) {
      used.set(t, (used.get(t) ?? 0) + 1);
      for (const u of block) if (t < u) met.set(`${t} ${u}`, (met.get(`${t} ${u}`) ?? 0) + 1);
    }
  return { used, met };
};

describe("blocks too small for all treatments", () => {
  test.each(catalogue)("v %d, b %d, r %d, k %d, λ %d is met exactly", (v, b, r, k, lambda) => {
    const blocks = all(b).map(() => ({ places: k, allowed: all(v) }));
    const { used, met } = tally(shareOut(blocks, v, randomFromSeed("one")));
    expect([...used.values()]).toEqual(new Array(v).fill(r));
    expect(met.size).toBe((v * (v - 1)) / 2);
    expect(new Set(met.values())).toEqual(new Set([lambda]));
  });

  test("the catalogue was read", () => expect(catalogue.length).toBeGreaterThan(8));
});

test("what is left over after full sets is spread evenly", () => {
  const blocks = all(3).map(() => ({ places: 8, allowed: all(6) }));
  const { used } = tally(shareOut(blocks, 6, randomFromSeed("one")));
  expect([...used.values()]).toEqual(new Array(6).fill(4));
});

test("a treatment that may not stand on a block never does", () => {
  const blocks = [
    { places: 2, allowed: [0, 1] },
    { places: 2, allowed: [1, 2] },
    { places: 2, allowed: [0, 1, 2] },
  ];
  const held = shareOut(blocks, 3, randomFromSeed("one"));
  expect([...(held[0] as number[])].sort()).toEqual([0, 1]);
  expect([...(held[1] as number[])].sort()).toEqual([1, 2]);
  expect([...(held[2] as number[])].sort()).toEqual([0, 2]);
});
