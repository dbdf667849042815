import { expect, test } from "vitest";
import { run } from "../../../test/run-calculation.ts";

// burma14 of TSPLIB (G. Reinelt, ORSA J. Comput. 3 (1991) 376): 14 towns by latitude and longitude in degrees and minutes, the
// shortest round trip is 3323 by its list of optimal solutions. Coordinates from memory: another one gives another length.
const towns = [
  [16.47, 96.1],
  [16.47, 94.44],
  [20.09, 92.54],
  [22.39, 93.37],
  [25.23, 97.24],
  [22.0, 96.05],
  [20.47, 97.02],
  [17.2, 96.29],
  [16.3, 97.38],
  [14.05, 98.12],
  [16.53, 97.38],
  [21.52, 95.59],
  [19.41, 97.13],
  [20.09, 94.55],
] as const;
const shortestRoundTrip = 3323;

/** TSPLIB's distance on the globe, with the π and the radius that it prescribes. */
function distance(a: number, b: number): number {
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the published lengths were made with this value
  const radians = (x: number): number => (3.141592 * (Math.trunc(x) + (5 * (x - Math.trunc(x))) / 3)) / 180;
  const [latitude, longitude] = (towns[a] ?? [0, 0]).map(radians) as [number, number];
  const [latitude2, longitude2] = (towns[b] ?? [0, 0]).map(radians) as [number, number];
  const q1 = Math.cos(longitude - longitude2);
  const q2 = Math.cos(latitude - latitude2);
  const q3 = Math.cos(latitude + latitude2);
  return Math.trunc(6378.388 * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
}

test("set-ups as far from each other as 14 towns are changed along the shortest round trip", () => {
  const n = towns.length;
  const kit = (town: number): string => `kit ${town % n}`;
  const places = towns.map((_, town) => town);
  const between = places.flatMap((a) =>
    places.flatMap((b) => (a === b ? [] : [{ from: kit(a), to: kit(b), minutes: distance(a, b) }])),
  );
  // the first comes before all others, and once more after them
  const tasks = [...places, n].map((town) => ({
    task: `${town}`,
    minutes: 1,
    hands: true,
    setup: kit(town),
  }));
  const waits = places.flatMap((town) => [
    ...(town === 0 ? [] : [{ from: "0", to: `${town}`, leastMinutes: 0 }]),
    { from: `${town}`, to: `${n}`, leastMinutes: 0 },
  ]);
  const setups = { anyOther: Math.max(...between.map((b) => b.minutes)), between };
  const windows = [["2026-10-05T00:00", "2026-10-20T00:00"]];
  const found = run("schedule", { tasks, waits, windows, zone: "UTC", setups, limitMs: 10_000 });
  const minutes = (clock: unknown): number => (Date.parse(`${clock}Z`) - Date.UTC(2026, 9, 5)) / 60_000;
  expect(minutes(found.finish) - tasks.length).toBe(shortestRoundTrip);
  expect(found.provenBest).toBe("all goals");
});
