import type { ClaimedPlan, Placed, PlanFault, PlanRules } from "./plan-rules.ts";
import { windowsFor } from "./task-faults.ts";

/** Hands-on tasks by person and window: each group is a session. */
function sessionsOf(rules: PlanRules, placed: readonly Placed[]): Placed[][] {
  const sessions = new Map<string, Placed[]>();
  for (const p of placed) {
    if (!p.rule.hands) continue;
    const people = p.rule.by ?? ["person"];
    windowsFor(rules, p.rule).forEach((windows, k) => {
      const at = windows.findIndex(([from, until]) => from <= p.start && p.start < until);
      const key = `${people[k]} ${at}`;
      sessions.set(key, [...(sessions.get(key) ?? []), p]);
    });
  }
  return [...sessions.values()];
}

/** Minutes between the first and the last task of a session in which none runs. */
function idleOf(session: readonly Placed[]): number {
  const inOrder = session.toSorted((a, b) => a.start - b.start);
  let idle = 0;
  let until = inOrder[0]?.start ?? 0;
  for (const { start, end } of inOrder) {
    idle += Math.max(0, start - until);
    until = Math.max(until, end);
  }
  return idle;
}

/** Claims of a plan that its own starts do not bear out. */
export function claimFaults(rules: PlanRules, plan: ClaimedPlan, placed: readonly Placed[]): PlanFault[] {
  const faults: PlanFault[] = [];
  const claim = (code: PlanFault["code"], claimed: number | undefined, is: number): void => {
    if (claimed !== undefined && claimed !== is) faults.push({ code, tasks: [] });
  };
  const sessions = sessionsOf(rules, placed);
  claim(
    "finish",
    plan.finish,
    placed.reduce((last, p) => Math.max(last, p.end), Number.NEGATIVE_INFINITY),
  );
  claim("sessions", plan.sessions, sessions.length);
  claim(
    "idle minutes",
    plan.idleMinutes,
    sessions.reduce((sum, session) => sum + idleOf(session), 0),
  );
  const { finish, lowerBound } = plan;
  if (finish !== undefined && lowerBound !== undefined) {
    if (finish < lowerBound) faults.push({ code: "finish below its bound", tasks: [] });
    if (plan.isFinishProven === true && finish > lowerBound)
      faults.push({ code: "proven above its bound", tasks: [] });
  }
  return faults;
}
