import { calendarDay } from "../pieces/calendar-day.ts";
import { shopClock } from "../schedule/shop-clock.ts";
import { type Component, calendarsIn, named } from "./component.ts";
import type { EventTime } from "./time-lines.ts";
import { unfoldedLines } from "./unfold.ts";
import { bytesOfText } from "./utf8.ts";
import { type CalendarEvent, maker } from "./write-calendar.ts";

/** An earlier file, as far as one that brings it up to date has to know it. */
export interface EarlierCalendar {
  readonly sequence: number;
  readonly events: readonly CalendarEvent[];
}

const textOf = (component: Component, name: string): string => named(component, name)[0]?.value ?? "";

const unescaped = (text: string): string =>
  text.replace(/\\(.)/g, (_, c: string) => (c === "n" || c === "N" ? "\n" : c));

const dashed = (day: string): string => `${day.slice(0, 4)}-${day.slice(4, 6)}-${day.slice(6, 8)}`;

function minutesOf(event: Component, name: string): number | undefined {
  const [line] = named(event, name);
  if (line === undefined) return undefined;
  const { value, params } = line;
  const zone = value.endsWith("Z") ? "UTC" : (params.TZID?.[0] ?? "UTC");
  return shopClock(zone).minutes(`${dashed(value)}T${value.slice(9, 11)}:${value.slice(11, 13)}`, name);
}

function timeOf(event: Component): EventTime {
  const [start] = named(event, "DTSTART");
  if (start?.params.VALUE?.[0] === "DATE") return { day: calendarDay(dashed(start.value), "DTSTART") };
  const from = minutesOf(event, "DTSTART") ?? Number.NaN;
  return { from, until: minutesOf(event, "DTEND") ?? from };
}

/**
 * The events of a calendar file that `calendarFile` wrote.
 *
 * @param text  a file
 * @returns     its events and its revision; undefined where Lacbench did not write it, or somebody broke it since
 * @throws DomainError for times in it that are none
 *
 * Valid:  whole minutes
 * Source: RFC 5545, sections 3.1 to 3.3
 */
export function calendarEvents(text: string): EarlierCalendar | undefined {
  let isBroken = false;
  const report = (): void => {
    isBroken = true;
  };
  const [calendar] = calendarsIn(unfoldedLines(bytesOfText(text), report), report);
  if (isBroken || calendar === undefined || textOf(calendar, "PRODID") !== maker) return undefined;
  const found = calendar.inside.filter((component) => component.name === "VEVENT");
  return {
    sequence: Math.max(0, ...found.map((event) => Number(textOf(event, "SEQUENCE")))),
    events: found.map((event) => ({
      uid: unescaped(textOf(event, "UID")),
      time: timeOf(event),
      summary: unescaped(textOf(event, "SUMMARY")),
      description: unescaped(textOf(event, "DESCRIPTION")),
      ...(textOf(event, "STATUS") === "CANCELLED" ? { cancelled: true } : {}),
    })),
  };
}
