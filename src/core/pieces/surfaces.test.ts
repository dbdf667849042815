import { describe, expect, test } from "vitest";
import type { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { problemFromDomain } from "../registry/problem.ts";
import { volumeFraction } from "../units.ts";
import { calendarDay, daysLater } from "./calendar-day.ts";
import { deliveryChance } from "./delivery.ts";
import type { FinishingStep } from "./finishing-step.ts";
import type { PieceToPlan } from "./piece-to-plan.ts";
import { planPiece } from "./plan.ts";
import type { PieceSurface } from "./surfaces.ts";

const first = calendarDay("2026-10-05");
const evenings = (n: number, until = 21 * 60) =>
  Array.from({ length: n }, (_, i) => ({
    day: daysLater(first, i),
    fromMinute: 18 * 60,
    untilMinute: until,
  }));
const liquid = { litresPerM2: 0.1, volumeSolids: volumeFraction(0.1), transfer: 1 };
const coat = (more: Partial<FinishingStep> = {}): FinishingStep => ({
  what: "coat",
  minutesPerM2: 30,
  leastWaitMinutes: 60,
  liquid,
  ...more,
});
/** Two square metres in two halves: half an hour each. */
const top: readonly PieceSurface[] = [
  { name: "underside", share: 0.5 },
  { name: "top", share: 0.5, turned: true },
];
const faces = top.map(({ name, share }) => ({ name, share }));
const chairs = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ name: `chair ${i + 1}`, share: 1 / count }));
const table: PieceToPlan = { areaM2: 2, steps: [coat({ times: 2 })], surfaces: top, evenings: evenings(5) };
const when = (change: Partial<PieceToPlan>) =>
  planPiece({ ...table, ...change }).steps.map(
    ({ what, surface, day, fromMinute, done }) =>
      `${what} ${surface ?? ""} ${done ? "done" : `${day?.slice(8)} ${fromMinute === null ? "" : fromMinute - 1080}`}`,
  );

// Every time by hand, in minutes after six.
describe("surfaces, by hand", () => {
  test("underside, then top: each waits until the other can be lain on", () => {
    expect(when({})).toEqual([
      "coat underside 05 0",
      "coat top 05 90", // 30 + 60
      "coat underside 06 0", // 120 + 60 = 180 is nine
      "coat top 06 90",
    ]);
  });
  test("turned sooner than coated again", () => {
    expect(when({ turnMinutes: 20 })).toEqual([
      "coat underside 05 0",
      "coat top 05 50",
      "coat underside 05 100", // turned onto the top at 80 + 20, its own hour over since 90
      "coat top 05 150",
    ]);
  });
  test("a second person does not help where the piece must be turned", () => {
    expect(when({ hands: 2 })).toEqual(when({}));
  });
  test("one face while the other dries; with two people, both at once", () => {
    expect(when({ surfaces: faces })).toEqual([
      "coat underside 05 0",
      "coat top 05 30",
      "coat underside 05 90",
      "coat top 05 120",
    ]);
    expect(when({ surfaces: faces, hands: 2 })).toEqual([
      "coat underside 05 0",
      "coat top 05 0",
      "coat underside 05 90",
      "coat top 05 90",
    ]);
  });
  test("four chairs, a quarter of an hour each, and room for two to dry", () => {
    const quarter = { surfaces: chairs(4), steps: [coat()] };
    expect(when(quarter).map((line) => line.slice(-2))).toEqual([" 0", "15", "30", "45"]);
    // the first is cleared away at 15 + 60, the second at 30 + 60
    expect(when({ ...quarter, dryingPlaces: 2 }).map((line) => line.slice(-2))).toEqual([
      " 0",
      "15",
      "75",
      "90",
    ]);
  });
  test("a thing that is turned lies in one place, however many of its sides are wet", () => {
    const given = { turnMinutes: 20, dryingPlaces: 1 };
    expect(when(given)).toEqual(when({ turnMinutes: 20 }));
  });
  test("a most wait holds for each: eight chairs are done one after the other where all at once would take too long", () => {
    const tied = coat({ minutesPerM2: 40, leastWaitMinutes: 30, mostWaitMinutes: 60 });
    const plan = planPiece({ ...table, steps: [tied, coat({ minutesPerM2: 40 })], surfaces: chairs(4) });
    expect(plan.unplaced).toBe(0);
    for (const { name } of chairs(4)) {
      const [one, two] = plan.steps.filter(({ surface }) => surface === name);
      const wait = (two?.fromMinute ?? 0) - (one?.fromMinute ?? 0) - 20;
      expect(two?.day).toBe(one?.day);
      expect(wait).toBeGreaterThanOrEqual(30);
      expect(wait).toBeLessThanOrEqual(60);
    }
  });
  test("liquid and minutes are shared out, the film is that of the whole", () => {
    const [parts, whole] = [planPiece(table), planPiece({ ...table, surfaces: [{ name: "all", share: 1 }] })];
    expect(parts.millilitresUsed).toBeCloseTo(whole.millilitresUsed, 9);
    expect(parts.steps.reduce((sum, step) => sum + step.millilitres, 0)).toBeCloseTo(400, 9);
    expect(parts.dryFilm).toBe(whole.dryFilm);
    expect(parts.steps.map((step) => step.coat)).toEqual([1, 1, 2, 2]);
  });
  test("one surface of a name is the piece as it was", () => {
    const { surfaces: _, ...plain } = table;
    const named = planPiece({ ...plain, surfaces: [{ name: "all", share: 1 }], hands: 2 });
    expect(named.steps.map(({ surface: __, ...step }) => step)).toEqual(planPiece(plain).steps);
  });
});

