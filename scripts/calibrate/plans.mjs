// Plans of agendas drawn by lot, and what is made of them after a late coat, held against the check that imports nothing
// from the planner.
import { planFaults } from "../../dist/core/plan-check/plan-faults.js";
import { calculationNamed } from "../../dist/core/registry/all.js";
import { calculate } from "../../dist/core/registry/calculation.js";
import { lateCoat } from "../plans/late-coats.mjs";
import { claimedPlan, drawnAgenda, kinds } from "../plans/random-agendas.mjs";

const schedule = calculationNamed("schedule");

/** What the check finds wrong with the answer to a drawn agenda, and the answer; no answer when there is no plan. */
export function checked({ given, rules }, limitMs = 20) {
  const answer = calculate(schedule, { ...given, limitMs });
  if (!answer.ok || answer.value.starts === null) return { faults: [] };
  return { answer: answer.value, faults: planFaults(rules, claimedPlan(answer.value)) };
}

/** The same for what becomes of the plan after a late coat; the tasks said to be moved are those that are. */
export function checkedLate(seed, drawn, answer) {
  const late = lateCoat(seed, drawn, answer);
  const again = checked(late);
  if (again.answer === undefined) return again;
  const { starts } = claimedPlan(again.answer);
  const moved = late.rules.tasks.filter((t) => t.hands && starts[t.task] !== late.old[t.task]);
  const isTold = moved.map((t) => t.task).join() === again.answer.moved.join();
  return isTold
    ? again
    : { ...again, faults: [...again.faults, { code: "moved", tasks: again.answer.moved }] };
}

export function* figures(runs) {
  for (const kind of kinds) {
    let [planned, right, again, rightAgain] = [0, 0, 0, 0];
    const each = Math.ceil(runs / kinds.length);
    for (let seed = 0; planned < each; seed++) {
      const drawn = drawnAgenda(seed, kind);
      const { answer, faults } = checked(drawn);
      if (answer === undefined) continue;
      planned++;
      if (faults.length === 0) right++;
      const late = checkedLate(seed, drawn, answer);
      if (late.answer === undefined) continue;
      again++;
      if (late.faults.length === 0) rightAgain++;
    }
    yield { name: `${kind}: of ${planned} plans without a fault`, value: right / planned, atLeast: 1 };
    yield { name: `${kind}: of ${again} plans after a late coat`, value: rightAgain / again, atLeast: 1 };
  }
}
