import { countingOrder } from "./counting-order.ts";
import { unrelated } from "./longest-paths.ts";
import { type Maker, stepsOfWork } from "./maker.ts";
import type { Project } from "./project.ts";
import { type Room, roomOf } from "./room.ts";

/** What generating needs to know again and again, found once. */
export interface Shape {
  readonly project: Project;
  readonly horizon: number;
  /** By task: the tasks it is related to, and how: start[other] ≥ start[task] + least. */
  readonly related: readonly { readonly other: Int32Array; readonly least: Int32Array }[];
  /** By task: how many others wait for it to be tried, and which wait for it. */
  readonly before: Int32Array;
  readonly after: readonly Int32Array[];
}

/** Finds once what generating schedules of a project needs. */
export function shapeOf(project: Project, distance: readonly Int32Array[], horizon: number): Shape {
  const n = project.durations.length;
  const between = (i: number, j: number): number => (distance[i] as Int32Array)[j] as number;
  const goesBefore = (i: number, j: number): boolean =>
    i !== j && between(i, j) >= 0 && !(between(j, i) >= 0 && j < i);
  const tasks = Array.from({ length: n }, (_, i) => i);
  const related = tasks.map((i) => tasks.filter((j) => j !== i && between(i, j) > unrelated));
  const after = related.map((others, i) => Int32Array.from(others.filter((j) => goesBefore(i, j))));
  const before = new Int32Array(n);
  for (const list of after) for (const j of list) before[j] = (before[j] as number) + 1;
  return {
    project,
    horizon,
    after,
    before,
    related: related.map((others, i) => ({
      other: Int32Array.from(others),
      least: Int32Array.from(others, (j) => between(i, j)),
    })),
  };
}

/**
 * Tries the tasks one after another in a given order, each as early as it can, where there may be most-waits. A task that must
 * wait for others of the order comes after them; one that comes too late for a most-wait sends the task that it must follow
 * to a later start.
 */
export class Generator implements Maker {
  readonly sides = ["start"] as const;
  readonly #shape: Shape;
  readonly #room: Room;
  readonly #minutes: Int32Array;
  readonly #tasks: Int32Array;
  readonly #start: Int32Array;
  readonly #least: Int32Array;
  readonly #release: Int32Array;
  readonly #waitingFor: Int32Array;
  #placed = 0;
  /** All tasks before this place of the order are placed. */
  #place = 0;
  #work = 0;

  constructor(shape: Shape) {
    this.#shape = shape;
    const { durations } = shape.project;
    this.#minutes = Int32Array.from(durations);
    this.#room = roomOf(shape.project, shape.horizon);
    this.#tasks = Int32Array.from(durations.keys());
    const list = (): Int32Array => new Int32Array(durations.length);
    [this.#start, this.#least, this.#release, this.#waitingFor] = [list(), list(), list(), list()];
  }

  get work(): number {
    return stepsOfWork * (this.#work + this.#room.work);
  }

  byPriority(priority: Float64Array): Int32Array {
    return this.#tasks.slice().sort((a, b) => (priority[a] as number) - (priority[b] as number) || a - b);
  }

  ofStarts(starts: Int32Array): Int32Array {
    return countingOrder(starts, this.#tasks);
  }

  /** `undefined` when a most-wait or the horizon stood in the way. */
  made(order: Int32Array): Int32Array | undefined {
    const n = order.length;
    this.#release.fill(0);
    let patience = 2 * n;
    this.#clear();
    while (this.#placed < n) {
      const task = this.#next(order);
      const start = this.#earliest(task);
      if (start < 0) return undefined;
      if (!this.#sendsBack(task, start)) this.#put(task, start);
      else {
        if (--patience < 0) return undefined;
        this.#clear();
      }
    }
    return this.#start.slice();
  }

  #clear(): void {
    this.#room.clear();
    this.#least.set(this.#release);
    this.#start.fill(-1);
    this.#waitingFor.set(this.#shape.before);
    this.#placed = 0;
    this.#place = 0;
    this.#work += 4;
  }

  #isReady(task: number): boolean {
    return (this.#start[task] as number) < 0 && this.#waitingFor[task] === 0;
  }

  /** The first task of the order that waits for none; −1 when all are placed. */
  #next(order: Int32Array): number {
    while (this.#place < order.length && (this.#start[order[this.#place] as number] as number) >= 0)
      this.#place++;
    for (let k = this.#place; k < order.length; k++) {
      const task = order[k] as number;
      if (this.#isReady(task)) return task;
      this.#work++;
    }
    return -1;
  }

  #earliest(task: number): number {
    const minutes = this.#minutes[task] as number;
    let start = this.#least[task] as number;
    for (;;) {
      if (start + minutes > this.#shape.horizon) return -1;
      const clash = this.#room.clash(task, start);
      this.#work++;
      if (clash < 0) return start;
      start = clash + 1;
    }
  }

  /** Whether placed tasks are too early for a start so late; these must start later the next time. */
  #sendsBack(task: number, start: number): boolean {
    const { other, least } = this.#shape.related[task] as Shape["related"][number];
    let sends = false;
    for (let k = 0; k < other.length; k++) {
      const j = other[k] as number;
      const placed = this.#start[j] as number;
      const from = start + (least[k] as number);
      if (placed < 0 || placed >= from) continue;
      this.#release[j] = from;
      sends = true;
    }
    return sends;
  }

  #put(task: number, start: number): void {
    const { related, after } = this.#shape;
    this.#start[task] = start;
    this.#placed++;
    this.#room.add(task, start, 1);
    const { other, least } = related[task] as Shape["related"][number];
    for (let k = 0; k < other.length; k++) {
      const j = other[k] as number;
      const from = start + (least[k] as number);
      if (from > (this.#least[j] as number)) this.#least[j] = from;
    }
    const waiting = after[task] as Int32Array;
    for (let k = 0; k < waiting.length; k++) {
      const j = waiting[k] as number;
      this.#waitingFor[j] = (this.#waitingFor[j] as number) - 1;
    }
    this.#work += 1 + (other.length >> 3);
  }
}
