import type { PieceWork } from "./finishing-step.ts";

/** Hands-on work on one surface with the waits after it; minutes, the most Infinity where there is none. */
export interface Task {
  readonly what: PieceWork;
  /** Its place in the order of work; the same for the same work on every surface. */
  readonly step: number;
  /** Counted from 0. */
  readonly surface: number;
  readonly minutes: number;
  /** Until the next work on the same surface. */
  readonly leastWait: number;
  readonly mostWait: number;
  readonly overnight: boolean;
  /** Until the thing may be turned onto it. */
  readonly turn: number;
  /** A coat holds a drying place until so long after its end. */
  readonly dries: number;
}

/** What is worked in one order, one after the other: a surface, or those of a thing that is turned. */
export interface Lane {
  readonly tasks: readonly Task[];
  /** By surface, where something was done before: from when its next work may begin [min since 1970]. */
  readonly ready?: ReadonlyMap<number, number>;
  /** Until when what was done before holds a drying place. */
  readonly heldUntil?: number;
}

/** Where a task went: its parts, in minutes since 1970 by the clock on the wall, and what found no room. */
export interface Place {
  readonly parts: readonly { readonly evening: number; readonly from: number; readonly minutes: number }[];
  readonly left: number;
  /** The evening in which it ends; past the last where it has no room. */
  readonly evening: number;
  readonly end: number;
}

/** The task before on the same surface, or -1. */
export function beforeOnSurface(tasks: readonly Task[], i: number): number {
  let before = i - 1;
  while (before >= 0 && tasks[before]?.surface !== tasks[i]?.surface) before -= 1;
  return before;
}
