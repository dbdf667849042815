import { type Component, named } from "./component.ts";
import type { Report } from "./faults.ts";
import { checkRule } from "./recurrence-rules.ts";
import { hourOf, isTime, isUtcTime, timeType } from "./values.ts";

const once =
  `SUMMARY DESCRIPTION LOCATION STATUS SEQUENCE CREATED LAST-MODIFIED PRIORITY CLASS GEO ORGANIZER TRANSP URL
  RECURRENCE-ID DTEND DUE DURATION COMPLETED PERCENT-COMPLETE`.split(/\s+/);
const scheduled = ["VEVENT", "VTODO", "VJOURNAL"];
const exactlyOne = (component: Component, name: string): boolean => named(component, name).length === 1;

/** Rules of one component by its kind. RFC 5545, section 3.6. */
export function checkComponent(component: Component, report: Report): void {
  if (scheduled.includes(component.name)) checkScheduled(component, report);
  if (component.name === "VTIMEZONE") checkZone(component, report);
  if (component.name === "VALARM") checkAlarm(component, report);
  for (const rule of named(component, "RRULE")) checkRule(rule.value, component, report);
}

function checkScheduled(component: Component, report: Report): void {
  const { name } = component;
  if (!exactlyOne(component, "UID")) report("uid");
  const stamps = named(component, "DTSTAMP");
  if (stamps.length !== 1 || !isUtcTime(stamps[0]?.value ?? "")) report("dtstamp");
  const starts = named(component, "DTSTART").length;
  const startNeeded =
    name === "VEVENT" && (component.parent === undefined || named(component.parent, "METHOD").length === 0);
  if (starts > 1 || (startNeeded && starts === 0)) report("dtstart");
  const hasDuration = named(component, "DURATION").length > 0;
  if (hasDuration && named(component, name === "VTODO" ? "DUE" : "DTEND").length > 0)
    report("dtend-or-duration");
  checkEnd(component, report);
  for (const property of once)
    if (named(component, property).length > 1 && !(name === "VJOURNAL" && property === "DESCRIPTION"))
      report("once-only");
}

/** Clocks of two zones may show up to 26 hours apart at one moment. */
const zonesApart = 26;

function checkEnd(component: Component, report: Report): void {
  const [start] = named(component, "DTSTART");
  const [end] = named(component, component.name === "VTODO" ? "DUE" : "DTEND");
  if (start === undefined || end === undefined) return;
  if (timeType(start) !== timeType(end)) {
    report("dtend-after");
    return;
  }
  const from = hourOf(start.value);
  const to = hourOf(end.value);
  if (from === undefined || to === undefined) return;
  const zone = (line: typeof start): string => line.params.TZID?.[0] ?? (line.value.endsWith("Z") ? "Z" : "");
  const slack = zone(start) === zone(end) ? 0 : zonesApart;
  if (to + slack <= from) report("dtend-after");
}

const offset = /^(?!-0000(?:00)?$)[+-](?:[01]\d|2[0-3])[0-5]\d(?:[0-5]\d)?$/;

function checkZone(zone: Component, report: Report): void {
  const observances = zone.inside.filter((c) => c.name === "STANDARD" || c.name === "DAYLIGHT");
  const isWhole = (c: Component): boolean =>
    ["TZOFFSETFROM", "TZOFFSETTO"].every((name) => {
      const lines = named(c, name);
      return lines.length === 1 && offset.test(lines[0]?.value ?? "");
    }) &&
    exactlyOne(c, "DTSTART") &&
    isTime(named(c, "DTSTART")[0]?.value ?? "");
  if (!exactlyOne(zone, "TZID") || observances.length === 0 || !observances.every(isWhole))
    report("vtimezone");
}

function checkAlarm(alarm: Component, report: Report): void {
  const has = (name: string): boolean => named(alarm, name).length > 0;
  const action = named(alarm, "ACTION")[0]?.value.toUpperCase();
  const isPlaced = alarm.parent?.name === "VEVENT" || alarm.parent?.name === "VTODO";
  const isWhole = exactlyOne(alarm, "ACTION") && exactlyOne(alarm, "TRIGGER");
  const needs =
    action === "DISPLAY" ? ["DESCRIPTION"] : action === "EMAIL" ? ["DESCRIPTION", "SUMMARY", "ATTENDEE"] : [];
  if (!isPlaced || !isWhole || !needs.every(has) || has("DURATION") !== has("REPEAT")) report("valarm");
}
