import type { CalendarEvent } from "../calendar-file/write-calendar.ts";
import type { ShopClock } from "../schedule/shop-clock.ts";
import { calendarDay } from "./calendar-day.ts";
import { type DatedStep, type PlannedEvening, plannedEvenings } from "./planned-evenings.ts";

type Said = Pick<CalendarEvent, "summary" | "description">;

/** How the evenings are put into words. */
export interface PieceWords<S> {
  readonly evening: (evening: PlannedEvening<S>) => Said;
  /** Work that has a day and no hour, as rubbing out. */
  readonly day: (step: S) => Said;
}

/**
 * What of a piece's plan goes into a calendar: each evening, and each day on which work without an hour may begin.
 *
 * @param id     the piece's, from which each event has its own, by its number: a later plan moves the same events
 * @param steps  the plan's, in order (n)
 * @param clock  of the zone in which the hours are meant
 * @param says   the words for an evening and a day
 * @returns      events, evenings first
 * @throws DomainError for a day or an hour that is none
 */
export function pieceEvents<S extends DatedStep>(
  id: string,
  steps: readonly S[],
  clock: ShopClock,
  says: PieceWords<S>,
): CalendarEvent[] {
  const evenings = plannedEvenings(steps, clock).map((evening, i) => ({
    uid: `${id}-evening-${i + 1}`,
    time: { from: evening.from, until: evening.until },
    ...says.evening(evening),
  }));
  const days = steps.flatMap((step) =>
    step.day === undefined || step.at !== undefined || (step.minutes ?? 0) === 0
      ? []
      : [{ time: { day: calendarDay(step.day) }, ...says.day(step) }],
  );
  return [...evenings, ...days.map((day, i) => ({ uid: `${id}-day-${i + 1}`, ...day }))];
}
