import { Temporal } from "temporal-polyfill";
import { DomainError } from "../domain-error.ts";
import { dayNumber } from "../pieces/calendar-day.ts";
import { shopClock } from "../schedule/shop-clock.ts";
import { escapedText, foldedLine } from "./content-text.ts";
import { type EventTime, timeLines, utcForm } from "./time-lines.ts";
import { zoneLines } from "./zone-lines.ts";

export interface CalendarEvent {
  /** The same each time that the same thing is written, so that what is taken in again moves it. */
  readonly uid: string;
  readonly time: EventTime;
  readonly summary: string;
  readonly description: string;
  /** It was in an earlier file and is no more. */
  readonly cancelled?: boolean;
}

export interface CalendarToWrite {
  /** IANA name, as Europe/Berlin. */
  readonly zone: string;
  /** When it is written, an instant in UTC. */
  readonly stamp: string;
  /** How many plans there were before this one. */
  readonly sequence: number;
  readonly events: readonly CalendarEvent[];
}

/** Who made a file, in its own words. RFC 5545, section 3.7.3. */
export const maker = "-//Lacbench//Lacbench//EN";

/** A reminder so long before an evening that the room and the jar can be got ready: common practice. */
const alarmMinutes = 30;

const alarmLines = (summary: string): string[] => [
  "BEGIN:VALARM",
  "ACTION:DISPLAY",
  `DESCRIPTION:${escapedText(summary)}`,
  `TRIGGER:-PT${alarmMinutes}M`,
  "END:VALARM",
];

function eventLines(event: CalendarEvent, file: CalendarToWrite, stamp: string): string[] {
  const isDay = "day" in event.time;
  return [
    "BEGIN:VEVENT",
    `UID:${escapedText(event.uid)}`,
    `DTSTAMP:${stamp}`,
    `SEQUENCE:${file.sequence}`,
    ...timeLines(event.time, file.zone),
    `SUMMARY:${escapedText(event.summary)}`,
    `DESCRIPTION:${escapedText(event.description)}`,
    `STATUS:${event.cancelled === true ? "CANCELLED" : "CONFIRMED"}`,
    ...(isDay ? ["TRANSP:TRANSPARENT"] : []),
    ...(isDay || event.cancelled === true ? [] : alarmLines(event.summary)),
    "END:VEVENT",
  ];
}

/** Days as from noon to noon in UTC: near enough to tell the years. */
const reach = ({ time }: CalendarEvent): readonly [number, number] =>
  "day" in time
    ? [dayNumber(time.day) * 1440, (dayNumber(time.day) + 1) * 1440]
    : [time.from, Math.max(time.from, time.until)];

/**
 * A calendar file: the zone with its clock changes, and an event for each evening, with a reminder.
 *
 * @param file  zone, when it is written, which revision it is, and the events (n)
 * @returns     the file's text, lines ended by CRLF and folded at 75 octets
 * @throws DomainError for a zone that is not known, and for no events
 *
 * Valid:  events in the years 1970 to 9999, each id once
 * Source: RFC 5545, section 3.6; status and revision as in RFC 5545, sections 3.8.1.11 and 3.8.7.4
 */
export function calendarFile(file: CalendarToWrite): string {
  shopClock(file.zone); // refuses a zone that nobody knows
  if (file.events.length === 0)
    throw new DomainError({
      code: "contradiction",
      field: "events",
      value: 0,
      because: "A calendar needs at least one evening with a date.",
    });
  const reaches = file.events.map(reach);
  const from = Math.min(...reaches.map(([start]) => start));
  const until = Math.max(...reaches.map(([, end]) => end));
  const stamp = utcForm(Temporal.Instant.from(file.stamp));
  return [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    `PRODID:${maker}`,
    "CALSCALE:GREGORIAN",
    ...zoneLines(file.zone, from, until),
    ...file.events.flatMap((event) => eventLines(event, file, stamp)),
    "END:VCALENDAR",
  ]
    .map(foldedLine)
    .join("");
}
