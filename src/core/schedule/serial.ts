import { type Random, shuffle } from "../random.ts";
import { countingOrder } from "./counting-order.ts";
import type { Packing } from "./maker.ts";
import { horizonOf, type Project } from "./project.ts";
import { type Room, roomOf } from "./room.ts";

/** So many sets of tasks are drawn for a moment: of a few ready tasks that is most of them. */
const drawnSets = 5;

/** By task those it waits for, which stand at `from[task]` up to `from[task + 1]`, and how long after their starts. */
interface Waits {
  readonly from: Int32Array;
  readonly before: Int32Array;
  readonly least: Int32Array;
}

function waitsOf({ durations, lags }: Project): Waits {
  const into = durations.map((_, task) => lags.filter((lag) => lag.to === task));
  const from = new Int32Array(durations.length + 1);
  into.forEach((list, task) => {
    from[task + 1] = (from[task] as number) + list.length;
  });
  const all = into.flat();
  return {
    from,
    before: Int32Array.from(all, (lag) => lag.from),
    least: Int32Array.from(all, (lag) => lag.least),
  };
}

/** All tasks, each after those it waits for; `undefined` when a wait is shorter than the task before, or they wait in a ring. */
function inTurn({ durations, lags }: Project): Int32Array | undefined {
  if (lags.some(({ from, least }) => least < (durations[from] as number))) return undefined;
  const open = durations.map((_, task) => lags.filter((lag) => lag.to === task).length);
  const turn = [...durations.keys()].filter((task) => open[task] === 0);
  for (const task of turn)
    for (const lag of lags)
      if (lag.from === task) {
        open[lag.to] = (open[lag.to] as number) - 1;
        if (open[lag.to] === 0) turn.push(lag.to);
      }
  return turn.length === durations.length ? Int32Array.from(turn) : undefined;
}

/**
 * Schedules projects in which each task waits for the ends of others, if for any: one task after another, each as early as it can.
 *
 * Source: R. Kolisch, "Serial and parallel resource-constrained project scheduling methods", Eur. J. Oper. Res. 90 (1996) 320
 */
export class Serial {
  readonly #minutes: Int32Array;
  readonly #horizon: number;
  readonly #waits: Waits;
  readonly #turn: Int32Array;
  readonly #room: Room;
  readonly #share: Float64Array;
  readonly #start: Int32Array;
  readonly #left: Int32Array;
  readonly #now: Int32Array;
  readonly #drawn: Int32Array;
  #work = 0;

  /** `undefined` for another kind of project. */
  static of(project: Project): Serial | undefined {
    const turn = inTurn(project);
    return turn === undefined ? undefined : new Serial(project, turn);
  }

  private constructor(project: Project, turn: Int32Array) {
    const { durations, demands, capacities } = project;
    this.#horizon = horizonOf(project);
    this.#minutes = Int32Array.from(durations);
    this.#waits = waitsOf(project);
    this.#turn = turn;
    this.#room = roomOf(project, this.#horizon);
    this.#share = Float64Array.from(demands, (row) =>
      row.reduce((sum, demand, r) => sum + (demand === 0 ? 0 : demand / (capacities[r] as number)), 0),
    );
    const list = (): Int32Array => new Int32Array(durations.length);
    [this.#start, this.#left, this.#now, this.#drawn] = [list(), list(), list(), list()];
  }

  get work(): number {
    return this.#work + this.#room.work;
  }

