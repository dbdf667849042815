import type { Placed, PlanFault, PlanRules, RuledTask } from "./plan-rules.ts";

type Windows = readonly (readonly [from: number, until: number])[];

/** Windows that touch or overlap are one: nobody leaves the bench between them. */
function joined(windows: Windows): [number, number][] {
  const out: [number, number][] = [];
  for (const [from, until] of windows.toSorted((a, b) => a[0] - b[0])) {
    const last = out.at(-1);
    if (last !== undefined && last[1] >= from) last[1] = Math.max(last[1], until);
    else out.push([from, until]);
  }
  return out;
}

/** The windows of everybody a task needs. */
export const windowsFor = (rules: PlanRules, task: RuledTask): [number, number][][] =>
  (task.by ?? [null]).map((person) =>
    joined(person === null ? rules.windows : (rules.people?.[person] ?? [])),
  );

function windowFault(rules: PlanRules, { rule, start, end }: Placed): PlanFault[] {
  if (!rule.hands) return [];
  for (const windows of windowsFor(rules, rule)) {
    if (windows.some(([from, until]) => from <= start && end <= until)) continue;
    const touched = windows.filter(([from, until]) => start < until && from < end);
    const isStartInside = touched.some(([from]) => from <= start);
    const isEndInside = touched.some(([, until]) => end <= until);
    const code = isStartInside
      ? "hands after a window"
      : isEndInside
        ? "hands before a window"
        : "hands while nobody is there";
    return [{ code, tasks: [rule.task] }];
  }
  return [];
}

/** What is wrong with one task whatever the others do. */
export function taskFaults(rules: PlanRules, placed: Placed): PlanFault[] {
  const { rule, start } = placed;
  const tasks = [rule.task];
  const faults: PlanFault[] = [];
  if (!Number.isInteger(start)) faults.push({ code: "no whole minute", tasks });
  if (rule.notBefore !== undefined && start < rule.notBefore) faults.push({ code: "before its date", tasks });
  if (rule.jar !== undefined) {
    const ready = rules.jars?.[rule.jar];
    if (ready === undefined) faults.push({ code: "unknown jar", tasks });
    else if (start < ready) faults.push({ code: "before its jar is ready", tasks });
  }
  return [...faults, ...windowFault(rules, placed)];
}

/** Waits between the end of one task and the start of another. */
export function waitFaults(rules: PlanRules, placed: ReadonlyMap<string, Placed>): PlanFault[] {
  const known = new Set(rules.tasks.map((t) => t.task));
  return rules.waits.flatMap((wait): PlanFault[] => {
    const tasks = [wait.from, wait.to];
    if (!known.has(wait.from) || !known.has(wait.to)) return [{ code: "wait of an unknown task", tasks }];
    const from = placed.get(wait.from);
    const to = placed.get(wait.to);
    if (from === undefined || to === undefined) return [];
    const waited = to.start - from.end;
    const isNight = windowsFor(rules, to.rule).every((windows) =>
      windows.some(([opens]) => from.end <= opens && opens <= to.start),
    );
    if (wait.otherWindow === true && !isNight) return [{ code: "no night between", tasks }];
    if (waited < wait.leastMinutes) return [{ code: "least wait cut short", tasks }];
    const most = wait.mostMinutes ?? Number.POSITIVE_INFINITY;
    return waited > most ? [{ code: "most wait overrun", tasks }] : [];
  });
}
