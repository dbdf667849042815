import { DomainError, inRange } from "../domain-error.ts";
import { type CalendarDay, dayNumber } from "./calendar-day.ts";

/** An evening at the bench: minutes after local midnight. */
export interface Evening {
  readonly day: CalendarDay;
  readonly fromMinute: number;
  readonly untilMinute: number;
}

/** An evening in minutes since 1970, by the clock on the wall. */
export interface Span {
  readonly opens: number;
  readonly closes: number;
}

/** Evenings as stretches of one long clock. */
export const spansOf = (evenings: readonly Evening[]): readonly Span[] =>
  evenings.map(({ day, fromMinute, untilMinute }) => {
    const midnight = dayNumber(day) * 1440;
    return { opens: midnight + fromMinute, closes: midnight + untilMinute };
  });

/**
 * Refuses evenings that end before they begin, overlap, or stand out of order.
 *
 * @throws DomainError that names the evening, counted from 0
 */
export function checkEvenings(evenings: readonly Evening[]): void {
  const spans = spansOf(evenings);
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