  /** All tasks by a priority, the smallest first; one that waits comes soon after those it waits for. */
  byPriority(priority: Float64Array): Int32Array {
    const held = priority.slice();
    const place = new Int32Array(held.length);
    const { from, before } = this.#waits;
    this.#turn.forEach((task, at) => {
      place[task] = at;
      for (let k = from[task] as number; k < (from[task + 1] as number); k++)
        held[task] = Math.max(held[task] as number, held[before[k] as number] as number);
    });
    return this.#turn
      .slice()
      .sort(
        (a, b) => (held[a] as number) - (held[b] as number) || (place[a] as number) - (place[b] as number),
      );
  }

  /** All tasks in the order of their starts. */
  ofStarts(starts: Int32Array): Int32Array {
    return countingOrder(starts, this.#turn);
  }

  /** All tasks of the project run backwards, in the order of their starts there. */
  ofEnds(mirrored: Int32Array): Int32Array {
    const n = mirrored.length;
    const end = (i: number): number => (mirrored[n - 1 - i] as number) + (this.#minutes[i] as number);
    const keys = new Int32Array(n);
    let last = 0;
    for (let i = 0; i < n; i++) last = Math.max(last, end(i));
    for (let i = 0; i < n; i++) keys[i] = last - end(i);
    return countingOrder(keys, this.#turn);
  }

  /**
   * The schedule in which no task could start earlier in this order, but for those packed.
   *
   * @param order    all n tasks, each after those it waits for
   * @param packing  these places go by what fills the resources best
   * @returns        starts (n)
   */
  made(order: Int32Array, packing?: Packing): Int32Array {
    const n = order.length;
    this.#room.clear();
    this.#work += n;
    if (packing === undefined) this.#inTurn(order, 0, n);
    else {
      const until = Math.min(n, packing.until);
      this.#start.fill(-1);
      this.#inTurn(order, 0, packing.from);
      this.#pack(order.subarray(packing.from, until), packing.random);
      this.#inTurn(order, until, n);
    }
    return this.#start.slice();
  }

  #inTurn(order: Int32Array, from: number, until: number): void {
    for (let k = from; k < until; k++) {
      const task = order[k] as number;
      this.#put(task, this.#earliest(task, this.#least(task)));
    }
  }

  #put(task: number, start: number): void {
    this.#room.add(task, start, 1);
    this.#start[task] = start;
  }

  #earliest(task: number, from: number): number {
    let start = from;
    for (let clash = this.#room.clash(task, start); clash >= 0; clash = this.#room.clash(task, start)) {
      start = clash + 1;
      if (start > this.#horizon) throw new Error(`task ${task} needs more than there is`);
    }
    return start;
  }

  #least(task: number): number {
    const { from, before, least } = this.#waits;
    const start = this.#start;
    const last = from[task + 1] as number;
    let earliest = 0;
    for (let k = from[task] as number; k < last; k++) {
      const after = (start[before[k] as number] as number) + (least[k] as number);
      if (after > earliest) earliest = after;
    }
    return earliest;
  }

  #isReady(task: number): boolean {
    const { from, before } = this.#waits;
    for (let k = from[task] as number; k < (from[task + 1] as number); k++)
      if ((this.#start[before[k] as number] as number) < 0) return false;
    return true;
  }

  /** At each moment, of several sets of ready tasks the one that uses most. */
  #pack(tasks: Int32Array, random: Random): void {
    this.#left.set(tasks);
    for (let left = tasks.length; left > 0; left = this.#stillLeft(left)) {
      const [moment, count] = this.#soonest(left);
      const fullest = this.#fullest(count, moment, random);
      for (let k = 0; k < fullest; k++) {
        const task = this.#now[k] as number;
        if (this.#room.clash(task, moment) < 0) this.#put(task, moment);
      }
      this.#work += left + count;
    }
  }

  /** The first moment at which one of those that are left can start; who can, stands at the front of `#drawn`. */
  #soonest(left: number): [moment: number, count: number] {
    let count = 0;
    let moment = Number.POSITIVE_INFINITY;
    for (let k = 0; k < left; k++) {
      const task = this.#left[k] as number;
      if (!this.#isReady(task)) continue;
      const start = this.#earliest(task, this.#least(task));
      if (start > moment) continue;
      if (start < moment) count = 0;
      moment = start;
      this.#drawn[count++] = task;
    }
    return [moment, count];
  }

  #stillLeft(left: number): number {
    let kept = 0;
    for (let k = 0; k < left; k++) {
      const task = this.#left[k] as number;
      if ((this.#start[task] as number) < 0) this.#left[kept++] = task;
    }
    return kept;
  }

  /** Of the drawn tasks a set with room at a moment, left at the front of `#now`; how many they are. */
  #fullest(count: number, moment: number, random: Random): number {
    let best = 0;
    let most = -1;
    for (let drawn = 0; drawn < (count < 2 ? 1 : drawnSets); drawn++) {
      shuffle(this.#drawn, count, random);
      const together = this.#room.together(this.#drawn, count, moment);
      let use = 0;
      for (let k = 0; k < together; k++) use += this.#share[this.#drawn[k] as number] as number;
      if (use <= most) continue;
      most = use;
      best = together;
      for (let k = 0; k < together; k++) this.#now[k] = this.#drawn[k] as number;
    }
    return best;
  }
}
