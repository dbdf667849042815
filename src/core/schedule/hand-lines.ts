import { HandLine } from "./hand-line.ts";
import type { Net } from "./net.ts";

/** All the hands there are: one pair, or those of a crew, of whom whoever can begin soonest takes a task. */
export class HandLines {
  readonly #net: Net;
  readonly #start: Int32Array;
  readonly #lines: readonly HandLine[];
  /** By block: whose line it is on, and how many of its tasks are. */
  readonly #whose: Int32Array;
  readonly #placed: Int32Array;
  /** By task: who is to do it if that is as well. */
  wished: Int32Array | undefined;

  constructor(net: Net, start: Int32Array) {
    this.#net = net;
    this.#start = start;
    this.#lines = Array.from({ length: net.crew?.people ?? 1 }, () => new HandLine(net, start));
    const blocks = net.crew?.blocks ?? [];
    this.#whose = new Int32Array(blocks.length);
    this.#placed = new Int32Array(blocks.length);
  }

  get work(): number {
    return this.#lines.reduce((sum, line) => sum + line.work, 0);
  }

  clear(): void {
    for (const line of this.#lines) line.clear();
    this.#placed.fill(0);
  }

  /** The first start from a moment on at which somebody is free, with time to change before and after. */
  earliest(task: number, from: number): number {
    const whose = this.#mustBe(task);
    if (whose >= 0) return (this.#lines[whose] as HandLine).earliest(task, from);
    const minutes = this.#blockMinutes(task);
    return this.#lines.reduce(
      (least, line) => Math.min(least, line.earliest(task, from, minutes)),
      Number.POSITIVE_INFINITY,
    );
  }

  add(task: number): void {
    const must = this.#mustBe(task);
    const whose = must >= 0 ? must : this.#bestFor(task);
    (this.#lines[whose] as HandLine).add(task);
    const block = this.#net.crew?.blockOf[task] as number;
    if (this.#net.crew === undefined) return;
    this.#whose[block] = whose;
    this.#placed[block] = (this.#placed[block] as number) + 1;
  }

  remove(task: number): void {
    const block = this.#net.crew?.blockOf[task];
    (this.#lines[block === undefined ? 0 : (this.#whose[block] as number)] as HandLine).remove(task);
    if (block !== undefined) this.#placed[block] = (this.#placed[block] as number) - 1;
  }

  /** Whose the task is whatever is as well: of one person, of who began it, or of who has the rest of its round; −1 else. */
  #mustBe(task: number): number {
    const { crew } = this.#net;
    if (crew === undefined) return 0;
    const block = crew.blockOf[task] as number;
    return (this.#placed[block] as number) > 0
      ? (this.#whose[block] as number)
      : (crew.blocks[block]?.doneBy as number);
  }

  #blockMinutes(task: number): number {
    const { crew } = this.#net;
    return crew?.blocks[crew.blockOf[task] as number]?.minutes ?? 0;
  }

  /** Who can begin the task where it is placed, and loses the least by it. */
  #bestFor(task: number): number {
    const start = this.#start[task] as number;
    const minutes = this.#blockMinutes(task);
    let best = 0;
    let least = Number.POSITIVE_INFINITY;
    this.#lines.forEach((line, who) => {
      if (line.earliest(task, start, minutes) !== start) return;
      const loss = this.wished?.[task] === who ? -1 : line.lossBy(task, start);
      if (loss >= least) return;
      least = loss;
      best = who;
    });
    return best;
  }
}
