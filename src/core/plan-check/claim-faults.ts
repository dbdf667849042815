import type { ClaimedPlan, Placed, PlanFault, PlanRules } from "./plan-rules.ts";
import { needOf } from "./sharing-faults.ts";
import { windowsFor } from "./task-faults.ts";

/** Hands-on tasks of one window: of somebody with a name, or of all the hands that belong to nobody by name. */
interface Session {
  readonly who: string;
  readonly tasks: Placed[];
}

function sessionsOf(rules: PlanRules, placed: readonly Placed[]): Session[] {
  const sessions = new Map<string, Session>();
  for (const p of placed) {
    if (!p.rule.hands) continue;
    const people = p.rule.by ?? ["person"];
    windowsFor(rules, p.rule).forEach((windows, k) => {
      const at = windows.findIndex(([from, until]) => from <= p.start && p.start < until);
      const who = people[k] as string;
      const session = sessions.get(`${who} ${at}`) ?? { who, tasks: [] };
      session.tasks.push(p);
      sessions.set(`${who} ${at}`, session);
    });
  }
  return [...sessions.values()];
}

/** All whose session it is are there from its first start to its last end; what of their time is no work is idle. */
function idleOf({ capacity }: PlanRules, { who, tasks }: Session): number {
  const people = who === "person" ? (capacity.person ?? 1) : 1;
  const first = Math.min(...tasks.map((p) => p.start));
  const last = Math.max(...tasks.map((p) => p.end));
  return people * (last - first) - tasks.reduce((sum, p) => sum + needOf(p.rule, who) * p.rule.minutes, 0);
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
    sessions.reduce((sum, session) => sum + idleOf(rules, session), 0),
  );
  const { finish, lowerBound } = plan;
  if (finish !== undefined && lowerBound !== undefined) {
    if (finish < lowerBound) faults.push({ code: "finish below its bound", tasks: [] });
    if (plan.isFinishProven === true && finish > lowerBound)
      faults.push({ code: "proven above its bound", tasks: [] });
  }
  return faults;
}
