import { expect, test } from "vitest";
import { projectFaults } from "../plan-check/project-faults.ts";
import { randomFromSeed, randomIndex } from "../random.ts";
import type { Project } from "./project.ts";
import { Turner } from "./turner.ts";

/** 20 tasks that wait for the ends of others; some take no time; resources from one of a kind to more than a word of bits holds. */
function drawnProject(seed: number): Project {
  const random = randomFromSeed(`turner ${seed}`);
  const draw = (n: number): number => randomIndex(random, n);
  const inner = Array.from({ length: 20 }, (_, i) => i + 1);
  const durations = [0, ...inner.map(() => draw(8)), 0];
  const capacities = Array.from({ length: 1 + draw(7) }, () => 2 ** draw(31));
  const demands = durations.map((_, i) =>
    capacities.map((c) => (i === 0 || i === 21 || draw(3) === 0 ? 0 : draw(Math.min(c, 2 ** 30) + 1))),
  );
  const after = (from: number, to: number, more: number) => ({
    from,
    to,
    least: (durations[from] as number) + more,
  });
  const waits = inner.flatMap((to) => (to > 1 && draw(3) > 0 ? [after(1 + draw(to - 1), to, draw(4))] : []));
  return {
    durations,
    capacities,
    demands,
    lags: [...inner.flatMap((i) => [after(0, i, 0), after(i, 21, 0)]), ...waits],
  };
}

// The outside source is the definition, by the checker that shares nothing with the planner.
test("what is made from either side, packed or not, keeps all rules, and a push makes nothing longer", () => {
  let packedOtherwise = 0;
  for (let seed = 0; seed < 200; seed++) {
    const project = drawnProject(seed);
    const rules = { ...project, lags: project.lags.map((l) => [l.from, l.to, l.least] as const) };
    const turner = Turner.of(project) as Turner;
    const random = randomFromSeed(`orders ${seed}`);
    const order = turner.byPriority(Float64Array.from(project.durations, random));
    const first = turner.made(order, "start");
    expect(projectFaults(rules, [...first]), `seed ${seed}`).toEqual([]);
    for (const side of turner.sides) {
      const again = turner.made(turner.ofStarts(first, side), side);
      expect(again[21], `seed ${seed} again from the ${side}`).toBeLessThanOrEqual(first[21] as number);
      const packed = turner.made(turner.ofStarts(first, side), side, { from: 3, until: 17, random });
      expect(projectFaults(rules, [...packed]), `seed ${seed} packed from the ${side}`).toEqual([]);
      if (packed.join() !== again.join()) packedOtherwise++;
    }
  }
  expect(packedOtherwise).toBeGreaterThan(20);
});

test("projects with most-waits, or with waits shorter than the task before, are not for it", () => {
  const two = { durations: [0, 3, 3, 0], capacities: [], demands: [[], [], [], []] };
  const waits = (least: number) => [
    { from: 0, to: 1, least: 0 },
    { from: 1, to: 2, least },
    { from: 2, to: 3, least: 3 },
  ];
  expect(Turner.of({ ...two, lags: waits(3) })).toBeDefined();
  expect(Turner.of({ ...two, lags: waits(2) })).toBeUndefined();
  expect(Turner.of({ ...two, lags: [...waits(3), { from: 2, to: 1, least: -9 }] })).toBeUndefined();
});
