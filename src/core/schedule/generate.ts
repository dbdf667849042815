import { type Random, shuffled } from "../random.ts";
import { unrelated } from "./longest-paths.ts";
import type { Project } from "./project.ts";

/** What generating needs to know again and again, found once. */
export interface Shape {
  readonly project: Project;
  readonly horizon: number;
  /** By task: the tasks it is related to, and how: start[other] ≥ start[task] + least. */
  readonly related: readonly { readonly other: Int32Array; readonly least: Int32Array }[];
  /** How many tasks come before each in every order. */
  readonly before: Int32Array;
  readonly after: readonly Int32Array[];
  /** Resources that a task needs. */
  readonly needs: readonly Int32Array[];
}

/** Finds once what generating schedules of a project needs. */
export function shapeOf(project: Project, distance: readonly Int32Array[], horizon: number): Shape {
  const n = project.durations.length;
  const goesBefore = (i: number, j: number): boolean => {
    const there = (distance[i] as Int32Array)[j] as number;
    const back = (distance[j] as Int32Array)[i] as number;
    return i !== j && there >= 0 && !(back >= 0 && j < i);
  };
  const tasks = Array.from({ length: n }, (_, i) => i);
  const after = tasks.map((i) => Int32Array.from(tasks.filter((j) => goesBefore(i, j))));
  const before = new Int32Array(n);
  for (const list of after) for (const j of list) before[j] = (before[j] as number) + 1;
  return {
    project,
    horizon,
    after,
    before,
    related: tasks.map((i) => {
      const row = distance[i] as Int32Array;
      const other = tasks.filter((j) => j !== i && (row[j] as number) > unrelated);
      return { other: Int32Array.from(other), least: Int32Array.from(other, (j) => row[j] as number) };
    }),
    needs: tasks.map((i) =>
      Int32Array.from(
        [...project.capacities.keys()].filter(
          (r) => (project.demands[i]?.[r] ?? 0) > 0 && (project.durations[i] ?? 0) > 0,
        ),
      ),
    ),
  };
}

/** Tasks of an order, from one place to before another, that are packed side by side. */
export interface Packing {
  readonly from: number;
  readonly until: number;
  readonly random: Random;
}

/** So many sets of tasks are drawn for a moment: of a few ready tasks that is most of them. */
const drawnSets = 4;

/** Tries the tasks one after another in the order of a priority, each as early as it can. */
export class Generator {
  readonly #shape: Shape;
  readonly #used: Int32Array[];
  readonly #start: Int32Array;
  readonly #least: Int32Array;
  readonly #release: Int32Array;
  readonly #waitingFor: Int32Array;
  readonly #sequence: number[] = [];
  work = 0;

  constructor(shape: Shape) {
    this.#shape = shape;
    const n = shape.project.durations.length;
    this.#used = shape.project.capacities.map(() => new Int32Array(shape.horizon + 1));
    this.#start = new Int32Array(n);
    this.#least = new Int32Array(n);
    this.#release = new Int32Array(n);
    this.#waitingFor = new Int32Array(n);
  }

