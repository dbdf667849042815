import { expect, test } from "vitest";
import { stripHours, stripRows } from "./strip-rows.ts";

const steps = [
  { step: "1", what: "sand", day: "2026-10-05", at: "18:00", minutes: 25, leastWaitMinutes: 0 },
  { step: "2", what: "coat", day: "2026-10-05", at: "18:25", minutes: 20, leastWaitMinutes: 120 },
  { step: "3", what: "coat", day: "2026-10-06", at: "18:00", minutes: 20, leastWaitMinutes: 0 },
  { step: "4", what: "cure", day: "2026-10-06", minutes: 0 },
] as const;

test("a row an evening, the wait drawn behind the hands, whole hours at both ends", () => {
  const rows = stripRows(steps);
  expect(rows.map((row) => [row.day, row.blocks.length])).toEqual([
    ["2026-10-05", 2],
    ["2026-10-06", 1],
  ]);
  expect(rows[0]?.blocks.map((one) => one.level)).toEqual([0, 0]); // the sanding waits for nothing
  expect(rows[0]?.blocks[1]).toMatchObject({ from: 1105, until: 1125, dryUntil: 1245 });
  // 18:45 on one day to 18:00 on the next
  expect(rows.map((row) => row.gapHours)).toEqual([23.25, null]);
  expect(stripHours(rows)).toEqual({ from: 18, until: 21 });
});
