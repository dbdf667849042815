import loadHighs from "highs";
import { expect, test } from "vitest";
import { planFaults } from "../../dist/core/plan-check/plan-faults.js";
import { calculationNamed } from "../../dist/core/registry/all.js";
import { calculate } from "../../dist/core/registry/calculation.js";
import { bestByMip } from "../plans/agenda-as-mip.mjs";
import { checkedBy, drawnPiece, minuteOf, smallRules } from "../plans/random-pieces.mjs";

const piecePlan = calculationNamed("piece-plan");

/** The plan's steps; nothing where it is refused, null where the evenings are too few. */
function planned(given) {
  const answer = calculate(piecePlan, given);
  if (answer.ok) return answer.value.unplacedSteps > 0 ? null : answer.value.steps;
  expect(answer.error.field, JSON.stringify(given)).toMatch(/^steps\[\d+\]\.mostWaitMinutes$/);
  return undefined;
}

test("500 plans of several surfaces have no fault in the eyes of the check, and one minute more of every wait has", () => {
  let [found, tight] = [0, 0];
  for (let seed = 0; found < 500; seed++) {
    const given = drawnPiece(seed);
    const steps = planned(given);
    if (!steps) continue;
    found++;
    const { rules, plan } = checkedBy(given, steps);
    expect(planFaults(rules, plan), `piece ${seed}`).toEqual([]);
    const longer = rules.waits.map((wait) => ({ ...wait, leastMinutes: wait.leastMinutes + 1 }));
    if (planFaults({ ...rules, waits: longer }, plan).length > 0) tight++;
  }
  expect(tight).toBeGreaterThan(300);
}, 60_000);

const endOf = (steps) => Math.max(...steps.map(({ at, minutes }) => minuteOf(at) + minutes));

test("150 plans that were bettered by a search have no fault either, and none ends later for it", () => {
  let [found, sooner] = [0, 0];
  for (let seed = 0; found < 150; seed++) {
    const given = drawnPiece(seed);
    const steps = planned(given);
    if (!steps) continue;
    found++;
    const best = planned({ ...given, limitMs: 100 });
    const { rules, plan } = checkedBy(given, best);
    expect(planFaults(rules, plan), `piece ${seed}`).toEqual([]);
    expect(endOf(best), `piece ${seed}`).toBeLessThanOrEqual(endOf(steps));
    if (endOf(best) < endOf(steps)) sooner++;
  }
  expect(sooner).toBeGreaterThan(10);
}, 120_000);

// Outside source: HiGHS 1.15, a general-purpose solver of mixed-integer programs. Placing in one order is no proof of the
// best: what is claimed is that it is never better than what the solver proves, and in nine of ten is as good.
test("small pieces end when a general-purpose solver says they can, nine of ten, and are impossible to both", async () => {
  const highs = await loadHighs();
  const count = { best: 0, later: 0, impossible: 0, missed: 0, proven: 0 };
  for (let seed = 0; seed < 60; seed++) {
    const given = drawnPiece(seed, { small: true });
    const rules = smallRules(given);
    if (rules.tasks.length > 12) continue; // the solver takes minutes
    const steps = planned(given);
    const best = bestByMip(highs, rules);
    if (best === null) {
      expect(steps ?? null, `piece ${seed}`).toBeNull();
      count.impossible++;
    } else if (!steps) count.missed++;
    else {
      const ends = endOf(steps);
      expect(ends, `piece ${seed}`).toBeGreaterThanOrEqual(best.finish);
      count[ends === best.finish ? "best" : "later"]++;
      const { value } = calculate(piecePlan, { ...given, limitMs: 5000 });
      if (value.provenBest === null) continue;
      expect(endOf(value.steps), `piece ${seed}, ${value.provenBest}`).toBe(best.finish);
      count.proven++;
      if (value.provenBest === "finish") continue;
      expect(value.eveningsUsed, `piece ${seed}, ${value.provenBest}`).toBe(best.sessions);
    }
  }
  const feasible = count.best + count.later + count.missed;
  expect(feasible, JSON.stringify(count)).toBeGreaterThan(25);
  expect(count.best / feasible, JSON.stringify(count)).toBeGreaterThanOrEqual(0.9);
  expect(count.proven, JSON.stringify(count)).toBeGreaterThanOrEqual(0.9 * (count.best + count.later));
  expect(count.impossible).toBeGreaterThan(5);
}, 120_000);
