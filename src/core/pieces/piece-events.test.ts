import ICAL from "ical.js";
import { describe, expect, test } from "vitest";
import { run } from "../../../test/run-calculation.ts";
import { calendarFaults } from "../calendar-file/calendar-faults.ts";
import { fallenAway } from "../calendar-file/fallen-away.ts";
import { bytesOfText } from "../calendar-file/utf8.ts";
import { type CalendarEvent, calendarFile } from "../calendar-file/write-calendar.ts";
import { type PiecePlanInput, type PiecePlanOutput, scheduleFromPlan } from "../registry/piece-schedule.ts";
import { shopClock } from "../schedule/shop-clock.ts";
import { pieceEvents } from "./piece-events.ts";
import { type DatedStep, plannedEvenings } from "./planned-evenings.ts";

const minutes = (instant: string): number => Date.parse(instant) / 60_000;
const says = {
  evening: ({ steps }: { steps: readonly { step: DatedStep; coat: number | undefined }[] }) => ({
    summary: steps.map(({ step, coat }) => `${step.what} ${coat ?? ""}`.trim()).join(", "),
    description: "",
  }),
  day: (step: DatedStep) => ({ summary: step.what, description: "" }),
};

/** A square metre, padded; nights from 1:30 to 3:30. */
function stepsOn(days: readonly string[], coats = 2) {
  const input: PiecePlanInput = {
    areaM2: 1,
    method: "pad",
    coats,
    cutLbPerGal: 2,
    solvent: { alcohol: "ethanol", volumeFraction: 0.95 },
    windows: days.map((day) => [`${day}T01:30`, `${day}T03:30`]),
  };
  return scheduleFromPlan(input, run("piece-plan", input) as PiecePlanOutput, {}).steps;
}

function moments(events: readonly CalendarEvent[], zone: string): string[] {
  const text = calendarFile({ zone, stamp: "2026-10-01T06:00:00Z", sequence: 0, events });
  expect(calendarFaults(bytesOfText(text))).toEqual([]);
  const calendar = new ICAL.Component(ICAL.parse(text));
  const told = new ICAL.Timezone(calendar.getFirstSubcomponent("vtimezone") as ICAL.Component);
  return calendar.getAllSubcomponents("vevent").map((found) => {
    const { startDate, endDate } = new ICAL.Event(found);
    if (startDate.isDate) return `${startDate} to ${endDate}`;
    const utc = [startDate, endDate].map((time) => {
      if (time.zone.tzid !== "UTC") time.zone = told;
      return new Date(time.toUnixTime() * 1000).toISOString().slice(0, 16);
    });
    return utc.join(" to ");
  });
}

describe("a night in which the clocks change, read by ical.js", () => {
  // By hand: 25 minutes of sanding at 1:30, 20 of coat 1 at 1:55, 15 to wait, 8 of de-nibbing at 2:30, 20 of coat 2 at 2:38, so
  // till 2:58. Berlin goes back at 1:00 UTC, after all of it; New York at 6:00 UTC, before the 2:30 that comes once.
  // In spring 2:30 comes as 3:30: a quarter of an hour after coat 1, as in any night.
  test.each([
    ["Europe/Berlin", "2026-10-25", "2026-10-24T23:30 to 2026-10-25T00:58"],
    ["Europe/Berlin", "2027-03-28", "2027-03-28T00:30 to 2027-03-28T01:58"],
    ["America/New_York", "2026-11-01", "2026-11-01T05:30 to 2026-11-01T07:58"],
    ["America/New_York", "2027-03-14", "2027-03-14T06:30 to 2027-03-14T07:58"],
  ])("%s, %s: %s", (zone, day, expected) => {
    const events = pieceEvents("p", stepsOn([day]), shopClock(zone), says);
    expect(moments(events, zone)[0]).toBe(expected);
  });

  test("steps keep their order and their waits where the clock skips the hour between them", () => {
    const step = (at: string) => ({ what: "coat", day: "2027-03-28", at, minutes: 10, leastWaitMinutes: 10 });
    const [night] = plannedEvenings([step("02:50"), step("03:10")], shopClock("Europe/Berlin"));
    expect(night?.steps.map((s) => s.from)).toEqual([
      minutes("2027-03-28T01:50Z"),
      minutes("2027-03-28T02:10Z"),
    ]);
  });
});

test("each evening is an event with an id of its own, and rubbing out a day", () => {
  const events = pieceEvents("p", stepsOn(["2026-10-05", "2026-10-06"], 3), shopClock("UTC"), says);
  expect(events.map((e) => [e.uid, e.summary])).toEqual([
    ["p-evening-1", "sand, coat 1, de-nib, coat 2"],
    ["p-evening-2", "coat 3"],
    ["p-day-1", "rub out"],
  ]);
  // two weeks after the last coat: common practice
  expect(moments(events, "UTC")[2]).toBe("2026-10-20 to 2026-10-21");
});

test("a plan that moved has the same ids; an evening that it has no more is cancelled", () => {
  const clock = shopClock("Europe/Berlin");
  const [before, after] = [stepsOn(["2026-10-05", "2026-10-06"], 3), stepsOn(["2026-10-12"])].map((steps) =>
    pieceEvents("p", steps, clock, says),
  ) as [CalendarEvent[], CalendarEvent[]];
  expect(after.map((e) => e.uid)).toEqual(["p-evening-1", "p-day-1"]);
  expect(fallenAway(after, before)).toEqual([{ ...before[1], cancelled: true }]);
  expect(fallenAway(before, after)).toEqual([]);
});

test("steps that have no evening are in no calendar", () => {
  const events = pieceEvents("p", stepsOn([]), shopClock("UTC"), says);
  expect(events).toEqual([]);
});
