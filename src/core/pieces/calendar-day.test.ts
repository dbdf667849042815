import { expect, test } from "vitest";
import { calendarDay, dayFromNumber, dayNumber, daysLater, weekday } from "./calendar-day.ts";

// The outside source is the platform's own calendar (ECMA-262, time values in UTC).
test("day numbers agree with the platform's calendar over four centuries, and invert", () => {
  for (let number = -80_000; number < 80_000; number += 37) {
    const day = dayFromNumber(number);
    expect(day).toBe(new Date(number * 86_400_000).toISOString().slice(0, 10));
    expect(dayNumber(day)).toBe(number);
    expect((weekday(day) + 1) % 7).toBe(new Date(number * 86_400_000).getUTCDay());
  }
});

test("a leap day is a day, and a day later it is March", () => {
  expect(daysLater(calendarDay("2028-02-29"), 1)).toBe("2028-03-01");
  expect(daysLater(calendarDay("2026-12-31"), 1)).toBe("2027-01-01");
});

test.each(["2026-02-30", "2026-13-01", "2026-00-10", "26-01-01", "2026-1-1", "tomorrow", ""])(
  "%s is refused by name",
  (text) => {
    expect(() => calendarDay(text, "wanted")).toThrow(/wanted/);
  },
);
