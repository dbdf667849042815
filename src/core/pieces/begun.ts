import { type CalendarDay, dayNumber } from "./calendar-day.ts";
import { type Evening, type Span, spansOf } from "./evening.ts";
import type { Task } from "./place-tasks.ts";

/** Coats that are on, and when the last of them was finished, by the clock on the wall. */
export interface Begun {
  readonly coats: number;
  readonly day: CalendarDay;
  readonly minute: number;
}

/**
 * The evenings that are left after a coat and its least wait; an evening under way begins when the wait is over.
 *
 * @param evenings  in order, none overlapping
 * @param begun     the last coat that is on
 * @param task      that coat's work, with the waits after it
 * @returns         evenings in order
 */
export function eveningsAfter(
  evenings: readonly Evening[],
  begun: Begun,
  task: Pick<Task, "leastWait" | "overnight">,
): readonly Evening[] {
  const ready = dayNumber(begun.day) * 1440 + begun.minute + task.leastWait;
  const spans = spansOf(evenings);
  return evenings.flatMap((evening, i) => {
    const { opens, closes } = spans[i] as Span;
    if (closes <= ready || (task.overnight && evening.day <= begun.day)) return [];
    return [opens < ready ? { ...evening, fromMinute: ready - dayNumber(evening.day) * 1440 } : evening];
  });
}
