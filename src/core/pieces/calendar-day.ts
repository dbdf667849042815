import { DomainError } from "../domain-error.ts";

declare const dayBrand: unique symbol;
/** A calendar day, `YYYY-MM-DD` in the proleptic Gregorian calendar. It has no zone and no clock. */
export type CalendarDay = string & { readonly [dayBrand]: true };

const pattern = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * Days from 1970-01-01 to a civil date.
 *
 * Source: E. G. Richards, "Calendars", in Explanatory Supplement to the Astronomical Almanac (3rd ed. 2013),
 * section 15.11.3: the Julian day number of a Gregorian date, less that of 1970-01-01 (2440588).
 */
function dayNumberOfCivil(year: number, month: number, day: number): number {
  const before = Math.trunc((month - 14) / 12);
  const julian =
    Math.trunc((1461 * (year + 4800 + before)) / 4) +
    Math.trunc((367 * (month - 2 - 12 * before)) / 12) -
    Math.trunc((3 * Math.trunc((year + 4900 + before) / 100)) / 4) +
    day -
    32075;
  return julian - 2440588;
}

/** Reads a day and refuses one that is not in the calendar, as 2026-02-30. */
export function calendarDay(text: string, field = "day"): CalendarDay {
  const parts = pattern.exec(text);
  if (parts !== null) {
    const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
    if (month >= 1 && month <= 12 && day >= 1 && dayFromNumber(dayNumberOfCivil(year, month, day)) === text)
      return text as CalendarDay;
  }
  throw new DomainError({
    code: "wrong-type",
    field,
    value: text,
    because: "A day is written as 2026-10-05 and must be in the calendar.",
  });
}

/** Days since 1970-01-01. */
export function dayNumber(day: CalendarDay): number {
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  return dayNumberOfCivil(year, month, date);
}

/** The inverse of `dayNumber`. Source: as there, the inverse algorithm of the same section. */
export function dayFromNumber(number: number): CalendarDay {
  const f =
    number +
    2440588 +
    1401 +
    Math.trunc((Math.trunc((4 * (number + 2440588) + 274277) / 146097) * 3) / 4) -
    38;
  const e = 4 * f + 3;
  const h = 5 * Math.trunc((e % 1461) / 4) + 2;
  const day = Math.trunc((h % 153) / 5) + 1;
  const month = ((Math.trunc(h / 153) + 2) % 12) + 1;
  const year = Math.trunc(e / 1461) - 4716 + Math.trunc((12 + 2 - month) / 12);
  const two = (x: number): string => String(x).padStart(2, "0");
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}` as CalendarDay;
}

/** The day so many days later; earlier for a negative number. */
export const daysLater = (day: CalendarDay, days: number): CalendarDay =>
  dayFromNumber(dayNumber(day) + days);

/** Days after Monday: 0 for Monday, 6 for Sunday. 1970-01-01 was a Thursday. */
export const weekday = (day: CalendarDay): number => (((dayNumber(day) + 3) % 7) + 7) % 7;