describe("surfaces, with coats on", () => {
  const at = (minute: number) => ({ day: first, minute: 1080 + minute });
  test("on all of them: the next waits its own hour and for the other to be lain on", () => {
    expect(when({ begun: { coats: 1, ...at(40) } })).toEqual([
      "coat underside done",
      "coat top done",
      "coat underside 05 100",
      "coat top 06 0", // 130 + 60 = 190 is past nine
    ]);
  });
  test("on one of them: the other side's turn comes when it can be lain on", () => {
    expect(when({ begunOn: [{ surface: "underside", coats: 1, ...at(50) }] })).toEqual([
      "coat underside done",
      "coat top 05 110",
      "coat underside 06 0",
      "coat top 06 90",
    ]);
  });
  test("what dries since before keeps its place", () => {
    const begunOn = [{ surface: "underside", coats: 1, ...at(50) }];
    expect(when({ surfaces: faces, dryingPlaces: 1, begunOn })[1]).toBe("coat top 05 110");
    expect(when({ surfaces: faces, begunOn })[1]).toBe("coat top 05 0");
  });
});

test("without spread every run is the plan, whichever surfaces and hands", () => {
  for (const change of [{}, { surfaces: faces, hands: 2 }, { surfaces: chairs(5), dryingPlaces: 2 }]) {
    const piece = { ...table, ...change };
    const ends = planPiece(piece)
      .steps.map(({ day }) => day ?? "")
      .sort()
      .at(-1);
    const chance = deliveryChance({ ...piece, spreadTimes: 1, runs: 100, random: randomFromSeed("a") });
    expect(chance.doneBy).toEqual([{ day: ends, share: 1 }]);
  }
});

test.each<[string, RegExp, Partial<PieceToPlan>]>([
  [
    "surfaces",
    /0\.9.*add up to 1/,
    {
      surfaces: [
        { name: "a", share: 0.5 },
        { name: "b", share: 0.4 },
      ],
    },
  ],
  ["surfaces", /Between 1 and 12/, { surfaces: [] }],
  ["surfaces", /Between 1 and 12/, { surfaces: chairs(13) }],
  [
    "surfaces[1].share",
    /Between 0.001 and 1/,
    {
      surfaces: [
        { name: "a", share: 1 },
        { name: "b", share: 0 },
      ],
    },
  ],
  [
    "surfaces[1].name",
    /Two surfaces/,
    {
      surfaces: [
        { name: "a", share: 0.5 },
        { name: "a", share: 0.5 },
      ],
    },
  ],
  ["surfaces[0].name", /a name/, { surfaces: [{ name: " ", share: 1 }] }],
  ["surfaces[0].turned", /none before/, { surfaces: [{ name: "a", share: 1, turned: true }] }],
  ["hands", /Between 1 and 6/, { hands: 7 }],
  ["dryingPlaces", /Between 1 and 12/, { dryingPlaces: 0 }],
  ["turnMinutes", /Between 0 and 10080/, { turnMinutes: -1 }],
  [
    "begunOn[0].surface",
    /underside, top/,
    { begunOn: [{ surface: "side", coats: 1, day: first, minute: 0 }] },
  ],
  ["begunOn[0].coats", /Between 1 and 2/, { begunOn: [{ surface: "top", coats: 3, day: first, minute: 0 }] }],
  // by hand: half an hour and an hour for the top between two hours' rests
  [
    "steps[0].mostWaitMinutes",
    /150 minutes.*150 or more/,
    { steps: [coat({ mostWaitMinutes: 149 }), coat()] },
  ],
])("%s is refused with what would do: %s", (field, says, change) => {
  try {
    planPiece({ ...table, ...change });
    expect.unreachable();
  } catch (error) {
    const problem = problemFromDomain((error as DomainError).detail);
    expect(problem.field).toBe(field);
    expect(problem.message).toMatch(says);
  }
});
