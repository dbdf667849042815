import type { Random } from "../random.ts";

/** The end from which a schedule is made: from its start each task goes as early as it can, from its end as late. */
export type Side = "start" | "end";

/** Tasks of an order, from one place to before another, that are packed side by side. */
export interface Packing {
  readonly from: number;
  readonly until: number;
  readonly random: Random;
}

/** What is counted while schedules are made, in steps of the search: by time, on average. */
export const stepsOfWork = 0.12;

/** Makes schedules of orders of tasks. */
export interface Maker {
  /** Done so far, in steps of the search. */
  readonly work: number;
  /** From where it can make them. */
  readonly sides: readonly Side[];
  /** All tasks by a priority (n), the smallest first as far as they need not wait for others. */
  byPriority(priority: Float64Array): Int32Array;
  /** All tasks in their order in a schedule, as seen from a side. */
  ofStarts(starts: Int32Array, side: Side): Int32Array;
  /**
   * Starts (n) of the schedule that an order gives; `undefined` when there is none.
   *
   * @param packing  these places of the order go by what fills the resources best, where it can pack
   */
  made(order: Int32Array, side: Side, packing?: Packing): Int32Array | undefined;
}
