import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { calendarDay } from "../pieces/calendar-day.ts";
import { calendarFaults } from "./calendar-faults.ts";
import { calendarEvents } from "./read-events.ts";
import { bytesOfText } from "./utf8.ts";
import { type CalendarEvent, calendarFile } from "./write-calendar.ts";

const minutes = (instant: string): number => Date.parse(instant) / 60_000;
const event = (uid: string, from: string, until: string): CalendarEvent => ({
  uid,
  time: { from: minutes(from), until: minutes(until) },
  summary: "Table top: coat 1",
  description: "18:00 Coat 1\nMind the data sheet.",
});
const written = (zone: string, events: readonly CalendarEvent[], sequence = 0): string => {
  const text = calendarFile({ zone, stamp: "2026-11-29T06:00:00Z", sequence, events });
  expect(calendarFaults(bytesOfText(text))).toEqual([]); // every rule of RFC 5545 in rules.json
  return text;
};

/** What a reader of another author makes of it, by the zone that is in the file. */
function readBack(text: string): { uid: string; from: string; until: string; description: string }[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const zone = new ICAL.Timezone(calendar.getFirstSubcomponent("vtimezone") as ICAL.Component);
  const instant = (time: ICAL.Time): string => {
    if (time.zone.tzid !== "UTC" && !time.isDate) time.zone = zone;
    return new Date(time.toUnixTime() * 1000).toISOString().replace(".000", "");
  };
  return calendar.getAllSubcomponents("vevent").map((found) => {
    const { uid, startDate, endDate, description } = new ICAL.Event(found);
    return { uid, from: instant(startDate), until: instant(endDate), description };
  });
}

describe("moments, as ical.js reads them", () => {
  // Directive 2000/84/EC: clocks change at 1:00 UTC on the last Sundays of March and October.
  // 15 U.S.C. 260a: at 2 a.m. local time on the second Sunday of March and the first of November.
  test.each([
    ["Europe/Berlin", "2026-10-25T00:30:00Z", "2026-10-25T02:30:00Z", "forward an hour that comes twice"],
    ["Europe/Berlin", "2026-10-25T00:15:00Z", "2026-10-25T01:15:00Z", "from an hour into the same again"],
    ["Europe/Berlin", "2027-03-28T00:30:00Z", "2027-03-28T01:30:00Z", "across an hour that is skipped"],
    ["America/New_York", "2026-11-01T05:30:00Z", "2026-11-01T07:30:00Z", "forward an hour that comes twice"],
    ["America/New_York", "2026-11-01T05:15:00Z", "2026-11-01T06:15:00Z", "from an hour into the same again"],
    ["America/New_York", "2027-03-14T06:30:00Z", "2027-03-14T07:30:00Z", "across an hour that is skipped"],
    ["Asia/Kolkata", "2026-10-25T12:30:00Z", "2026-10-25T15:30:00Z", "where no clock changes"],
    ["UTC", "2026-10-25T12:30:00Z", "2026-10-25T15:30:00Z", "where none ever did"],
    ["+05:45", "2026-10-25T12:30:00Z", "2026-10-25T15:30:00Z", "where the zone is an offset"],
  ])("%s, %s to %s: %s", (zone, from, until) => {
    const [found] = readBack(written(zone, [event("a", from, until)]));
    expect(found).toMatchObject({ from, until });
  });

  test.each([
    "Europe/Berlin",
    "America/New_York",
    "Australia/Lord_Howe",
    "Africa/Casablanca",
    "America/Sao_Paulo",
    "Asia/Kathmandu",
  ])("%s: any evenings in any years come back", (zone) => {
    const at = fc.integer({ min: minutes("1975-01-01T00:00Z"), max: minutes("2060-01-01T00:00Z") });
    const evening = fc.tuple(at, fc.integer({ min: 1, max: 600 }));
    fc.assert(
      fc.property(evening, fc.integer({ min: 0, max: 900 * 1440 }), ([from, lasts], later) => {
        const events = [from, from + later].map((start, i) => ({
          ...event(String(i), "2026-01-01T00:00Z", "2026-01-01T01:00Z"),
          time: { from: start, until: start + lasts },
        }));
        expect(readBack(written(zone, events)).map((e) => [minutes(e.from), minutes(e.until)])).toEqual(
          events.map((e) => [e.time.from, e.time.until]),
        );
      }),
      { numRuns: 40 },
    );
  });

  // ECMA-402: the platform's own clock, every quarter of an hour around the changes
  test.each(["Europe/Berlin", "America/New_York"])("%s: the zone's clock is the platform's", (zone) => {
    const text = written(zone, [event("a", "2027-03-01T12:00:00Z", "2027-12-01T12:00:00Z")]);
    const told = new ICAL.Timezone(
      new ICAL.Component(ICAL.parse(text)).getFirstSubcomponent("vtimezone") as ICAL.Component,
    );
    const shown = new Intl.DateTimeFormat("sv-SE", {
      dateStyle: "short",
      timeStyle: "short",
      timeZone: zone,
    });
    const moments = new Map<string, number[]>();
    const spans = [
      ["2027-03-12T00:00Z", "2027-03-30T00:00Z"],
      ["2027-10-29T00:00Z", "2027-11-09T00:00Z"],
    ].flatMap(([from = "", until = ""]) =>
      Array.from({ length: (minutes(until) - minutes(from)) / 15 }, (_, i) => minutes(from) + 15 * i),
    );
    for (const at of spans) {
      const local = `${shown.format(at * 60_000).replace(" ", "T")}:00`;
      moments.set(local, [...(moments.get(local) ?? []), at]);
    }
    const once = [...moments].filter(([, found]) => found.length === 1);
    expect(moments.size - once.length).toBe(4); // an hour twice in autumn
    for (const [local, [at]] of once) {
      const time = ICAL.Time.fromDateTimeString(local);
      time.zone = told;
      expect(time.toUnixTime() / 60, local).toBe(at);
    }
  });
});

