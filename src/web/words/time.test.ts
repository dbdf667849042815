import { expect, test } from "vitest";
import { agoInWords, clock, dayInWords, dayOf, happenedInWords, lengthInWords, whenInWords } from "./time.ts";

// Berlin is UTC+2 until Sunday 25 October 2026, 03:00 local, and UTC+1 after (EU summer time rule).
const zone = "Europe/Berlin";
test("clock and day follow the zone across the change of clocks", () => {
  expect(clock("2026-10-14T17:42:00Z", zone)).toBe("19:42");
  expect(clock("2026-10-26T17:42:00Z", zone)).toBe("18:42");
  expect(dayOf("2026-10-14T22:30:00Z", zone)).toBe("2026-10-15");
  expect(clock("2026-10-14T22:05:00Z", zone)).toBe("00:05");
});

test("days are named as one says them", () => {
  expect(dayInWords("2026-10-14T17:42:00Z", zone, "2026-10-20T08:00:00Z")).toBe("Wed 14 Oct");
  expect(dayInWords("2025-09-02T17:42:00Z", zone, "2026-10-20T08:00:00Z")).toBe("Tue 2 Sep 2025");
  expect(whenInWords("2026-10-14T18:25:00Z", zone, "2026-10-14T17:42:00Z")).toBe("20:25");
  expect(whenInWords("2026-10-15T06:10:00Z", zone, "2026-10-14T17:42:00Z")).toBe("tomorrow 08:10");
  expect(whenInWords("2026-10-13T06:10:00Z", zone, "2026-10-14T17:42:00Z")).toBe("yesterday 08:10");
  expect(whenInWords("2026-10-17T16:00:00Z", zone, "2026-10-14T17:42:00Z")).toBe("Sat 17 Oct, 18:00");
});

test("a time is said no better than it is known", () => {
  const said = (happenedKnownTo: string, remembered?: boolean) =>
    happenedInWords(
      { happened: "2026-10-13T17:30:00Z", happenedKnownTo, remembered },
      zone,
      "2026-10-14T17:42:00Z",
    );
  expect(said("minute")).toBe("yesterday 19:30");
  expect(said("hour", true)).toBe("yesterday about 19:30 (remembered)");
  expect(said("day", true)).toBe("yesterday (remembered)");
  expect(said("unknown")).toBe("at a time not known");
});

test("lengths", () => {
  expect([0.2, 1, 40, 60, 200, 2880].map(lengthInWords)).toEqual([
    "less than a minute",
    "1 minute",
    "40 minutes",
    "1 h",
    "3 h 20 min",
    "2 days",
  ]);
});

test.each([
  ["2026-10-14", "today"],
  ["2026-10-13", "yesterday"],
  ["2026-09-24", "20 days ago"],
  ["2026-09-02", "6 weeks ago"],
  ["2026-04-14", "6 months ago"],
  ["2025-01-14", "21 months ago"],
  ["2024-10-13", "2 years ago"],
  ["2023-10-14", "3 years ago"],
])("%s was %s on 14 October 2026", (day, said) => {
  expect(agoInWords(day, "2026-10-14")).toBe(said);
});
