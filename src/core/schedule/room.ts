import type { Net } from "./net.ts";

/** Drying places and hands that are counted: how much of each is used, minute by minute. */
export class Room {
  readonly #net: Net;
  readonly #used: Int32Array[];
  work = 0;

  constructor(net: Net) {
    this.#net = net;
    this.#used = net.capacities.map((_, r) =>
      net.needs.some((needs) => needs.some(([resource]) => resource === r))
        ? new Int32Array(net.horizon + 1)
        : new Int32Array(0),
    );
  }

  clear(): void {
    for (const used of this.#used) used.fill(0);
  }

  /** The last minute of a task, were it to start then, at which something it needs is full; −1 for none. */
  clash(task: number, start: number): number {
    const end = start + (this.#net.minutes[task] as number);
    let clash = -1;
    for (const [resource, demand] of this.#net.needs[task] ?? []) {
      const used = this.#used[resource] as Int32Array;
      const room = (this.#net.capacities[resource] as number) - demand;
      let t = end - 1;
      while (t >= start && t > clash && (used[t] as number) <= room) t--;
      this.work += (end - t) >> 4;
      if (t >= start) clash = Math.max(clash, t);
    }
    return clash;
  }

  add(task: number, start: number, sign: 1 | -1): void {
    const end = start + (this.#net.minutes[task] as number);
    for (const [resource, demand] of this.#net.needs[task] ?? []) {
      const used = this.#used[resource] as Int32Array;
      for (let t = start; t < end; t++) used[t] = (used[t] as number) + sign * demand;
    }
  }
}
