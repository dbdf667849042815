import { claimFaults } from "./claim-faults.ts";
import type { ClaimedPlan, Placed, PlanFault, PlanRules } from "./plan-rules.ts";
import { capacityFaults, changeFaults, roundFaults, togetherFaults, whoFaults } from "./sharing-faults.ts";
import { taskFaults, waitFaults } from "./task-faults.ts";

/**
 * Every rule that a plan breaks, and every claim of it that is not so.
 *
 * @param rules  tasks, waits, hands, places, windows and changes; minutes of real time from any one moment
 * @param plan   a start for each task [min], and what the plan says of itself
 * @returns      faults by code, with the tasks concerned; none for a right plan
 * @throws DomainError never
 *
 * Valid:  whole minutes
 * Source: the rules as DESIGN states them: tasks with hands lie in one window, waits run from an end to a start
 * @example
 * planFaults({ tasks: [{ task: "a", minutes: 5, hands: true }], waits: [], capacity: {}, windows: [[0, 9]] }, { starts: { a: 4 } }).length // => 0
 */
export function planFaults(rules: PlanRules, plan: ClaimedPlan): PlanFault[] {
  const faults: PlanFault[] = [];
  const known = new Set(rules.tasks.map((t) => t.task));
  for (const task of Object.keys(plan.starts))
    if (!known.has(task)) faults.push({ code: "unknown task", tasks: [task] });
  const placed = new Map<string, Placed>();
  for (const rule of rules.tasks) {
    const start = plan.starts[rule.task];
    if (start === undefined) faults.push({ code: "no start", tasks: [rule.task] });
    else if (!Number.isFinite(start)) faults.push({ code: "no number", tasks: [rule.task] });
    else {
      const who = plan.who?.[rule.task];
      placed.set(rule.task, {
        rule,
        start,
        end: start + rule.minutes,
        ...(who === undefined ? {} : { who }),
      });
    }
  }
  const all = [...placed.values()];
  return [
    ...faults,
    ...all.flatMap((p) => taskFaults(rules, p)),
    ...waitFaults(rules, placed),
    ...capacityFaults(rules, all),
    ...whoFaults(rules, all),
    ...changeFaults(rules, all),
    ...roundFaults(rules, placed),
    ...togetherFaults(rules, all),
    ...claimFaults(rules, plan, all),
  ];
}
