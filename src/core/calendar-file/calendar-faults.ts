import { type Component, calendarsIn, everyComponent, named } from "./component.ts";
import { checkComponent } from "./component-rules.ts";
import { type CalendarRule, calendarRules, type Report } from "./faults.ts";
import { checkLine } from "./line-rules.ts";
import { unfoldedLines } from "./unfold.ts";

/**
 * The rules that a calendar file breaks.
 *
 * @param bytes  the file, n bytes
 * @returns      names of the broken rules, each once, in the order of `calendarRules`; none for a right file
 * @throws DomainError never
 *
 * Valid:  any bytes; what RFC 5545 leaves to others (attachments, attendees) is not looked at
 * Source: RFC 5545 (2009), sections 3.1 to 3.8 as named in `calendarRules`
 */
export function calendarFaults(bytes: Uint8Array): CalendarRule[] {
  const broken = new Set<CalendarRule>();
  const report: Report = (rule) => void broken.add(rule);
  const lines = unfoldedLines(bytes, report);
  if (lines[0]?.toUpperCase() !== "BEGIN:VCALENDAR" || lines.at(-1)?.toUpperCase() !== "END:VCALENDAR")
    report("envelope");
  for (const calendar of calendarsIn(lines, report)) checkCalendar(calendar, report);
  return calendarRules.filter((rule) => broken.has(rule));
}

function checkCalendar(calendar: Component, report: Report): void {
  const versions = named(calendar, "VERSION");
  if (named(calendar, "PRODID").length !== 1 || versions.length !== 1 || versions[0]?.value !== "2.0")
    report("prodid-version");
  if (calendar.inside.length === 0) report("has-component");
  const zones = new Set(
    calendar.inside.flatMap((c) => (c.name === "VTIMEZONE" ? named(c, "TZID").map((l) => l.value) : [])),
  );
  const ids = new Set<string>();
  for (const component of everyComponent(calendar)) {
    checkComponent(component, report);
    for (const line of component.lines) {
      checkLine(line, report);
      for (const zone of line.params.TZID ?? [])
        if (!zone.startsWith("/") && !zones.has(zone)) report("tzid-defined");
    }
    for (const uid of component.name === "VALARM" ? [] : named(component, "UID")) {
      const id = JSON.stringify([uid.value, named(component, "RECURRENCE-ID").map((l) => l.value)]);
      if (ids.has(id)) report("uid");
      ids.add(id);
    }
  }
}
