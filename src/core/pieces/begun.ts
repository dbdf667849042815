import type { ShopClock } from "../schedule/shop-clock.ts";
import { type CalendarDay, daysLater } from "./calendar-day.ts";
import { momentOf, type Span } from "./evening.ts";
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

/** When the last coat that is on was finished [min since 1970 UTC]. */
export const finishedAt = ({ day, minute }: Begun, clock: ShopClock): number => momentOf(clock, day, minute);

/** When what follows the last coat that is on may begin, by that coat's least wait and its night. */
export function readyAfter(
  begun: Begun,
  task: Pick<Task, "leastWait" | "overnight">,
  clock: ShopClock,
): number {
  const waited = finishedAt(begun, clock) + task.leastWait;
  return task.overnight ? Math.max(waited, momentOf(clock, daysLater(begun.day, 1), 0)) : waited;
}

/**
 * The evenings that are left from a moment on; one under way begins then.
 *
 * @param evenings  in order, none overlapping
 * @param ready     minutes since 1970 UTC
 * @returns         evenings in order
 */
export const eveningsFrom = (evenings: readonly Span[], ready: number): readonly Span[] =>
  evenings
    .filter(({ closes }) => closes > ready)
    .map(({ opens, closes }) => ({ opens: Math.max(opens, ready), closes }));
