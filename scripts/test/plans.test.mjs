import loadHighs from "highs";
import { describe, expect, test } from "vitest";
import { calculationNamed } from "../../dist/core/registry/all.js";
import { calculate } from "../../dist/core/registry/calculation.js";
import { checked, checkedLate } from "../calibrate/plans.mjs";
import { bestAgainByMip, bestByMip } from "../plans/agenda-as-mip.mjs";
import { lateCoat } from "../plans/late-coats.mjs";
import { drawnAgenda, kinds, minuteOf } from "../plans/random-agendas.mjs";

const schedule = calculationNamed("schedule");
const small = { boards: 3, coats: 2, evenings: 3 };
const ask = (given) => calculate(schedule, { ...given, limitMs: 5000 });

// Outside source: HiGHS 1.15, a general-purpose solver of mixed-integer programs.
describe.each(kinds)("agendas drawn by lot: %s", (kind) => {
  test("17 small ones come to what a general-purpose solver finds, goal by goal, or are impossible to both", async () => {
    const highs = await loadHighs();
    let planned = 0;
    for (let seed = 0; seed < 17; seed++) {
      const { given, rules } = drawnAgenda(seed, kind, small);
      const answer = ask(given);
      const best = bestByMip(highs, rules);
      if (best === null) {
        // refused with a reason, or found to be impossible
        expect(answer.ok && answer.value.feasible, `seed ${seed}`).toBe(false);
        continue;
      }
      planned++;
      const { finish, sessions, idleMinutes, provenBest } = answer.value;
      expect({ finish: minuteOf(finish), sessions, idleMinutes }, `seed ${seed}`).toMatchObject(best);
      expect(provenBest, `seed ${seed}`).toBe("all goals");
    }
    expect(planned).toBeGreaterThan(5);
  }, 120_000);

  test("60 larger ones, and what becomes of them after a late coat, have no fault in the eyes of the check", () => {
    let planned = 0;
    for (let seed = 0; planned < 60; seed++) {
      const drawn = drawnAgenda(seed, kind);
      const { answer, faults } = checked(drawn);
      expect(faults, `seed ${seed}`).toEqual([]);
      if (answer === undefined) continue;
      planned++;
      expect(checkedLate(seed, drawn, answer).faults, `seed ${seed}, late`).toEqual([]);
    }
  }, 120_000);
});

test.each(kinds)(
  "after a late coat no fewer tasks can move, and no fewer sessions or idle minutes do, as a general-purpose solver says: %s",
  async (kind) => {
    const highs = await loadHighs();
    let moved = 0;
    for (let seed = 0; seed < 25; seed++) {
      const drawn = drawnAgenda(seed, kind, small);
      const answer = ask(drawn.given);
      if (!answer.ok || answer.value.starts === null) continue;
      const late = lateCoat(seed, drawn, answer.value);
      const again = ask(late.given);
      const best = bestAgainByMip(highs, late.rules, late.old, late.oldFinish);
      if (best === null) {
        expect(again.ok && again.value.feasible, `seed ${seed}`).toBe(false);
        continue;
      }
      const { isFewestMoved, sessions, idleMinutes } = again.value;
      expect(isFewestMoved, `seed ${seed}`).toBe(true);
      expect({ moved: again.value.moved.length, sessions, idleMinutes }, `seed ${seed}`).toEqual(best);
      moved += best.moved;
    }
    expect(moved).toBeGreaterThan(0);
  },
  120_000,
);
