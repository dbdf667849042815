import ICAL from "ical.js";
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { calendarFaults } from "../../../core/calendar-file/calendar-faults.ts";
import { bytesOfText } from "../../../core/calendar-file/utf8.ts";
import { demoEntries } from "../../../core/demo/demo.ts";
import { Notebook } from "../../../core/notebook/notebook.ts";
import type { ShopWindow } from "../../../core/pieces/shop-windows.ts";
import { scheduleAgenda } from "../../../core/registry/schedule-agenda.ts";
import { trialAgenda } from "../../../core/registry/trial-agenda.ts";
import { eveningsToKeep } from "../../../core/registry/trial-events.ts";
import { trialsAtBench } from "../../../core/views/bench.ts";
import type { TrialPlans } from "../../../core/views/trial-plans.ts";
import { takenToCalendar } from "./calendar.ts";
import { plannedTrial } from "./planned.ts";

const none: TrialPlans = { changes: 0, evenings: [], now: [] };

/** The demo's running trial, four coats left from four jars, planned into these windows as of an instant. */
function planned(zone: string, now: string, windows: readonly ShopWindow[]) {
  const entries = demoEntries({ seed: "1", now: "2026-10-20T08:00:00.000Z", zone });
  const book = new Notebook(entries[0]?.entry.notebook ?? "");
  book.add(entries);
  const [trial] = trialsAtBench(book);
  const wallOf = (ms: number) =>
    Temporal.Instant.fromEpochMilliseconds(ms)
      .toZonedDateTimeISO(zone)
      .toPlainDateTime()
      .toString({ smallestUnit: "minute" });
  const agenda = trialAgenda(book, trial?.id ?? "", null, {
    ...{ windows, zone, minutesPerPatch: 3, changeMinutes: 10, wallOf },
  });
  const plan = agenda === null ? null : scheduleAgenda(agenda.input, { steps: 200_000 }).plan;
  if (agenda === null || plan === null) throw new Error("there is a plan");
  const found = plannedTrial(agenda, plan);
  const take = (plans: TrialPlans) =>
    takenToCalendar({ id: "t", question: "Which; alcohol?" }, found, plans, { zone, stamp: now });
  return { found, take, kept: eveningsToKeep(found.sessions, none, Date.parse(now) / 60_000) };
}

/** What another author's reader makes of it. */
function read(text: string) {
  expect(calendarFaults(bytesOfText(text))).toEqual([]);
  const calendar = new ICAL.Component(ICAL.parse(text));
  const zone = new ICAL.Timezone(calendar.getFirstSubcomponent("vtimezone") as ICAL.Component);
  return calendar.getAllSubcomponents("vevent").map((found) => {
    const { uid, summary, description, sequence, startDate, endDate } = new ICAL.Event(found);
    const [start, until] = [startDate, endDate].map((at) => {
      if (at.zone.tzid !== "UTC") at.zone = zone;
      return new Date(at.toUnixTime() * 1000).toISOString().slice(0, 16);
    });
    const status = found.getFirstPropertyValue("status");
    return {
      uid,
      summary,
      description,
      sequence,
      start,
      until,
      wall: String(startDate),
      status,
      alarms: found.getAllSubcomponents("valarm").length,
    };
  });
}

const evenings = (days: readonly string[], from = "18:00", until = "19:00") =>
  days.map((day) => [`${day}T${from}`, `${day}T${until}`] as const);

// Directive 2000/84/EC and 15 U.S.C. 260a; by hand: 18:00 is 16:00 and 17:00 UTC in Berlin before and after 25 October 2026, 22:00 and
// 23:00 UTC in New York before and after 1 November 2026.
test.each([
  [
    "Europe/Berlin",
    ["2026-10-23", "2026-10-24", "2026-10-25", "2026-10-26"],
    ["16:00", "16:00", "17:00", "17:00"],
  ],
  [
    "America/New_York",
    ["2026-10-30", "2026-10-31", "2026-11-01", "2026-11-02"],
    ["22:00", "22:00", "23:00", "23:00"],
  ],
])(
  "%s: an evening begins at 18:00 by the clock on either side of the change, with an alarm and an id of its own",
  (zone, days, utc) => {
    const events = read(planned(zone, `${days[0]}T08:00:00.000Z`, evenings(days)).take(none).text);
    expect(events.map((e) => e.wall.slice(0, 16))).toEqual(days.map((day) => `${day}T18:00`));
    expect(events.map((e) => e.start)).toEqual(days.map((day, i) => `${day}T${utc[i]}`));
    expect(events.map((e) => [e.uid, e.sequence, e.status, e.alarms])).toEqual(
      days.map((_, i) => [`t-evening-${i + 1}`, 0, "CONFIRMED", 1]),
    );
    expect(events[0]?.summary).toBe("Which; alcohol?: coat 3");
    expect(events[0]?.description).toContain("two patches, 6 minutes at the bench, then wait 1 h");
    expect(events[0]?.description).toContain("The supplier’s safety data sheet and local code come first.");
  },
);

test("taken again, a plan that moved moves the same events; one that is over stays, and one too many is cancelled", () => {
  const days = ["2026-10-23", "2026-10-24", "2026-10-26", "2026-10-27"];
  const first = planned("Europe/Berlin", "2026-10-23T08:00:00.000Z", evenings(days));
  expect(first.take(none).isNew).toBe(true);
  const plans: TrialPlans = { changes: 0, evenings: [first.kept], now: first.kept };
  expect(first.take(plans).isNew).toBe(false);
  expect(read(first.take(plans).text).map((e) => e.sequence)).toEqual([0, 0, 0, 0]);
  // The first evening is over and nothing was written down; the rest goes into two longer ones.
  const later = planned(
    "Europe/Berlin",
    "2026-10-24T08:00:00.000Z",
    evenings(["2026-10-25", "2026-10-28"], "18:00", "21:30"),
  );
  const again = later.take(plans);
  expect(again.isNew).toBe(true);
  expect(read(again.text).map((e) => [e.uid, e.sequence, e.status, e.start])).toEqual([
    ["t-evening-2", 1, "CONFIRMED", "2026-10-25T17:00"],
    ["t-evening-3", 1, "CONFIRMED", "2026-10-28T17:00"],
    ["t-evening-4", 1, "CANCELLED", "2026-10-27T17:00"],
  ]);
});
