import ICAL from "ical.js";
import { expect, test } from "vitest";
import { run } from "../../../test/run-calculation.ts";
import { calendarFaults } from "../calendar-file/calendar-faults.ts";
import { bytesOfText } from "../calendar-file/utf8.ts";
import { calendarFile } from "../calendar-file/write-calendar.ts";
import type { AgendaInput } from "./agenda-input.ts";
import { agendaSessions } from "./agenda-sessions.ts";

const hands = (task: string, minutes: number) => ({ task, minutes, hands: true });
const sessionsOf = (agenda: AgendaInput) =>
  agendaSessions(agenda, run("schedule", agenda).starts as Record<string, string>);
const instant = (minutes: number): string => new Date(minutes * 60_000).toISOString().slice(0, 16);

// By hand: 70 minutes, 15 to wait and 20 more are 105 minutes of real time from the first moment, whatever the clocks do.
// Directive 2000/84/EC: Berlin changes at 1:00 UTC. 15 U.S.C. 260a: New York at 2:00 local time, 6:00 and 7:00 UTC.
test.each([
  ["Europe/Berlin", "2026-10-25T01:30", "2026-10-24T23:30", "2026-10-25T01:15"],
  ["Europe/Berlin", "2027-03-28T01:30", "2027-03-28T00:30", "2027-03-28T02:15"],
  ["America/New_York", "2026-11-01T00:30", "2026-11-01T04:30", "2026-11-01T06:15"],
  ["America/New_York", "2026-11-01T01:30-05:00", "2026-11-01T06:30", "2026-11-01T08:15"],
  ["America/New_York", "2027-03-14T01:30", "2027-03-14T06:30", "2027-03-14T08:15"],
])(
  "%s, a night from %s: %s to %s in UTC, in the plan and as ical.js reads its calendar",
  (zone, opens, from, until) => {
    const [session] = sessionsOf({
      tasks: [hands("seal", 70), hands("coat", 20)],
      waits: [{ from: "seal", to: "coat", leastMinutes: 15 }],
      windows: [[opens, `${opens.slice(0, 10)}T05:30`]],
      zone,
    }).sessions;
    expect([session?.from, session?.until].map((m) => instant(m ?? 0))).toEqual([from, until]);
    const time = { from: session?.from ?? 0, until: session?.until ?? 0 };
    const event = { uid: "s", summary: "", description: "", time };
    const text = calendarFile({ zone, stamp: "2026-10-01T06:00:00Z", sequence: 0, events: [event] });
    expect(calendarFaults(bytesOfText(text))).toEqual([]);
    const calendar = new ICAL.Component(ICAL.parse(text));
    const told = new ICAL.Timezone(calendar.getFirstSubcomponent("vtimezone") as ICAL.Component);
    const { startDate, endDate } = new ICAL.Event(calendar.getFirstSubcomponent("vevent") ?? undefined);
    const read = [startDate, endDate].map((at) => {
      if (at.zone.tzid !== "UTC") at.zone = told;
      return instant(at.toUnixTime() / 60);
    });
    expect(read).toEqual([from, until]);
  },
);

test("each window that is worked in is a session; what needs no hands is in none", () => {
  const evening = (day: string): [string, string] => [`${day}T18:00`, `${day}T21:00`];
  const found = sessionsOf({
    tasks: [hands("b", 30), { task: "dries", minutes: 600, hands: false }, hands("a", 30)],
    waits: [
      { from: "a", to: "dries", leastMinutes: 0, mostMinutes: 0 },
      { from: "dries", to: "b", leastMinutes: 0 },
    ],
    windows: [evening("2026-10-07"), evening("2026-10-05"), evening("2026-10-06")],
    zone: "UTC",
  });
  expect(found.sessions.map((s) => [instant(s.from), s.tasks.map((t) => t.task)])).toEqual([
    ["2026-10-05T18:00", ["a"]],
    ["2026-10-06T18:00", ["b"]],
  ]);
  expect(found.byThemselves.map((t) => [t.task, instant(t.until)])).toEqual([["dries", "2026-10-06T04:30"]]);
});

test("what was done before, outside the evenings that are left, is still a session of its day", () => {
  const found = sessionsOf({
    tasks: [hands("a", 30), hands("b", 30), hands("c", 30)],
    windows: [["2026-10-06T18:00", "2026-10-06T21:00"]],
    zone: "Europe/Berlin",
    replan: {
      now: "2026-10-05T23:00",
      starts: { c: "2026-10-06T18:00" },
      done: { a: "2026-10-05T19:10", b: "2026-10-05T20:00" },
    },
  });
  expect(found.sessions.map((s) => [instant(s.from), instant(s.until), s.tasks.map((t) => t.task)])).toEqual([
    ["2026-10-05T17:10", "2026-10-05T18:30", ["a", "b"]],
    ["2026-10-06T16:00", "2026-10-06T16:30", ["c"]],
  ]);
});
