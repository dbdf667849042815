import loadHighs from "highs";
import { describe, expect, test } from "vitest";
import { calculationNamed } from "../../dist/core/registry/all.js";
import { calculate } from "../../dist/core/registry/calculation.js";
import { faultsOf } from "../calibrate/plans.mjs";
import { bestByMip } from "../plans/agenda-as-mip.mjs";
import { drawnAgenda, kinds, minuteOf } from "../plans/random-agendas.mjs";

describe.each(kinds)("agendas drawn by lot: %s", (kind) => {
  // Outside source: HiGHS 1.15, a general-purpose solver of mixed-integer programs.
  test("17 small ones come to what a general-purpose solver finds, goal by goal, or are impossible to both", async () => {
    const highs = await loadHighs();
    let planned = 0;
    for (let seed = 0; seed < 17; seed++) {
      const { given, rules } = drawnAgenda(seed, kind, { boards: 3, coats: 2, evenings: 3 });
      const answer = calculate(calculationNamed("schedule"), { ...given, limitMs: 5000 });
      const best = bestByMip(highs, rules);
      if (best === null) {
        // refused with a reason, or found to be impossible
        expect(answer.ok && answer.value.feasible, `seed ${seed}`).toBe(false);
        continue;
      }
      planned++;
      const { finish, sessions, idleMinutes, provenBest } = answer.value;
      expect({ finish: minuteOf(finish), sessions, idleMinutes }, `seed ${seed}`).toMatchObject(best);
      expect(provenBest, `seed ${seed}`).toMatch(kind === "two people" ? /sessions|all goals/ : /all goals/);
    }
    expect(planned).toBeGreaterThan(5);
  }, 120_000);

  test("60 larger ones have no fault in the eyes of a check that knows nothing of the planner", () => {
    let planned = 0;
    for (let seed = 0; planned < 60; seed++) {
      const { isPlanned, faults } = faultsOf(drawnAgenda(seed, kind));
      if (isPlanned) planned++;
      expect(faults, `seed ${seed}`).toEqual([]);
    }
  }, 120_000);
});
