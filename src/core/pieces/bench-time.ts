import { DomainError } from "../domain-error.ts";
import { type CalendarDay, calendarDay } from "./calendar-day.ts";

const pattern = /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-4]):([0-5]\d)$/;

/** Wall-clock time at the bench: a day and the minutes since its midnight. */
export interface BenchTime {
  readonly day: CalendarDay;
  readonly minute: number;
}

/** Reads `2026-10-05T18:00`; the end of a day may be written 24:00. */
export function benchTime(text: string, field: string): BenchTime {
  const parts = pattern.exec(text);
  const minute = parts === null ? Number.NaN : Number(parts[2]) * 60 + Number(parts[3]);
  if (parts === null || !(minute <= 1440))
    throw new DomainError({
      code: "wrong-type",
      field,
      value: text,
      because: "A time at the bench is written as 2026-10-05T18:00.",
    });
  return { day: calendarDay(parts[1] as string, field), minute };
}

/** `18:05` from 1085 minutes after midnight. */
export const clock = (minute: number): string =>
  `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(Math.round(minute % 60)).padStart(2, "0")}`;
