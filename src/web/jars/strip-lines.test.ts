import { expect, test } from "vitest";
import type { WatchedJarView } from "../../core/views/ready.ts";
import { lineOf, stripScale } from "./strip-lines.ts";

const jar = (hours: readonly number[], notYetH: number, doneByH: number | null): WatchedJarView => ({
  id: "j",
  code: "L1",
  mixedAt: "2026-10-01T08:00:00Z",
  looks: hours.map((h, i) => ({
    entry: String(i),
    at: "",
    hours: h,
    undissolved: doneByH !== null && h >= doneByH ? "none" : "some",
    share: null,
    clarity: null,
    waxSettled: false,
  })),
  notYetH,
  doneByH,
  lookAgainAt: null,
});

test("rings before, a box from the last ring to the first dot, a dot when ready", () => {
  expect(lineOf(jar([1, 3, 6, 9, 24], 6, 9))).toMatchObject({ notYet: [1, 3, 6], ready: 9, box: [6, 9] });
});

test("never ready has no box and no dot", () => {
  expect(lineOf(jar([1, 24], 24, null))).toMatchObject({ notYet: [1, 24], ready: null, box: null });
});

test("the scale holds every look with four or five marks", () => {
  const group = {
    key: "",
    resins: "",
    solvents: "",
    medianH: null,
    intervalH: null,
    oneJar: true,
    steps: [],
  };
  for (const most of [2, 9, 23.6, 40, 300]) {
    const { until, marks } = stripScale({
      groups: [{ ...group, jars: [jar([most], most, null)] }],
      scale: null,
      model: "weibull",
    });
    expect(until).toBeGreaterThanOrEqual(most);
    expect(marks.length).toBeLessThanOrEqual(6);
  }
});
