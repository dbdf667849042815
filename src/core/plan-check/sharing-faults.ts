import type { Placed, PlanFault, PlanRules, RuledTask } from "./plan-rules.ts";

/** The people with names are one each; other hands are counted under `person`. */
export const needOf = (task: RuledTask, resource: string): number => {
  if (task.hands && task.by !== undefined)
    return task.by.includes(resource) ? 1 : (task.needs?.[resource] ?? 0);
  return task.needs?.[resource] ?? (task.hands && resource === "person" ? 1 : 0);
};

const runsAt = (p: Placed, moment: number): boolean => p.start <= moment && moment < p.end;
const overlap = (a: Placed, b: Placed): boolean => a.start < b.end && b.start < a.end;

/** Pairs that need no looking at each other: in order of starts, the later ones that begin before this one ends. */
function* overlapping(placed: readonly Placed[]): Generator<[Placed, Placed]> {
  const inOrder = placed.filter((p) => p.end > p.start).sort((a, b) => a.start - b.start);
  for (const [i, a] of inOrder.entries())
    for (let j = i + 1; j < inOrder.length && (inOrder[j] as Placed).start < a.end; j++)
      yield [a, inOrder[j] as Placed];
}

function crowded(placed: readonly Placed[], resource: string, capacity: number): Placed[] {
  const users = placed.filter((p) => p.end > p.start && needOf(p.rule, resource) > 0);
  for (const { start } of users) {
    const there = users.filter((p) => runsAt(p, start));
    if (there.reduce((sum, p) => sum + needOf(p.rule, resource), 0) > capacity) return there;
  }
  return [];
}

/** Hands and places at no time used by more than there are. */
export function capacityFaults(rules: PlanRules, placed: readonly Placed[]): PlanFault[] {
  const people = Object.keys(rules.people ?? {});
  const capacity: Record<string, number> = { person: 1, ...rules.capacity };
  for (const person of people) capacity[person] = 1;
  const faults: PlanFault[] = rules.tasks.flatMap((task) =>
    [...Object.keys(task.needs ?? {}), ...(task.by ?? [])]
      .filter((resource) => needOf(task, resource) > (capacity[resource] ?? 0))
      .map(() => ({ code: "more than there ever is" as const, tasks: [task.task] })),
  );
  for (const [resource, there] of Object.entries(capacity)) {
    const crowd = crowded(placed, resource, there);
    if (crowd.length === 0) continue;
    const code = people.includes(resource)
      ? "one person at two tasks"
      : resource === "person"
        ? "too many hands"
        : "too little room";
    faults.push({ code, tasks: crowd.map((p) => p.rule.task) });
  }
  return faults;
}

/** Whose hands: those of people with names, or of one of several without. */
function handsOf({ rule, who }: Placed): readonly string[] {
  if (rule.hands && rule.by !== undefined) return rule.by;
  return needOf(rule, "person") === 0 ? [] : [`person ${who ?? 1}`];
}

/** Of several people somebody who is there does each task, each one task at a time. */
export function whoFaults(rules: PlanRules, placed: readonly Placed[]): PlanFault[] {
  const people = rules.capacity.person ?? 1;
  const shared = placed.filter((p) => p.rule.by === undefined && p.end > p.start && handsOf(p).length > 0);
  const isTold = shared.some((p) => p.who !== undefined);
  if (people === 1 || (!isTold && rules.changes === undefined)) return [];
  const isThere = ({ who }: Placed): boolean =>
    who !== undefined && Number.isInteger(who) && who >= 1 && who <= people;
  const nobody = shared
    .filter((p) => !isThere(p))
    .map((p): PlanFault => ({ code: "nobody to do it", tasks: [p.rule.task] }));
  const atTwo = [...overlapping(shared)].flatMap(([a, b]): PlanFault[] =>
    a.who === b.who ? [{ code: "one person at two tasks", tasks: [a.rule.task, b.rule.task] }] : [],
  );
  return [...nobody, ...atTwo];
}

/**
 * Between two tasks of the same hands lies the time to change from the kit of one to that of the other; what the hands do
 * meanwhile without a kit gives none of its minutes to the change.
 */
export function changeFaults(rules: PlanRules, placed: readonly Placed[]): PlanFault[] {
  const { changes } = rules;
  if (changes === undefined) return [];
  const minutes = (from: string, to: string): number =>
    changes.between.find((c) => c.from === from && c.to === to)?.minutes ??
    (from === to ? 0 : changes.others);
  const people = new Set(placed.flatMap(handsOf));
  return [...people].flatMap((person) => {
    const inOrder = placed
      .filter((p) => handsOf(p).includes(person))
      .sort((a, b) => a.start - b.start || a.end - b.end);
    const own = inOrder.filter((p) => p.rule.kit !== undefined);
    const bareBetween = (from: number, until: number): number =>
      inOrder.reduce((sum, { rule, start, end }) => {
        const isBetween = rule.kit === undefined && start >= from && end <= until;
        return isBetween ? sum + rule.minutes : sum;
      }, 0);
    return own.slice(1).flatMap((after, i): PlanFault[] => {
      const before = own[i] as Placed;
      const needed = minutes(before.rule.kit as string, after.rule.kit as string);
      // what overlaps is a fault of its own
      if (needed === 0 || overlap(before, after)) return [];
      if (after.start - before.end - bareBetween(before.end, after.start) >= needed) return [];
      return [{ code: "no time to change", tasks: [before.rule.task, after.rule.task] }];
    });
  });
}

/** The tasks of a round, in the order given and each where the one before it ends. */
export function roundFaults(rules: PlanRules, placed: ReadonlyMap<string, Placed>): PlanFault[] {
  const rounds = new Set(rules.tasks.flatMap((t) => (t.round === undefined ? [] : [t.round])));
  return [...rounds].flatMap((round): PlanFault[] => {
    const members = rules.tasks.filter((t) => t.round === round).flatMap((t) => placed.get(t.task) ?? []);
    const tasks = members.map((p) => p.rule.task);
    const follows = (ok: (before: Placed, after: Placed) => boolean): boolean =>
      members.slice(1).every((after, i) => ok(members[i] as Placed, after));
    if (!follows((before, after) => before.start <= after.start))
      return [{ code: "round out of order", tasks }];
    if (!follows((before, after) => before.end === after.start)) return [{ code: "round broken up", tasks }];
    return new Set(members.flatMap((p) => p.who ?? [])).size <= 1
      ? []
      : [{ code: "round by two people", tasks }];
  });
}

/** Of the surfaces that cannot be done together, no two at a time. */
export function togetherFaults(rules: PlanRules, placed: readonly Placed[]): PlanFault[] {
  const apart = rules.notTogether ?? [];
  if (apart.length === 0) return [];
  return [...overlapping(placed)].flatMap(([a, b]): PlanFault[] => {
    const tasks = [a.rule.task, b.rule.task];
    return apart.some((list) => tasks.every((name) => list.includes(name)))
      ? [{ code: "together", tasks }]
      : [];
  });
}
