// Plans of agendas drawn by lot, held against the check that imports nothing from the planner.
import { planFaults } from "../../dist/core/plan-check/plan-faults.js";
import { calculationNamed } from "../../dist/core/registry/all.js";
import { calculate } from "../../dist/core/registry/calculation.js";
import { claimedPlan, drawnAgenda, kinds } from "../plans/random-agendas.mjs";

const schedule = calculationNamed("schedule");

/** What is wrong with the plan of a drawn agenda, in words; nothing when there is no plan. */
export function faultsOf({ given, rules }) {
  const answer = calculate(schedule, { ...given, limitMs: 20 });
  if (!answer.ok || answer.value.starts === null) return { isPlanned: false, faults: [] };
  return { isPlanned: true, faults: planFaults(rules, claimedPlan(answer.value)), answer: answer.value };
}

export function* figures(runs) {
  for (const kind of kinds) {
    let planned = 0;
    let right = 0;
    const each = Math.ceil(runs / kinds.length);
    for (let seed = 0; planned < each; seed++) {
      const { isPlanned, faults } = faultsOf(drawnAgenda(seed, kind));
      if (!isPlanned) continue;
      planned++;
      if (faults.length === 0) right++;
    }
    yield { name: `${kind}: plans of ${planned} without a fault`, value: right / planned, atLeast: 1 };
  }
}