describe("text", () => {
  const odd = "Café “Zur Lupe”; 2:1, no\\yes\r\nsecond line\u0007\n\n✓ 漢字 🪑".repeat(7);
  test("what is folded and escaped comes back whole, and nothing of it breaks a rule", () => {
    const text = written("Europe/Berlin", [
      { ...event("a;b,c", "2026-10-05T16:00:00Z", "2026-10-05T19:00:00Z"), description: odd, summary: odd },
    ]);
    const [found] = readBack(text);
    expect(found?.description).toBe(odd.replaceAll("\r\n", "\n").replaceAll("\u0007", ""));
    expect(found?.uid).toBe("a;b,c");
    expect(Math.max(...text.split("\r\n").map((line) => Buffer.byteLength(line)))).toBe(75);
  });
  test("any text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 120 }), (description) => {
        const base = event("a", "2026-10-05T16:00:00Z", "2026-10-05T19:00:00Z");
        written("Europe/Berlin", [{ ...base, summary: description, description }]);
      }),
      { numRuns: 50 },
    );
  });
});

test("an evening has its id, revision, stamp and a reminder half an hour before", () => {
  const text = written(
    "Europe/Berlin",
    [event("p-evening-1", "2026-10-05T16:00:00Z", "2026-10-05T19:00:00Z")],
    3,
  );
  expect(text).toContain("UID:p-evening-1\r\nDTSTAMP:20261129T060000Z\r\nSEQUENCE:3\r\n");
  expect(text).toContain("DTSTART;TZID=Europe/Berlin:20261005T180000\r\n");
  const calendar = new ICAL.Component(ICAL.parse(text));
  const alarm = calendar.getFirstSubcomponent("vevent")?.getFirstSubcomponent("valarm");
  expect(alarm?.getFirstPropertyValue("trigger")?.toString()).toBe("-PT30M");
});

test("a whole day ends with the next, and what fell away is cancelled and rings no more", () => {
  const day = {
    ...event("a", "2026-10-05T16:00:00Z", "2026-10-05T19:00:00Z"),
    time: { day: calendarDay("2026-12-31") },
  };
  const gone = { ...event("b", "2026-10-05T16:00:00Z", "2026-10-05T19:00:00Z"), cancelled: true };
  const text = written("Europe/Berlin", [day, gone], 1);
  expect(text).toContain("DTSTART;VALUE=DATE:20261231\r\nDTEND;VALUE=DATE:20270101\r\n");
  expect(text).toContain("STATUS:CANCELLED");
  expect(text).not.toContain("VALARM");
});

test("what was written is read again, whole; what Lacbench did not write is not", () => {
  const events = [
    {
      ...event("a", "2026-10-25T00:15:00Z", "2026-10-25T01:15:00Z"),
      description: "1; 2, 3\\n\n4 ✓".repeat(20),
    },
    {
      ...event("b", "2026-10-25T00:15:00Z", "2026-10-25T01:15:00Z"),
      time: { day: calendarDay("2026-12-31") },
    },
    { ...event("c", "2026-10-25T17:00:00Z", "2026-10-25T17:00:00Z"), cancelled: true },
  ];
  const text = written("Europe/Berlin", events, 4);
  expect(calendarEvents(text)).toEqual({ sequence: 4, events });
  for (const other of ["", "{}", text.replace("Lacbench//EN", "Somebody//EN"), text.replaceAll("\r", "")])
    expect(calendarEvents(other)).toBeUndefined();
});

test.each([
  ["zone", { zone: "Europe/Nowhere" }],
  ["events", { events: [] }],
])("%s is refused by name", (field, change) => {
  const events = [event("a", "2026-10-05T16:00:00Z", "2026-10-05T19:00:00Z")];
  const file = { zone: "Europe/Berlin", stamp: "2026-11-29T06:00:00Z", sequence: 0, events, ...change };
  expect(() => calendarFile(file)).toThrow(field);
});
