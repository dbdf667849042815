import { expect, test } from "vitest";
import { projectFaults } from "./project-faults.ts";

const rules = {
  durations: [2, 3, 1],
  lags: [
    [0, 1, 4],
    [1, 0, -6],
  ] as const,
  capacities: [1],
  demands: [[1], [1], [1]],
};

test("a right schedule has no faults", () => {
  expect(projectFaults(rules, [0, 4, 2])).toEqual([]);
});

test.each([
  ["a least wait cut short", [0, 3, 7]],
  ["a most-wait overrun", [0, 7, 2]],
  ["two at once", [0, 4, 1]],
  ["two at once at the end", [0, 4, 6]],
  ["a start before the beginning", [-1, 4, 2]],
  ["half a unit", [0, 4.5, 2]],
  ["no number", [0, Number.NaN, 2]],
  ["a start too few", [0, 4]],
  ["a start too many", [0, 4, 2, 9]],
])("%s is found", (_, starts) => {
  expect(projectFaults(rules, starts)).not.toEqual([]);
});
