import { describe, expect, test } from "vitest";
import { volumeFraction } from "../units.ts";
import { calendarDay, daysLater } from "./calendar-day.ts";
import type { FinishingStep } from "./finishing-step.ts";
import type { PieceToPlan } from "./piece-to-plan.ts";
import { type PlainSchedule, plainSteps } from "./plain-schedule.ts";
import { planPiece as planSteps } from "./plan.ts";

const first = calendarDay("2026-10-05");
const evenings = (n: number, from = 18 * 60, until = 21 * 60) =>
  Array.from({ length: n }, (_, i) => ({ day: daysLater(first, i), fromMinute: from, untilMinute: until }));
type Plain = PlainSchedule & Omit<PieceToPlan, "steps">;
const planPiece = (piece: Plain) => planSteps({ ...piece, steps: plainSteps(piece) });
const chair: Plain = {
  areaM2: 1,
  method: "pad",
  coats: 4,
  volumeSolids: volumeFraction(0.1659),
  evenings: evenings(10),
};

describe("film and liquid", () => {
  // trade reference B3: 3 mil dry with half lost in pad and levelling is about 0.92 L of 2 lb a square metre
  test("0.92 L of 2 lb a square metre with half lost is 3 mil", () => {
    const plan = planPiece({
      ...chair,
      coats: 1,
      own: { litresPerM2: 0.92, firstCoatTimes: 1, transfer: 0.5 },
    });
    expect(plan.dryFilm).toBeCloseTo(3 * 25.4e-6, 6);
  });
  // trade reference B3: one US pint of 2 lb does a guitar of 0.53 m²: at 50 % staying put 73 µm (78 mL of solids)
  test("a pint on a guitar leaves 73 µm", () => {
    const plan = planPiece({
      ...chair,
      areaM2: 0.53,
      coats: 1,
      own: { litresPerM2: 0.473176 / 0.53, firstCoatTimes: 1, transfer: 0.5 },
    });
    expect(plan.dryFilm * 1e6).toBeGreaterThan(72.5);
    expect(plan.dryFilm * 1e6).toBeLessThan(74.5);
  });
  // an identity of units: 1604 ft² a US gallon at one mil
  test("a US gallon on 1604 square feet stands one mil wet", () => {
    const area = 1604 * 0.09290304;
    const plan = planPiece({
      ...chair,
      areaM2: area,
      method: "brush",
      coats: 1,
      volumeSolids: volumeFraction(1),
      evenings: [],
      own: { litresPerM2: 3.785411784 / area, firstCoatTimes: 1 },
    });
    expect(plan.dryFilm / 25.4e-6).toBeCloseTo(1, 3);
  });
  test("the liquid of the steps adds up, and the spare comes on top", () => {
    const plan = planPiece({ ...chair, spareShare: 0.25 });
    expect(plan.steps.reduce((sum, s) => sum + s.millilitres, 0)).toBeCloseTo(plan.millilitresUsed, 9);
    expect(plan.millilitresToMix).toBeCloseTo(plan.millilitresUsed * 1.25, 9);
  });
});

describe("evenings", () => {
  test("no step starts before the one before it is done and waited for, and none runs past its evening", () => {
    for (const method of ["pad", "brush", "spray"] as const)
      for (const coats of [1, 2, 5, 9]) {
        const plan = planPiece({ ...chair, method, coats, evenings: evenings(30) });
        let ready = 0;
        for (const step of plan.steps) {
          if (step.fromMinute === null || step.day === null) continue;
          const at = Date.parse(step.day) / 60_000 + step.fromMinute;
          expect(at).toBeGreaterThanOrEqual(ready);
          expect(step.fromMinute + step.minutes).toBeLessThanOrEqual(21 * 60);
          ready = at + step.minutes + step.waitMinutes;
        }
        expect(plan.unplaced).toBe(0);
        expect(plan.steps.filter((s) => s.what === "coat")).toHaveLength(coats);
      }
  });
  test("a night is waited after every third coat", () => {
    const coats = planPiece({ ...chair, coats: 7, evenings: evenings(30, 0, 1440) }).steps.filter(
      (s) => s.what === "coat",
    );
    expect(coats[3]?.day).not.toBe(coats[2]?.day);
    expect(coats[6]?.day).not.toBe(coats[5]?.day);
  });
  test("too few evenings are said, not stretched", () => {
    const plan = planPiece({ ...chair, coats: 9, evenings: evenings(1) });
    expect(plan.unplaced).toBeGreaterThan(0);
    expect(plan.steps.at(-1)?.day).toBeNull();
  });
  test("sanding that is longer than an evening goes on in the next; a coat that is longer has no evening", () => {
    const plan = planPiece({ ...chair, areaM2: 8.8, evenings: evenings(40, 18 * 60, 21 * 60) });
    const sanding = plan.steps.filter((s) => s.what === "sand");
    expect(sanding.map((s) => s.minutes)).toEqual([180, 40]);
    expect(plan.unplaced).toBe(0);
    const larger = planPiece({ ...chair, areaM2: 9.2, evenings: evenings(40, 18 * 60, 21 * 60) });
    expect(larger.steps.filter((s) => s.what === "coat").every((s) => s.day === null)).toBe(true);
  });
  test("rubbing out waits for the cure", () => {
    const plan = planPiece(chair);
    const last = plan.steps.findLast((s) => s.what === "coat");
    expect(plan.steps.at(-1)?.day).toBe(daysLater(last?.day ?? first, 14));
  });
});

