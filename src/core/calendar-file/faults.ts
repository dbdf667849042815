/** The rules of RFC 5545 that are checked, as they are called in reports. */
export const calendarRules = [
  "crlf",
  "fold75",
  "utf8",
  "no-control",
  "envelope",
  "prodid-version",
  "has-component",
  "uid",
  "dtstamp",
  "dtstart",
  "dtend-or-duration",
  "dtend-after",
  "datetime-form",
  "no-tzid-with-z",
  "tzid-defined",
  "vtimezone",
  "text-escape",
  "param-quote",
  "duration-form",
  "valarm",
  "rrule",
  "once-only",
  "name-form",
] as const;
export type CalendarRule = (typeof calendarRules)[number];

/** Takes note of a broken rule. */
export type Report = (rule: CalendarRule) => void;
