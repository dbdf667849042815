import { expect, test } from "vitest";
import type { Agenda } from "./agenda.ts";
import { earlySessions } from "./early-sessions.ts";
import { measured } from "./good-agenda.ts";
import { layAgenda } from "./lay-agenda.ts";

const task = (name: string, notBefore = 0) => ({
  task: name,
  minutes: 20,
  hands: true,
  needs: {},
  notBefore,
});
const agenda = (more: Partial<Agenda> = {}): Agenda => ({
  tasks: [task("seal"), task("coat"), task("next evening")],
  waits: [
    { from: "seal", to: "coat", leastMinutes: 60, mostMinutes: null },
    { from: "coat", to: "next evening", leastMinutes: 1300, mostMinutes: null },
  ],
  capacity: { person: 1 },
  windows: [
    [0, 180],
    [1440, 1620],
  ],
  ...more,
});
const begun = (of: Agenda, starts: number[]) => {
  const laid = layAgenda(of);
  const before = measured(laid, Int32Array.from(starts));
  const after = earlySessions(laid, before);
  expect(after.sessions).toBe(before.sessions);
  expect(after.idleMinutes).toBe(before.idleMinutes);
  expect(after.finish).toBeLessThanOrEqual(before.finish);
  return [...after.starts];
};

// Every start by hand.
test("each session begins with its window, or when what it waits for is over", () => {
  expect(begun(agenda(), [60, 160, 1500])).toEqual([0, 100, 1440]); // 120 + 1300 = 1420 is before it opens
  const long = agenda({
    waits: [{ from: "coat", to: "next evening", leastMinutes: 1400, mostMinutes: null }],
  });
  expect(begun(long, [60, 160, 1600])).toEqual([0, 100, 1520]); // 120 + 1400
});

test("a task that has a date holds its session", () => {
  expect(
    begun(agenda({ tasks: [task("seal"), task("coat", 150), task("next evening")] }), [60, 160, 1500]),
  ).toEqual([
    50,
    150,
    1470, // 170 + 1300
  ]);
});

test("a most-wait holds the session before it", () => {
  const tied = agenda({
    waits: [
      { from: "seal", to: "coat", leastMinutes: 60, mostMinutes: null },
      { from: "coat", to: "next evening", leastMinutes: 600, mostMinutes: 1300 },
    ],
  });
  expect(begun(tied, [60, 160, 1440])).toEqual([20, 120, 1440]); // 140 + 1300
});

test("where drying places are shared nothing is moved", () => {
  const shared = agenda({ capacity: { person: 1, place: 2 } });
  expect(begun(shared, [60, 160, 1500])).toEqual([60, 160, 1500]);
});
