import { type Component, named } from "./component.ts";
import type { Report } from "./faults.ts";
import { isDay, isTime, isUtcTime, timeType } from "./values.ts";

const number = (sign: string, digits: string): RegExp =>
  new RegExp(`^${sign}${digits}(?:,${sign}${digits})*$`);
const forms: Readonly<Record<string, RegExp>> = {
  FREQ: /^(?:SECONDLY|MINUTELY|HOURLY|DAILY|WEEKLY|MONTHLY|YEARLY)$/,
  UNTIL: /^\d{8}(?:T\d{6}Z?)?$/,
  COUNT: /^[1-9]\d*$/,
  INTERVAL: /^[1-9]\d*$/,
  BYSECOND: number("", "(?:[0-5]?\\d|60)"),
  BYMINUTE: number("", "[0-5]?\\d"),
  BYHOUR: number("", "(?:[01]?\\d|2[0-3])"),
  BYDAY: number("[+-]?(?:[1-9]|[1-4]\\d|5[0-3])?", "(?:SU|MO|TU|WE|TH|FR|SA)"),
  BYMONTHDAY: number("[+-]?", "(?:[1-9]|[12]\\d|3[01])"),
  BYYEARDAY: number("[+-]?", "[1-9]\\d{0,2}"),
  BYWEEKNO: number("[+-]?", "(?:[1-9]|[1-4]\\d|5[0-3])"),
  BYMONTH: number("", "(?:0?[1-9]|1[0-2])"),
  BYSETPOS: number("[+-]?", "[1-9]\\d{0,2}"),
  WKST: /^(?:SU|MO|TU|WE|TH|FR|SA)$/,
};

/** RFC 5545, section 3.3.10. */
export function checkRule(rule: string, component: Component, report: Report): void {
  const parts = rule.split(";").map((part) => part.split("=") as [string, string?]);
  const names = parts.map(([name]) => name.toUpperCase());
  const isFormed = parts.every(([name, value]) => forms[name.toUpperCase()]?.test(value ?? "") === true);
  const until = parts.find(([name]) => name.toUpperCase() === "UNTIL")?.[1];
  const isRight =
    isFormed &&
    names.includes("FREQ") &&
    new Set(names).size === names.length &&
    !(names.includes("UNTIL") && names.includes("COUNT")) &&
    (until === undefined || untilFits(until, component));
  if (!isRight) report("rrule");
}

/** UNTIL is of the type of DTSTART, in UTC where that has a zone or is an observance of one. */
function untilFits(until: string, component: Component): boolean {
  const [start] = named(component, "DTSTART");
  if (component.name === "STANDARD" || component.name === "DAYLIGHT") return isUtcTime(until);
  if (start === undefined) return true;
  if (timeType(start) === "DATE") return isDay(until);
  const inZone = start.params.TZID !== undefined || start.value.endsWith("Z");
  return inZone ? isUtcTime(until) : isTime(until) && !until.endsWith("Z");
}
