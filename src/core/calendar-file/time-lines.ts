import { Temporal } from "temporal-polyfill";
import { type CalendarDay, daysLater } from "../pieces/calendar-day.ts";

/** A whole day, or from one moment until another [min since 1970 UTC]. */
export type EventTime = { readonly day: CalendarDay } | { readonly from: number; readonly until: number };

/** `20261005T180000` */
export const clockForm = (plain: Temporal.PlainDateTime): string =>
  plain.toString({ smallestUnit: "second" }).replace(/[-:]/g, "");

/** `20261005T160000Z` */
export const utcForm = (instant: Temporal.Instant): string =>
  `${clockForm(instant.toZonedDateTimeISO("UTC").toPlainDateTime())}Z`;

/** In quotes where it holds what would end it, as the zone +01:00 does. RFC 5545, section 3.2. */
const paramValue = (text: string): string => (/[:;,]/.test(text) ? `"${text}"` : text);

/** By the clock of the zone; in UTC where the clock shows that time twice, so that no reader takes the other. */
function timeLine(name: string, minutes: number, zone: string): string {
  const instant = Temporal.Instant.fromEpochMilliseconds(minutes * 60_000);
  const plain = instant.toZonedDateTimeISO(zone).toPlainDateTime();
  const [one, other] = (["earlier", "later"] as const).map((which) =>
    plain.toZonedDateTime(zone, { disambiguation: which }).toInstant(),
  );
  return one?.equals(other ?? instant) === true
    ? `${name};TZID=${paramValue(zone)}:${clockForm(plain)}`
    : `${name}:${utcForm(instant)}`;
}

const dayLine = (name: string, day: CalendarDay): string => `${name};VALUE=DATE:${day.replaceAll("-", "")}`;

/**
 * When an event begins and ends, as lines of a calendar file.
 *
 * @param time  a day, or two moments [min since 1970 UTC]; an event that ends when it begins has no end
 * @param zone  IANA name
 * @returns     DTSTART and DTEND, unfolded
 * @throws DomainError never
 *
 * Valid:  years 1970 to 9999
 * Source: RFC 5545, sections 3.3.5, 3.8.2.2 and 3.8.2.4; the day after the last is the end of whole days
 */
export function timeLines(time: EventTime, zone: string): string[] {
  if ("day" in time) return [dayLine("DTSTART", time.day), dayLine("DTEND", daysLater(time.day, 1))];
  const start = timeLine("DTSTART", time.from, zone);
  return time.until > time.from ? [start, timeLine("DTEND", time.until, zone)] : [start];
}
