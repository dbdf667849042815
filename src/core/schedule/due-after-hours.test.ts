import { expect, test } from "vitest";
import { planFaults } from "../plan-check/plan-faults.ts";
import { randomFromSeed } from "../random.ts";
import type { Agenda } from "./agenda.ts";
import { type DueAfterHours, dueAfterHours } from "./due-after-hours.ts";
import { layAgenda } from "./lay-agenda.ts";
import { planAgenda } from "./plan-agenda.ts";

const hours = (text: string): number => {
  const [h, m] = text.split(":").map(Number) as [number, number];
  return h * 60 + m;
};
const task = (name: string, minutes: number) => ({
  task: name,
  minutes,
  hands: true,
  needs: {},
  notBefore: 0,
  setup: name.slice(0, 1),
});
const wait = (from: string, to: string, leastMinutes: number, mostMinutes: number | null = null) => ({
  from,
  to,
  leastMinutes,
  mostMinutes,
});
const evening = (day: number, from: string, until: string) =>
  [day * 1440 + hours(from), day * 1440 + hours(until)] as const;

/** Three boards from three jars, two coats each: ten minutes a coat, five to change, an hour to dry. */
const three: Agenda = {
  tasks: ["A1", "B1", "C1", "A2", "B2", "C2"].map((name) => task(name, 10)),
  waits: [wait("A1", "A2", 60), wait("B1", "B2", 60), wait("C1", "C2", 60)],
  capacity: { person: 1 },
  windows: [evening(0, "18:00", "19:30"), evening(1, "18:00", "19:30")],
  setups: { anyOther: 5, between: [] },
};
const starts = {
  ...{ A1: hours("18:00"), B1: hours("18:15"), C1: hours("18:30"), A2: hours("19:10") },
  ...{ B2: 1440 + hours("18:00"), C2: 1440 + hours("18:15") },
};

// By hand: B2 is due at 19:25 and C2 at 19:40, ten minutes each, and the evening ends at 19:30. Begun at 18:00, C2 would be
// done at 19:50: twenty minutes too late, so 17:40 is the latest beginning.
test("two boards come due too late; begun at 17:40 they are done the same evening", () => {
  expect(dueAfterHours(three, starts, 0)).toEqual([
    {
      window: 0,
      tasks: ["B2", "C2"],
      firstDue: hours("19:25"),
      lastDue: hours("19:40"),
      begin: hours("17:40"),
    },
  ]);
});

test("nobody can begin before now, nor keep a most wait that an earlier beginning breaks", () => {
  expect(dueAfterHours(three, starts, hours("17:41"))[0]?.begin).toBeNull();
  expect(dueAfterHours(three, starts, hours("17:40"))[0]?.begin).toBe(hours("17:40"));
  const later: Agenda = {
    ...three,
    tasks: [...three.tasks, task("A3", 10)],
    // of A2 and of B2, so it is not what would follow on the first evening; A2 may come no earlier than it does
    waits: [
      ...three.waits,
      wait("A2", "A3", 60, 1440 + hours("18:30") - hours("19:20")),
      wait("B2", "A3", 0),
    ],
  };
  expect(dueAfterHours(later, { ...starts, A3: 1440 + hours("18:30") }, 0)[0]?.begin).toBeNull();
});

test("what is due in time, or waits for a later evening, is no such work", () => {
  const long: Agenda = { ...three, windows: [evening(0, "18:00", "20:00"), evening(1, "18:00", "20:00")] };
  expect(dueAfterHours(long, starts, 0)).toEqual([]);
  const nights: Agenda = { ...three, waits: three.waits.map((one) => ({ ...one, otherWindow: true })) };
  expect(dueAfterHours(nights, starts, 0)).toEqual([]);
});

