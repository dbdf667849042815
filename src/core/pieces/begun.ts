import { type CalendarDay, dayNumber } from "./calendar-day.ts";
import { closes, type Evening, opens } from "./evening.ts";
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
  return evenings
    .filter((evening) => closes(evening) > ready && (!task.overnight || evening.day > begun.day))
    .map((evening) =>
      opens(evening) < ready ? { ...evening, fromMinute: ready - dayNumber(evening.day) * 1440 } : evening,
    );
}