test.each([
  ["areaM2", { areaM2: 0 }],
  ["areaM2", { areaM2: Number.NaN }],
  ["areaM2", { areaM2: 201 }],
  ["coats", { coats: 0 }],
  ["coats", { coats: 2.5 }],
  ["spareShare", { spareShare: -0.1 }],
  ["evenings[0]", { evenings: [{ day: first, fromMinute: 1200, untilMinute: 1100 }] }],
  ["evenings[1]", { evenings: [...evenings(1), ...evenings(1)] }],
])("%s is refused by name", (field, change) => {
  expect(() => planPiece({ ...chair, ...change })).toThrow(field);
});

describe("a schedule of steps", () => {
  const coat = (more: Partial<FinishingStep> = {}): FinishingStep => ({
    what: "coat",
    minutesPerM2: 60,
    leastWaitMinutes: 60,
    liquid: { litresPerM2: 0.1, volumeSolids: volumeFraction(0.1), transfer: 1 },
    ...more,
  });
  const plan = (steps: readonly FinishingStep[], on = evenings(10)) =>
    planSteps({ areaM2: 1, steps, evenings: on });
  const when = (steps: readonly FinishingStep[], on = evenings(10)) =>
    plan(steps, on).steps.map(({ what, day, fromMinute }) => [what, day, fromMinute]);

  // By hand: an hour from 18:00, an hour waited, an hour from 20:00; then the night.
  test("so many times in a row, a night that is a step, and work after the cure", () => {
    const steps: FinishingStep[] = [
      coat({ times: 3 }),
      { what: "wait", minutesPerM2: 0, leastWaitMinutes: 0, overnight: true },
      { what: "level", minutesPerM2: 30, leastWaitMinutes: 0 },
      { what: "cure", minutesPerM2: 0, leastWaitMinutes: 3 * 1440 },
      { what: "rub out", minutesPerM2: 30, leastWaitMinutes: 0 },
      { what: "wax", minutesPerM2: 10, leastWaitMinutes: 0 },
    ];
    expect(when(steps)).toEqual([
      ["coat", "2026-10-05", 1080],
      ["coat", "2026-10-05", 1200],
      ["coat", "2026-10-06", 1080],
      ["wait", "2026-10-06", null],
      ["level", "2026-10-07", 1080],
      ["cure", "2026-10-07", null],
      ["rub out", "2026-10-10", null],
      ["wax", "2026-10-10", null],
    ]);
  });

  // By hand: two coats of an hour with two to twelve hours between do not fit into three hours, nor may a night of 21 h pass.
  test("a most wait that no evening keeps is refused with the nearest that would do", () => {
    const tight = coat({ leastWaitMinutes: 120, mostWaitMinutes: 720 });
    expect(() => plan([tight, coat()])).toThrow(/steps\[0\]\.mostWaitMinutes.*1260 minutes/);
    expect(plan([coat({ leastWaitMinutes: 120, mostWaitMinutes: 1260 }), coat()]).unplaced).toBe(0);
  });

  // By hand: from 18:00 the next coat, 61 min to wait and 60 to work, ends at 21:01; so the first waits until its own end is 21 h before the next evening.
  test("the one before begins later where what follows would come too late", () => {
    const first = coat({ leastWaitMinutes: 61, mostWaitMinutes: 1270 });
    expect(when([first, coat()])).toEqual([
      ["coat", "2026-10-05", 1190],
      ["coat", "2026-10-06", 1080],
    ]);
  });

  test.each<[string, FinishingStep[]]>([
    ["coats", [{ what: "sand", minutesPerM2: 1, leastWaitMinutes: 0 }]],
    ["coats", [coat({ times: 41 })]],
    ["steps[0].what", [{ what: "wait", minutesPerM2: 0, leastWaitMinutes: 9 }, coat()]],
    ["steps[1].mostWaitMinutes", [coat(), coat({ mostWaitMinutes: 59 })]],
    ["steps[0].leastWaitMinutes", [coat({ leastWaitMinutes: -1 })]],
    ["steps[0].minutesPerM2", [coat({ minutesPerM2: Number.NaN })]],
  ])("%s is refused by name", (field, steps) => {
    expect(() => plan(steps)).toThrow(field);
  });
});
