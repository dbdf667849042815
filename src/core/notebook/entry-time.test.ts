import { expect, test } from "vitest";
import type { KnownTo, NotebookEntry } from "./entry.ts";
import { hasAnHour, isToTheHour, isToTheMinute, latestMs } from "./entry-time.ts";

const entry = (happened: string, happenedKnownTo: KnownTo, recorded: string, remembered?: boolean) =>
  ({ happened, happenedKnownTo, recorded, remembered }) as NotebookEntry; // what is read of it here

const evening = "2026-10-14T17:30:00.000Z";
const noon = "2026-10-14T12:00:00.000Z";
const morning = "2026-10-15T06:00:00.000Z";

test("only what was written at the bench, or off a clock, counts by the minute; a memory never does", () => {
  expect(isToTheMinute(entry(evening, "minute", evening))).toBe(true);
  expect(isToTheMinute(entry(evening, "minute", morning, true))).toBe(false);
  expect(isToTheMinute(entry(evening, "hour", evening))).toBe(false);
  expect(isToTheHour(entry(evening, "hour", evening))).toBe(true);
  expect(isToTheHour(entry(evening, "hour", morning, true))).toBe(false);
  expect(isToTheHour(entry(noon, "day", morning))).toBe(false);
  expect(hasAnHour(entry(evening, "hour", morning, true))).toBe(true);
  expect(hasAnHour(entry(noon, "day", morning, true))).toBe(false);
});

test("the latest it may have been: half an hour after an about, the end of a day, never after it was written", () => {
  const at = (one: NotebookEntry) => new Date(latestMs(one)).toISOString();
  expect(at(entry(evening, "minute", morning, true))).toBe(evening);
  expect(at(entry(evening, "hour", morning, true))).toBe("2026-10-14T18:00:00.000Z");
  expect(at(entry(noon, "day", morning, true))).toBe("2026-10-15T00:00:00.000Z");
  expect(at(entry(noon, "day", "2026-10-14T19:00:00.000Z", true))).toBe("2026-10-14T19:00:00.000Z");
  expect(at(entry(evening, "hour", "2026-10-14T17:00:00.000Z"))).toBe(evening); // a clock that ran behind
});