test("several people, tasks without hands and rounds are refused", () => {
  expect(() => dueAfterHours({ ...three, capacity: { person: 2 } }, starts, 0)).toThrow("capacity.person");
  const dries = { ...task("D1", 10), hands: false };
  expect(() => dueAfterHours({ ...three, tasks: [...three.tasks, dries] }, starts, 0)).toThrow("tasks[6]");
});

/** The plan with the session begun as told: what was held back follows, in an order of starts that is tried anew here. */
function begunEarlier(
  agenda: Agenda,
  plan: Readonly<Record<string, number>>,
  due: DueAfterHours,
  by: number,
) {
  const [opens, closes] = agenda.windows[due.window] as readonly [number, number];
  const minutes = new Map(agenda.tasks.map((t) => [t.task, t.minutes]));
  const now: Record<string, number> = { ...plan };
  const order = Object.keys(plan)
    .filter((name) => (plan[name] ?? 0) >= opens && (plan[name] ?? 0) < closes)
    .sort((a, b) => (plan[a] ?? 0) - (plan[b] ?? 0));
  let free = (due.begin ?? opens) + by;
  let hand = order[0]?.slice(0, 1);
  for (const name of [...order, ...due.tasks]) {
    const ready = agenda.waits
      .filter((w) => w.to === name)
      .map((w) => (now[w.from] ?? 0) + (minutes.get(w.from) ?? 0) + w.leastMinutes);
    now[name] = Math.max(free + (name.slice(0, 1) === hand ? 0 : (agenda.setups?.anyOther ?? 0)), ...ready);
    free = (now[name] ?? 0) + (minutes.get(name) ?? 0);
    hand = name.slice(0, 1);
  }
  const windows = agenda.windows.map(([from, until], i) =>
    i === due.window ? ([(due.begin ?? from) + by, until] as const) : ([from, until] as const),
  );
  const rules = {
    tasks: agenda.tasks.map((t) => ({ ...t, kit: t.setup ?? "" })),
    waits: agenda.waits,
    capacity: agenda.capacity,
    windows,
    changes: { others: agenda.setups?.anyOther ?? 0, between: [] },
  };
  return planFaults(rules, { starts: now });
}

// The check shares nothing with the planner: the told beginning breaks no rule, and five minutes later there is no room.
test("100 trials at random: the independent check passes the beginning that is told, and not one five minutes later", () => {
  const random = randomFromSeed("due after hours");
  const between = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
  let told = 0;
  for (let n = 0; n < 100; n++) {
    const [jars, coats] = [between(1, 4), between(2, 4)];
    const names = Array.from({ length: jars }, (_, j) => "ABCD"[j] as string);
    const tasks = names.flatMap((jar) =>
      Array.from({ length: coats }, (_, c) => task(`${jar}${c + 1}`, between(4, 25))),
    );
    const least = between(30, 150);
    const waits = names.flatMap((jar) =>
      Array.from({ length: coats - 1 }, (_, c) => wait(`${jar}${c + 1}`, `${jar}${c + 2}`, least)),
    );
    const end = ["20:00", "21:00", "21:35"][between(0, 2)] as string;
    const windows = Array.from({ length: 8 }, (_, day) => evening(day + 1, "18:00", end));
    const agenda: Agenda = {
      tasks,
      waits,
      windows,
      capacity: { person: 1 },
      setups: { anyOther: between(0, 12), between: [] },
    };
    const { plan } = planAgenda(layAgenda(agenda), { steps: 20_000 });
    if (plan === undefined) continue;
    const at = Object.fromEntries(tasks.map((t, k) => [t.task, plan.starts[k] as number]));
    for (const due of dueAfterHours(agenda, at, 0)) {
      if (due.begin === null) continue;
      told += 1;
      expect(begunEarlier(agenda, at, due, 0)).toEqual([]);
      const [opens] = agenda.windows[due.window] as readonly [number, number];
      if (due.begin + 5 < opens) expect(begunEarlier(agenda, at, due, 5)).not.toEqual([]);
    }
  }
  expect(told).toBeGreaterThan(60);
});
