import { expect, test } from "vitest";
import { dueOnClock } from "./agenda-due.ts";
import type { AgendaInput } from "./agenda-input.ts";

const agenda = (
  zone: string,
  evenings: [string, string][],
  over: Partial<AgendaInput> = {},
): AgendaInput => ({
  tasks: [
    { task: "coat 1", minutes: 20, hands: true },
    { task: "coat 2", minutes: 20, hands: true },
  ],
  waits: [{ from: "coat 1", to: "coat 2", leastMinutes: 120 }],
  windows: evenings,
  zone,
  ...over,
});
const starts = (first: string, second: string) => ({ "coat 1": first, "coat 2": second });

// By hand: 20 minutes, 120 to wait and 20 more are 160; from 18:00 that is 20:40, forty minutes after the end.
test("a coat comes due at 20:20, after the evening has ended; begun at 17:20 it goes on that evening", () => {
  const given = agenda("Europe/Berlin", [
    ["2026-10-05T18:00", "2026-10-05T20:00"],
    ["2026-10-06T18:00", "2026-10-06T20:00"],
  ]);
  const plan = starts("2026-10-05T18:00", "2026-10-06T18:00");
  const due = {
    from: "2026-10-05T18:00",
    until: "2026-10-05T20:00",
    tasks: ["coat 2"],
    firstDue: "2026-10-05T20:20",
    lastDue: "2026-10-05T20:20",
  };
  expect(dueOnClock(given, plan, "2026-10-05T08:00")).toEqual([{ ...due, begin: "2026-10-05T17:20" }]);
  expect(dueOnClock(given, plan, "2026-10-05T17:30")).toEqual([{ ...due, begin: null }]);
  // The first coat may not go on before 17:30, so that no beginning helps.
  const [first, second] = given.tasks;
  const late = { ...given, tasks: [{ ...first, notBefore: "2026-10-05T17:30" }, second] } as AgendaInput;
  expect(dueOnClock(late, plan, "2026-10-05T08:00")).toEqual([{ ...due, begin: null }]);
});

// Directive 2000/84/EC: Berlin changes at 1:00 UTC; 15 U.S.C. 260a: New York at 2:00 local time, 6:00 and 7:00 UTC. By hand: 4:00
// on the wall is 3:00, 2:00, 9:00 and 8:00 UTC, and 160 minutes before it 0:20, 23:20, 6:20 and 5:20 UTC.
test.each([
  ["Europe/Berlin", "2026-10-25", "2026-10-25T02:20"],
  ["Europe/Berlin", "2027-03-28", "2027-03-28T00:20"],
  ["America/New_York", "2026-11-01", "2026-11-01T01:20-05:00"],
  ["America/New_York", "2027-03-14", "2027-03-14T00:20"],
])("%s, the night of %s: waits are real time, and the beginning is %s", (zone, day, begin) => {
  const night: [string, string] = [`${day}T03:30`, `${day}T04:00`];
  const next: [string, string] = [`${day}T18:00`, `${day}T20:00`];
  const [due] = dueOnClock(
    agenda(zone, [night, next]),
    starts(`${day}T03:30`, `${day}T18:00`),
    `${day}T00:00`,
  );
  expect(due?.firstDue).toBe(`${day}T05:50`);
  expect(due?.begin).toBe(begin);
});
