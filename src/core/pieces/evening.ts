import { DomainError, inRange } from "../domain-error.ts";
import type { ShopClock } from "../schedule/shop-clock.ts";
import { clock as clockText } from "./bench-time.ts";
import { type CalendarDay, calendarDay, dayNumber, daysLater } from "./calendar-day.ts";

/** An evening at the bench: minutes after local midnight. */
export interface Evening {
  readonly day: CalendarDay;
  readonly fromMinute: number;
  readonly untilMinute: number;
}

/** An evening in minutes of real time since 1970 UTC. */
export interface Span {
  readonly opens: number;
  readonly closes: number;
}

/** The moment of a minute after midnight, 1440 being the next midnight; of one that the clocks skip, as much later as they skip. */
export const momentOf = (clock: ShopClock, day: CalendarDay, minute: number): number =>
  minute < 1440
    ? clock.minutesPastSkip(`${day}T${clockText(minute)}`, "evenings")
    : clock.minutesPastSkip(`${daysLater(day, 1)}T${clockText(minute - 1440)}`, "evenings");

/** What the clock on the wall shows at a moment. */
export function wallAt(
  clock: ShopClock,
  moment: number,
): { readonly day: CalendarDay; readonly minute: number } {
  const shown = clock.clock(Math.round(moment));
  const [hours, minutes] = [Number(shown.slice(11, 13)), Number(shown.slice(14, 16))];
  return { day: calendarDay(shown.slice(0, 10)), minute: hours * 60 + minutes };
}

/** Evenings as stretches of real time: one in which the clocks change is an hour longer or shorter. */
export const spansOf = (evenings: readonly Evening[], clock: ShopClock): readonly Span[] =>
  evenings.map(({ day, fromMinute, untilMinute }) => ({
    opens: momentOf(clock, day, fromMinute),
    closes: momentOf(clock, day, untilMinute),
  }));

/**
 * Refuses evenings that end before they begin, overlap, or stand out of order.
 *
 * @throws DomainError that names the evening, counted from 0
 */
export function checkEvenings(evenings: readonly Evening[]): void {
  const spans = evenings.map(({ day, fromMinute, untilMinute }) => {
    const midnight = dayNumber(day) * 1440;
    return { opens: midnight + fromMinute, closes: midnight + untilMinute };
  });
  evenings.forEach(({ day, fromMinute, untilMinute }, i) => {
    const field = `evenings[${i}]`;
    if (!(untilMinute > fromMinute))
      throw new DomainError({
        code: "contradiction",
        field,
        value: day,
        because: "It ends before it starts.",
      });
    const [before, span] = [spans[i - 1], spans[i]];
    if (before !== undefined && span !== undefined && before.closes > span.opens)
      throw new DomainError({
        code: "contradiction",
        field,
        value: day,
        because: "Evenings go in order of time and do not overlap.",
      });
    inRange(`${field}.fromMinute`, fromMinute, { min: 0, max: 1440 });
    inRange(`${field}.untilMinute`, untilMinute, { min: 0, max: 1440 });
  });
}
