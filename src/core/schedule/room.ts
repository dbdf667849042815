import type { Project } from "./project.ts";

/** Tasks that share what is limited. */
export interface Sharing {
  /** By task: how long it runs, whole units of time. */
  readonly minutes: ArrayLike<number>;
  /** By task: resource and how much of it; no task needs more than there is. */
  readonly needs: readonly (readonly (readonly [resource: number, demand: number])[])[];
  readonly capacities: readonly number[];
  /** Nothing ends later. */
  readonly horizon: number;
}

/** A few resources in words of 31 bits: each has a lane for what is free of it, and a spare bit above that stays set while it suffices. */
interface Word {
  readonly spare: number;
  readonly empty: number;
  /** By task: what it needs, in the lanes. */
  readonly need: Int32Array;
  /** By time: what is free, and the spare bits. */
  readonly free: Int32Array;
}

const bitsOfWord = 31;

function wordsOf({ needs, capacities, horizon }: Sharing): Word[] {
  const total = capacities.map(() => 0);
  for (const need of needs)
    for (const [resource, demand] of need) total[resource] = (total[resource] as number) + demand;
  const words: { spare: number; empty: number; readonly need: Int32Array }[] = [];
  const laneOf = new Map<number, readonly [need: Int32Array, shift: number]>();
  let used = bitsOfWord;
  total.forEach((most, resource) => {
    if (most === 0) return;
    const capacity = Math.min(most, capacities[resource] as number);
    const width = 33 - Math.clz32(capacity);
    if (used + width > bitsOfWord) {
      words.push({ spare: 0, empty: 0, need: new Int32Array(needs.length) });
      used = 0;
    }
    const word = words[words.length - 1] as (typeof words)[number];
    word.spare |= 1 << (used + width - 1);
    word.empty |= (capacity << used) | (1 << (used + width - 1));
    laneOf.set(resource, [word.need, used]);
    used += width;
  });
  needs.forEach((need, task) => {
    for (const [resource, demand] of need) {
      const [lane, shift] = laneOf.get(resource) ?? [];
      if (lane !== undefined && demand > 0)
        lane[task] = (lane[task] as number) + (demand << (shift as number));
    }
  });
  return words.map((word) => ({ ...word, free: new Int32Array(horizon + 1) }));
}

/** The room of a project; a task that takes no time takes no room. */
export function roomOf({ durations, demands, capacities }: Project, horizon: number): Room {
  const needs = demands.map((row, i) =>
    durations[i] === 0 ? [] : row.map((demand, resource): [number, number] => [resource, demand]),
  );
  return new Room({ minutes: Int32Array.from(durations), needs, capacities, horizon });
}

/** What is limited and counted, such as drying places and hands: how much of each is free, unit by unit of time. */
export class Room {
  readonly #minutes: ArrayLike<number>;
  readonly #words: readonly Word[];
  work = 0;

  constructor(sharing: Sharing) {
    this.#minutes = sharing.minutes;
    this.#words = wordsOf(sharing);
    this.clear();
  }

  clear(): void {
    for (const { free, empty } of this.#words) free.fill(empty);
  }

  /** The last time of a task, were it to start then, at which something it needs is full; −1 for none. */
  clash(task: number, start: number): number {
    const end = start + (this.#minutes[task] as number);
    let clash = -1;
    for (const { need, free, spare } of this.#words) {
      const wanted = need[task] as number;
      if (wanted === 0) continue;
      const from = Math.max(start, clash + 1);
      let t = end - 1;
      while (t >= from && (((free[t] as number) - wanted) & spare) === spare) t--;
      this.work += (end - t) >> 4;
      if (t >= from) clash = t;
    }
    return clash;
  }

  add(task: number, start: number, sign: 1 | -1): void {
    const end = start + (this.#minutes[task] as number);
    for (const { need, free } of this.#words) {
      const taken = sign * (need[task] as number);
      if (taken === 0) continue;
      for (let t = start; t < end; t++) free[t] = (free[t] as number) - taken;
    }
  }

  /**
   * Which of the first tasks of a list have room together at a moment, taken in their order: they are moved to its front.
   *
   * @returns how many they are
   */
  together(list: Int32Array, count: number, moment: number): number {
    const left = this.#words.map(({ free }) => free[moment] as number);
    let taken = 0;
    for (let k = 0; k < count; k++) {
      const task = list[k] as number;
      if (!this.#takes(left, task)) continue;
      list[k] = list[taken] as number;
      list[taken++] = task;
    }
    return taken;
  }

  /** Takes what a task needs of what is left, if that suffices. */
  #takes(left: number[], task: number): boolean {
    const suffices = this.#words.every(
      ({ need, spare }, w) => (((left[w] as number) - (need[task] as number)) & spare) === spare,
    );
    if (suffices)
      this.#words.forEach(({ need }, w) => {
        left[w] = (left[w] as number) - (need[task] as number);
      });
    return suffices;
  }
}
