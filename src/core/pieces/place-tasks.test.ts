import fc from "fast-check";
import { expect, test } from "vitest";
import { shopClock } from "../schedule/shop-clock.ts";
import { calendarDay, daysLater } from "./calendar-day.ts";
import { type Span, spansOf } from "./evening.ts";
import { placeTasks, shopOf } from "./place-tasks.ts";
import type { Task } from "./task.ts";

const first = calendarDay("2026-10-05");
const hour = 60;

/** Every beginning tried, hour by hour: the earliest end of the last task, or null. Shares nothing with the planner but its types. */
function earliestEnd(tasks: readonly Task[], evenings: readonly Span[]): number | null {
  let best: number | null = null;
  const from = (i: number, ready: number, latest: number, evening: number): void => {
    const task = tasks[i];
    if (task === undefined) return;
    for (const [e, open] of evenings.entries()) {
      if (e < evening) continue;
      for (let at = open.opens; at + task.minutes <= open.closes; at += hour) {
        if (at < ready || at > latest) continue;
        const end = at + task.minutes;
        if (i === tasks.length - 1) best = best === null ? end : Math.min(best, end);
        else from(i + 1, end + task.leastWait, end + task.mostWait, e + (task.overnight ? 1 : 0));
      }
    }
  };
  from(0, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, 0);
  return best;
}

test("the earliest end that there is, least and most waits and nights together", () => {
  const task = fc
    .record({
      hours: fc.integer({ min: 1, max: 3 }),
      least: fc.integer({ min: 0, max: 4 }),
      more: fc.oneof(fc.integer({ min: 0, max: 24 }), fc.constant(Number.POSITIVE_INFINITY)),
      overnight: fc.boolean(),
    })
    .map(
      ({ hours, least, more, overnight }): Task => ({
        what: "coat",
        step: 0,
        surface: 0,
        turn: 0,
        dries: 0,
        minutes: hours * hour,
        leastWait: least * hour,
        mostWait: (least + more) * hour,
        overnight,
      }),
    );
  const evenings = fc
    .array(fc.record({ from: fc.integer({ min: 8, max: 18 }), hours: fc.integer({ min: 1, max: 5 }) }), {
      minLength: 2,
      maxLength: 4,
    })
    .map((all) =>
      spansOf(
        all.map(({ from, hours }, i) => {
          const fromMinute = from * hour;
          return { day: daysLater(first, i), fromMinute, untilMinute: fromMinute + hours * hour };
        }),
        shopClock("UTC"),
      ),
    );
  let reached = 0;
  fc.assert(
    fc.property(fc.array(task, { minLength: 1, maxLength: 4 }), evenings, (tasks, on) => {
      const last = placeTasks([{ tasks }], on, shopOf({}))[0]?.at(-1);
      const end = earliestEnd(tasks, on);
      expect(last?.left === 0 ? last.end : null).toBe(end);
      if (end !== null) reached += 1;
    }),
    { numRuns: 400, seed: 7 },
  );
  expect(reached).toBeGreaterThan(100);
});
