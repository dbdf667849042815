import type { Crew } from "./crew.ts";
import { addCrew } from "./crew-orders.ts";
import { Engine, type Statement } from "./engine/engine.ts";
import { type Open, Openings } from "./engine/openings.ts";
import { TimeTable, type Use } from "./engine/time-table.ts";
import type { Project } from "./project.ts";
import { addLoads, type Loads } from "./window-loads.ts";

/** A project with what a plan of evenings adds to it. */
export interface Model {
  readonly project: Project;
  /** Nothing ends later. */
  readonly horizon: number;
  /** When a task may start; one without may start at any time. */
  readonly open?: readonly (readonly Open[] | undefined)[];
  /** Of each list of statements on starts one is true. */
  readonly rules?: readonly (readonly Statement[])[];
  /** Time between two tasks that cannot overlap, from the end of the first; none without. */
  readonly change?: (from: number, to: number) => number;
  /** What the windows hold. */
  readonly loads?: Loads;
  /** Who shares the hands-on work, where they change their pads; task k of the crew is task k + 1 of the project. */
  readonly crew?: Crew;
}

/**
 * The project in the engine: variable i is the start of task i, then one for the order of each pair that cannot overlap and
 * that the horizon, the lags and the open times do not order already.
 */
export function engineOf(model: Model, distance: readonly Int32Array[]): Engine {
  const { project, horizon, open = [], change = () => 0 } = model;
  const n = project.durations.length;
  const engine = new Engine(4 * n);
  for (let i = 0; i < n; i++) engine.toDecide.push(engine.bounds.variable(0, horizon));
  engine.require(1, 0); // the first task starts at 0
  for (const { from, to, least } of project.lags) engine.lags.add(from, to, least);
  project.capacities.forEach((capacity, r) => {
    const table = new TimeTable(engine.bounds, engine.notes, capacity, usesOf(project, r));
    engine.addPropagator(table, table.starts);
  });
  open.forEach((times, i) => {
    if (times !== undefined) engine.addPropagator(new Openings(engine.bounds, engine.notes, i, times), [i]);
  });
  for (const rule of model.rules ?? []) engine.addClause(...rule);
  if (!engine.settle()) return engine;
  if (model.loads !== undefined) addLoads(engine, project.durations, model.loads);
  const between = (i: number, j: number): number => (project.durations[i] as number) + change(i, j);
  const { bounds } = engine;
  const apart = (i: number, j: number): boolean => {
    const least = between(i, j);
    return (distance[i]?.[j] as number) >= least || bounds.most(i) + least <= bounds.least(j);
  };
  for (const [i, j] of opposedPairs(project))
    if (!apart(i, j) && !apart(j, i)) addOrder(engine, i, j, between);
  if (model.crew !== undefined) addCrew(engine, model.crew, distance);
  return engine;
}

const usesOf = (project: Project, r: number): Use[] =>
  project.durations.flatMap((duration, start) => {
    const demand = project.demands[start]?.[r] ?? 0;
    return demand > 0 && duration > 0 ? [{ start, duration, demand }] : [];
  });

/** Pairs that need more of a resource together than there is. */
function* opposedPairs({ durations, demands, capacities }: Project): Generator<[number, number]> {
  const n = durations.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 1; j < n; j++) {
      if (durations[i] === 0 || durations[j] === 0) continue;
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
