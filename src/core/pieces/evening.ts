import { DomainError, inRange } from "../domain-error.ts";
import { type CalendarDay, dayNumber } from "./calendar-day.ts";

/** An evening at the bench: minutes after local midnight. */
export interface Evening {
  readonly day: CalendarDay;
  readonly fromMinute: number;
  readonly untilMinute: number;
}

/** When an evening begins: minutes since 1970 by the clock on the wall. */
export const opens = ({ day, fromMinute }: Evening): number => dayNumber(day) * 1440 + fromMinute;
/** When an evening ends, likewise. */
export const closes = ({ day, untilMinute }: Evening): number => dayNumber(day) * 1440 + untilMinute;

/**
 * Refuses evenings that end before they begin, overlap, or stand out of order.
 *
 * @throws DomainError that names the evening, counted from 0
 */
export function checkEvenings(evenings: readonly Evening[]): void {
  evenings.forEach((evening, i) => {
    const { day, fromMinute, untilMinute } = evening;
    const field = `evenings[${i}]`;
    if (!(untilMinute > fromMinute))
      throw new DomainError({
        code: "contradiction",
        field,
        value: day,
        because: "It ends before it starts.",
      });
    const before = evenings[i - 1];
    if (before !== undefined && closes(before) > opens(evening))
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
