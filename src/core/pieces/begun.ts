import { type CalendarDay, dayNumber } from "./calendar-day.ts";
import { type Evening, type Span, spansOf } from "./evening.ts";
import type { Task } from "./task.ts";

/** Coats that are on, and when the last of them was finished, by the clock on the wall. */
export interface Begun {
  readonly coats: number;
  readonly day: CalendarDay;
  readonly minute: number;
}

/** The same of one surface, by its name. */
export interface BegunOn extends Begun {
  readonly surface: string;
}

/** When the last coat that is on was finished [min since 1970 by the clock on the wall]. */
export const finishedAt = ({ day, minute }: Begun): number => dayNumber(day) * 1440 + minute;

/** When what follows the last coat that is on may begin, by that coat's least wait and its night. */
export function readyAfter(begun: Begun, task: Pick<Task, "leastWait" | "overnight">): number {
  const waited = finishedAt(begun) + task.leastWait;
  return task.overnight ? Math.max(waited, (dayNumber(begun.day) + 1) * 1440) : waited;
}

/**
 * The evenings that are left from a moment on; one under way begins then.
 *
 * @param evenings  in order, none overlapping
 * @param ready     minutes since 1970 by the clock on the wall
 * @returns         evenings in order
 */
export function eveningsFrom(evenings: readonly Evening[], ready: number): readonly Evening[] {
  const spans = spansOf(evenings);
  return evenings.flatMap((evening, i) => {
    const { opens, closes } = spans[i] as Span;
    if (closes <= ready) return [];
    return [opens < ready ? { ...evening, fromMinute: ready - dayNumber(evening.day) * 1440 } : evening];
  });
}
