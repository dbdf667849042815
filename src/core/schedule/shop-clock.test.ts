import { expect, test } from "vitest";
import { shopClock } from "./shop-clock.ts";

const minutes = (instant: string): number => Date.parse(instant) / 60_000;

// Directive 2000/84/EC and 15 U.S.C. 260a: when the clocks of Berlin and New York change.
test.each([
  ["Europe/Berlin", "2026-10-25T02:30", "2026-10-25T00:30Z"],
  ["Europe/Berlin", "2026-10-25T02:30+01:00", "2026-10-25T01:30Z"],
  ["Europe/Berlin", "2026-10-25T03:30", "2026-10-25T02:30Z"],
  ["Europe/Berlin", "2027-03-28T03:00", "2027-03-28T01:00Z"],
  ["America/New_York", "2026-11-01T01:30", "2026-11-01T05:30Z"],
  ["America/New_York", "2026-11-01T01:30-05:00", "2026-11-01T06:30Z"],
  ["America/New_York", "2027-03-14T03:30", "2027-03-14T07:30Z"],
])("%s %s is %s, and back", (zone, text, instant) => {
  const clock = shopClock(zone);
  expect(clock.minutes(text, "at")).toBe(minutes(instant));
  expect(clock.clock(minutes(instant))).toBe(text);
});

test.each([
  ["Europe/Berlin", "2027-03-28T02:30", "2027-03-28T01:30Z"],
  ["America/New_York", "2027-03-14T02:30", "2027-03-14T07:30Z"],
])("%s %s is skipped: refused, or taken as an hour later", (zone, text, instant) => {
  const clock = shopClock(zone);
  expect(() => clock.minutes(text, "at")).toThrow(/^at/);
  expect(clock.minutesPastSkip(text, "at")).toBe(minutes(instant));
});

test.each(["Europe/Berlin", "America/New_York", "Australia/Lord_Howe"])(
  "%s: every minute comes back",
  (zone) => {
    const clock = shopClock(zone);
    for (let at = minutes("2026-01-01T00:00Z"); at < minutes("2027-01-01T00:00Z"); at += 97)
      expect(clock.minutes(clock.clock(at), "at")).toBe(at);
  },
);

test.each(["2026-10-05", "2026-02-30T18:00", "2026-10-05T25:00", "2026-10-05T18:00+05:00", "soon"])(
  "%s is refused by name",
  (text) => {
    expect(() => shopClock("Europe/Berlin").minutes(text, "windows[0][0]")).toThrow(/windows\[0\]\[0\]/);
  },
);
