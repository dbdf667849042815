import { Engine } from "./engine/engine.ts";
import { Openings } from "./engine/openings.ts";
import { TimeTable, type Use } from "./engine/time-table.ts";
import type { Shape } from "./generate.ts";
import { unrelated } from "./longest-paths.ts";
import type { Project } from "./project.ts";

/** The project in the engine: variable i is the start of task i, then one for the order of each pair that cannot overlap. */
export function engineOf(shape: Shape, distance: readonly Int32Array[]): Engine {
  const { project, horizon, change = () => 0 } = shape;
  const n = project.durations.length;
  const engine = new Engine(4 * n);
  for (let i = 0; i < n; i++) engine.toDecide.push(engine.bounds.variable(0, horizon));
  engine.require(1, 0); // the first task starts at 0
  for (const { from, to, least } of project.lags) engine.lags.add(from, to, least);
  project.capacities.forEach((capacity, r) => {
    const table = new TimeTable(engine.bounds, engine.notes, capacity, usesOf(project, r));
    engine.addPropagator(table, table.starts);
  });
  shape.open.forEach((open, i) => {
    if (open !== undefined) engine.addPropagator(new Openings(engine.bounds, engine.notes, i, open), [i]);
  });
  const between = (i: number, j: number): number => (project.durations[i] as number) + change(i, j);
  for (const [i, j] of opposedPairs(project, distance, between)) addOrder(engine, i, j, between);
  return engine;
}

const usesOf = (project: Project, r: number): Use[] =>
  project.durations.flatMap((duration, start) => {
    const demand = project.demands[start]?.[r] ?? 0;
    return demand > 0 && duration > 0 ? [{ start, duration, demand }] : [];
  });

/** Pairs that need more of a resource together than there is, unless their lags keep them apart already. */
function* opposedPairs(
  project: Project,
  distance: readonly Int32Array[],
  between: (i: number, j: number) => number,
): Generator<[number, number]> {
  const { durations, demands, capacities } = project;
  const n = durations.length;
  const apart = (i: number, j: number): boolean => {
    const d = (distance[i] as Int32Array)[j] as number;
    return d > unrelated && d >= between(i, j);
  };
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      if (durations[i] === 0 || durations[j] === 0 || apart(i, j) || apart(j, i)) continue;
      const together = (r: number): number => (demands[i]?.[r] ?? 0) + (demands[j]?.[r] ?? 0);
      if (capacities.some((capacity, r) => together(r) > capacity)) yield [i, j];
    }
}

/** i before j, or j before i. */
function addOrder(engine: Engine, i: number, j: number, between: (i: number, j: number) => number): void {
  const first = engine.bounds.variable(0, 1);
  engine.lags.add(i, j, between(i, j), { side: 2 * first, value: 1 });
  engine.lags.add(j, i, between(j, i), { side: 2 * first + 1, value: 0 });
}
