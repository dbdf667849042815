import { expect, test } from "vitest";
import { demoEntries } from "../demo/demo.ts";
import { Notebook } from "../notebook/notebook.ts";
import { planFaults } from "../plan-check/plan-faults.ts";
import { trialsAtBench } from "../views/bench.ts";
import { readAgenda } from "./agenda-input.ts";
import { scheduleAgenda } from "./schedule-agenda.ts";
import { trialAgenda } from "./trial-agenda.ts";

const zone = "Europe/Berlin";
const now = "2026-10-31T08:00:00.000Z";
const entries = demoEntries({ seed: "1", now, zone });
const notebook = new Notebook(entries[0]?.entry.notebook ?? "");
notebook.add(entries);
const trial = trialsAtBench(notebook)[0]?.id ?? "";
const days = ["01", "02", "03", "04", "05"].map((day) => `2026-11-${day}`);
const time = {
  windows: days.map((day) => [`${day}T18:00`, `${day}T21:00`] as const),
  zone,
  minutesPerPatch: 3,
  changeMinutes: 10,
  wallOf: (ms: number) => new Date(ms + 3_600_000).toISOString().slice(0, 16), // Berlin in winter
};

// The demo's running trial: six padded coats on two offcuts from four jars, two of them on (its own description).
test("the coats that are left, one task a jar and coat; an hour between them after padding (common practice)", () => {
  const found = trialAgenda(notebook, trial, null, time);
  const patches = trialsAtBench(notebook)[0]?.patches.length ?? 0;
  expect(patches).toBeGreaterThan(0);
  expect(new Set(found?.coats.map((c) => c.coat))).toEqual(new Set([3, 4, 5, 6]));
  for (const coat of [3, 4, 5, 6]) {
    const of = found?.coats.filter((c) => c.coat === coat) ?? [];
    expect(of.reduce((sum, c) => sum + c.patches, 0)).toBe(patches);
  }
  expect(new Set(found?.input.waits?.map((w) => w.leastMinutes))).toEqual(new Set([60]));
  expect(JSON.stringify(found)).not.toContain(trialsAtBench(notebook)[0]?.patches[0]?.patch ?? "?");
});

test("the plan of it passes the independent check, and takes the two evenings that it must by hand", () => {
  const found = trialAgenda(notebook, trial, null, time);
  if (found === null) throw new Error("there is something left");
  const { plan, provenBest } = scheduleAgenda(found.input, { steps: 500_000 });
  const { agenda, origin, clock } = readAgenda(found.input);
  const starts = Object.fromEntries(
    Object.entries(plan?.starts ?? {}).map(([task, at]) => [task, clock.minutes(at, "starts") - origin]),
  );
  const faults = planFaults(
    {
      tasks: agenda.tasks.map((task, k) => ({ ...task, kit: found.input.tasks[k]?.setup ?? "" })),
      waits: agenda.waits.map((w) => ({ ...w })),
      capacity: agenda.capacity,
      windows: agenda.windows,
      changes: { others: time.changeMinutes, between: [] },
    },
    { starts },
  );
  expect(faults).toEqual([]);
  expect(provenBest).toBe("all goals");
  // Work alone: four coats of all jars with their changes are more than one evening of 180 minutes and less than two.
  const perCoat = found.coats.filter((c) => c.coat === 3);
  const jars = perCoat.length;
  const once = perCoat.reduce((sum, c) => sum + c.minutes, 0) + (jars - 1) * time.changeMinutes;
  expect(once * 4).toBeGreaterThan(180);
  expect(once * 4).toBeLessThan(2 * 180);
  expect(plan?.sessions).toBe(2);
});

test("nothing is left of a trial that is not at the bench", () => {
  expect(trialAgenda(notebook, "018f0000-0000-7000-8000-000000000000", null, time)).toBeNull();
});
