import { expect, test } from "vitest";
import { calendarDay } from "./calendar-day.ts";
import { windowsFrom } from "./free-evenings.ts";

// 2026-10-05 is a Monday (ISO 8601 calendar).
test("weekends are Saturday and Sunday", () => {
  const windows = windowsFrom(calendarDay("2026-10-05"), "weekends", "10:00", "12:00");
  expect(windows.slice(0, 3).map(([from]) => from)).toEqual([
    "2026-10-10T10:00",
    "2026-10-11T10:00",
    "2026-10-17T10:00",
  ]);
});
