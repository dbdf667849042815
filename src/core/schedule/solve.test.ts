import { expect, test } from "vitest";
import { projectFaults } from "../plan-check/project-faults.ts";
import { randomFromSeed, randomIndex } from "../random.ts";
import type { Project } from "./project.ts";
import { solveProject } from "./solve.ts";

const never = { mustStop: () => false };

/** Up to six tasks with waits of both signs, one or two resources. */
function smallProject(seed: number): Project {
  const random = randomFromSeed(`small ${seed}`);
  const draw = (n: number): number => randomIndex(random, n);
  const n = 4 + draw(3);
  const last = n + 1;
  const durations = [0, ...Array.from({ length: n }, () => 1 + draw(3)), 0];
  const capacities = Array.from({ length: 1 + draw(2) }, () => 1 + draw(3));
  const none = capacities.map(() => 0);
  const demands = [none, ...Array.from({ length: n }, () => capacities.map((c) => draw(c + 1))), none];
  const ends = durations.map((least, from) => ({ from, to: last, least })).slice(0, last);
  const waits = Array.from({ length: draw(4) }, () => {
    const from = 1 + draw(n);
    const to = 1 + draw(n);
    return { from, to, least: from === to ? 0 : draw(8) - 4 };
  });
  return { durations, capacities, demands, lags: [...ends, ...waits] };
}

const rulesOf = (p: Project) => ({
  ...p,
  lags: p.lags.map(({ from, to, least }) => [from, to, least] as const),
});

/** The shortest length by trying every combination of starts; null when there is none. */
function byTrying(p: Project): number | null {
  const n = p.durations.length - 2;
  const total = p.durations.reduce((sum, d) => sum + d, 0) + 8;
  const rules = rulesOf(p);
  for (let length = 0; length <= total; length++) {
    const starts = Array.from({ length: n + 2 }, () => 0);
    starts[n + 1] = length;
    const fits = (task: number): boolean => {
      if (task > n) return projectFaults(rules, starts).length === 0;
      for (let s = 0; s + (p.durations[task] as number) <= length; s++) {
        starts[task] = s;
        const isOpen = (i: number): boolean => i > task && i <= n;
        const clash = p.lags.some(
          ({ from, to, least }) =>
            !isOpen(from) && !isOpen(to) && (starts[to] as number) - (starts[from] as number) < least,
        );
        if (!clash && fits(task + 1)) return true;
      }
      return false;
    };
    if (fits(1)) return length;
  }
  return null;
}

// The outside source is the definition: every combination of starts, held against the checker.
test("60 small projects with least and most waits have the length that trying everything finds", () => {
  let infeasible = 0;
  for (let seed = 0; seed < 60; seed++) {
    const project = smallProject(seed);
    const solved = solveProject(project, never);
    const shortest = byTrying(project);
    expect(solved.proven, `seed ${seed}`).toBe(true);
    expect(solved.length, `seed ${seed}`).toBe(shortest);
    if (solved.starts === null) infeasible++;
    else expect(projectFaults(rulesOf(project), solved.starts)).toEqual([]);
  }
  expect(infeasible).toBeGreaterThan(0);
});

test("waits that contradict each other are named in a ring", () => {
  const project = {
    durations: [0, 1, 1, 0],
    capacities: [],
    demands: [[], [], [], []],
    lags: [
      { from: 1, to: 2, least: 5 },
      { from: 2, to: 1, least: -4 },
    ],
  };
  expect([...(solveProject(project, never).cycle ?? [])].sort()).toEqual([1, 2]);
});

test("a search that must stop at once says what it has, and does not claim a proof", () => {
  const project = smallProject(3);
  const stopped = solveProject({ ...project, lags: project.lags.slice(0, 5) }, { mustStop: () => true });
  expect(stopped.lowerBound).toBeLessThanOrEqual(stopped.length ?? Number.POSITIVE_INFINITY);
});