  /**
   * A schedule in which no task could start earlier in this order; `undefined` when a most-wait or the horizon stood in
   * the way. A task that comes too late for a most-wait sends the task that it must follow to a later start.
   *
   * @param packing  the priority is a rank, there are no most-waits, and these ranks go by what fills the resources best
   */
  generate(priority: ArrayLike<number>, packing?: Packing): Int32Array | undefined {
    const n = this.#start.length;
    this.#release.fill(0);
    let patience = 2 * n;
    this.#clear();
    while (this.#sequence.length < n) {
      if (this.#sequence.length === packing?.from) this.#pack(priority, packing);
      const task = this.#mostUrgent(priority);
      if (task < 0) break; // the last ones were packed
      const start = this.#earliest(task);
      if (start < 0) return undefined;
      const tooEarly = this.#tooEarlyFor(task, start);
      if (tooEarly.length === 0) this.#place(task, start);
      else {
        if (--patience < 0) return undefined;
        for (const [other, least] of tooEarly) this.#release[other] = least;
        this.#clear();
      }
    }
    return this.#start.slice();
  }

  #clear(): void {
    for (const used of this.#used) used.fill(0);
    this.#least.set(this.#release);
    this.#start.fill(-1);
    this.#waitingFor.set(this.#shape.before);
    this.#sequence.length = 0;
  }

  #mostUrgent(priority: ArrayLike<number>): number {
    let best = -1;
    this.work += this.#start.length >> 4;
    for (let i = 0; i < this.#start.length; i++) {
      if ((this.#start[i] as number) >= 0 || (this.#waitingFor[i] as number) > 0) continue;
      if (best < 0 || (priority[i] as number) < (priority[best] as number)) best = i;
    }
    return best;
  }

  /** At each moment, of several sets of ready tasks the one that uses most. */
  #pack(priority: ArrayLike<number>, { until, random }: Packing): void {
    for (;;) {
      const ready = this.#ready(priority, until);
      const starts = ready.map((task) => this.#earliest(task));
      const moment = Math.min(...starts);
      if (ready.length === 0 || moment < 0) return;
      const now = ready.filter((_, k) => starts[k] === moment);
      for (const task of this.#fullest(now, moment, random))
        if (this.#earliest(task) === moment) this.#place(task, moment);
    }
  }

  #ready(priority: ArrayLike<number>, until: number): number[] {
    const ready: number[] = [];
    this.work += this.#start.length >> 4;
    for (let i = 0; i < this.#start.length; i++)
      if ((this.#start[i] as number) < 0 && this.#waitingFor[i] === 0 && (priority[i] as number) < until)
        ready.push(i);
    return ready;
  }

  #fullest(tasks: readonly number[], moment: number, random: Random): readonly number[] {
    if (tasks.length < 2) return tasks;
    let best: readonly number[] = [];
    let most = -1;
    for (let drawn = 0; drawn < drawnSets; drawn++) {
      const [set, use] = this.#together(shuffled(tasks, random), moment);
      if (use <= most) continue;
      best = set;
      most = use;
    }
    return best;
  }

  /** Of tasks in their order those that can run at a moment, and what share of the resources they take, summed. */
  #together(tasks: readonly number[], moment: number): [readonly number[], number] {
    const { capacities, demands } = this.#shape.project;
    const free = capacities.map(
      (capacity, r) => capacity - ((this.#used[r] as Int32Array)[moment] as number),
    );
    let use = 0;
    const set = tasks.filter((task) => {
      const demand = demands[task] as readonly number[];
      if (demand.some((d, r) => d > (free[r] as number))) return false;
      demand.forEach((d, r) => {
        free[r] = (free[r] as number) - d;
        if (d > 0) use += d / (capacities[r] as number);
      });
      return true;
    });
    this.work += tasks.length;
    return [set, use];
  }

  #earliest(task: number): number {
    const { project, horizon, needs } = this.#shape;
    const duration = project.durations[task] as number;
    const demand = project.demands[task] as readonly number[];
    let start = this.#least[task] as number;
    for (;;) {
      if (start + duration > horizon) return -1;
      let clash = -1;
      for (const r of needs[task] as Int32Array) {
        const used = this.#used[r] as Int32Array;
        const room = (project.capacities[r] as number) - (demand[r] as number);
        let t = start + duration - 1;
        while (t >= start && (used[t] as number) <= room) t--;
        this.work += 2 + ((start + duration - t) >> 3);
        if (t >= start) clash = Math.max(clash, t);
      }
      if (clash < 0) return start;
      start = clash + 1;
    }
  }

  /** Placed tasks that a start so late is too late for, and when they would have to start. */
  #tooEarlyFor(task: number, start: number): [number, number][] {
    const found: [number, number][] = [];
    const { other, least } = this.#shape.related[task] as Shape["related"][number];
    for (let k = 0; k < other.length; k++) {
      const j = other[k] as number;
      const placed = this.#start[j] as number;
      if (placed >= 0 && placed < start + (least[k] as number)) found.push([j, start + (least[k] as number)]);
    }
    return found;
  }

  #place(task: number, start: number): void {
    const { project, needs, related, after } = this.#shape;
    this.#start[task] = start;
    this.#sequence.push(task);
    const end = start + (project.durations[task] as number);
    for (const r of needs[task] as Int32Array) {
      const used = this.#used[r] as Int32Array;
      const demand = (project.demands[task] as readonly number[])[r] as number;
      for (let t = start; t < end; t++) used[t] = (used[t] as number) + demand;
    }
    const { other, least } = related[task] as Shape["related"][number];
    for (let k = 0; k < other.length; k++) {
      const j = other[k] as number;
      const from = start + (least[k] as number);
      if (from > (this.#least[j] as number)) this.#least[j] = from;
    }
    for (const j of after[task] as Int32Array) this.#waitingFor[j] = (this.#waitingFor[j] as number) - 1;
  }
}
