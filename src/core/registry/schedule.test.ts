import { describe, expect, test } from "vitest";
import { refusal, run } from "../../../test/run-calculation.ts";

const hands = (task: string, minutes: number, more = {}) => ({ task, minutes, hands: true, ...more });
const evening = (day: string) => [`${day}T18:00`, `${day}T21:00`];
const base = {
  tasks: [hands("a1", 30), hands("a2", 30)],
  waits: [{ from: "a1", to: "a2", leastMinutes: 60, mostMinutes: 1600 }],
  windows: [evening("2026-10-05"), evening("2026-10-06")],
  zone: "Europe/Berlin",
};

describe("tasks in windows", () => {
  test("two coats with an hour between them fit one evening", () => {
    expect(run("schedule", base)).toMatchObject({
      feasible: true,
      starts: { a1: "2026-10-05T18:00", a2: "2026-10-05T19:30" },
      finish: "2026-10-05T20:00",
      sessions: 1,
      idleMinutes: 60,
      provenBest: "all goals",
    });
  });
  test("a wait runs on between evenings", () => {
    const waits = [{ from: "a1", to: "a2", leastMinutes: 240 }];
    expect(run("schedule", { ...base, waits })).toMatchObject({ finish: "2026-10-06T18:30", sessions: 2 });
  });
  test("a drying place is taken while a coat dries, hands or no hands", () => {
    const tasks = ["a", "b"].flatMap((x) => [
      hands(`${x} coat`, 10, { needs: { rack: 1 } }),
      { task: `${x} dry`, minutes: 60, hands: false, needs: { rack: 1 } },
    ]);
    const waits = ["a", "b"].map((x) => ({
      from: `${x} coat`,
      to: `${x} dry`,
      leastMinutes: 0,
      mostMinutes: 0,
    }));
    const plan = (rack: number) => run("schedule", { ...base, tasks, waits, capacity: { rack } }).finish;
    expect(plan(1)).toBe("2026-10-05T20:20");
    expect(plan(2)).toBe("2026-10-05T19:20");
  });
  test("a jar that is not ready holds its coat back", () => {
    const jars = [{ jar: "J1", readyAt: "2026-10-05T20:00" }];
    const tasks = [hands("a1", 30, { jar: "J1" }), hands("a2", 30)];
    expect(run("schedule", { ...base, tasks, jars, waits: [] })).toMatchObject({
      starts: { a1: "2026-10-05T20:00", a2: "2026-10-05T19:30" },
    });
  });
  // the clocks go back in Berlin on 25 October 2026 at 3:00, in New York on 1 November at 2:00: a night is an hour longer
  test.each([
    ["Europe/Berlin", "2026-10-24", "2026-10-25", 21],
    ["America/New_York", "2026-10-31", "2026-11-01", 21],
    ["Europe/Berlin", "2026-10-26", "2026-10-27", 20],
    ["Europe/Berlin", "2027-03-27", "2027-03-28", 19],
  ])("between two evenings in %s lie %s–%s as many hours as there are", (zone, first, second, hoursApart) => {
    const windows = [
      [`${first}T20:00`, `${first}T21:00`],
      [`${second}T17:00`, `${second}T18:00`],
    ];
    const tasks = [hands("a1", 60), hands("a2", 60)];
    const waits = (least: number) => [{ from: "a1", to: "a2", leastMinutes: least, mostMinutes: least }];
    const given = (least: number) => ({ ...base, zone, windows, tasks, waits: waits(least) });
    expect(run("schedule", given(hoursApart * 60))).toMatchObject({ feasible: true });
    expect(refusal("schedule", given(hoursApart * 60 - 60)).limits).toEqual({ min: hoursApart * 60 });
  });
});

describe("set-ups of one person", () => {
  const coat = (task: string, setup?: string) => hands(task, 10, setup === undefined ? {} : { setup });
  const setups = { anyOther: 5, between: [{ from: "full", to: "thin", minutes: 9 }] };
  const plan = (tasks: unknown[], more = {}) =>
    run("schedule", { ...base, tasks, waits: [], setups, ...more }) as { finish: string };
  test("the order that changes least is found", () => {
    const tasks = [coat("a", "thin"), coat("b", "full"), coat("c", "thin"), coat("d", "full")];
    expect(plan(tasks)).toMatchObject({ finish: "2026-10-05T18:45", starts: { b: "2026-10-05T18:25" } });
    // thin cannot come first: full to thin takes its own minutes
    const waits = [{ from: "b", to: "a", leastMinutes: 0 }];
    expect(plan(tasks.slice(0, 2), { waits }).finish).toBe("2026-10-05T18:29");
  });
  test("a task without a set-up leaves the hands bare: the longest change follows", () => {
    const tasks = [coat("a", "thin"), coat("label"), coat("c", "thin")];
    const waits = [
      { from: "a", to: "label", leastMinutes: 0 },
      { from: "label", to: "c", leastMinutes: 0 },
    ];
    expect(plan(tasks, { waits, setups: { anyOther: 5 } }).finish).toBe("2026-10-05T18:35");
    const others = [...tasks, coat("d", "full")];
    expect(plan(others, { waits }).finish).toBe("2026-10-05T18:54");
  });
  test("a session begins with its first pad and jar at hand", () => {
    const tasks = [coat("a", "thin"), coat("b", "full")];
    const windows = [
      ["2026-10-05T18:00", "2026-10-05T18:10"],
      ["2026-10-05T20:00", "2026-10-05T20:10"],
    ];
    expect(plan(tasks, { windows }).finish).toBe("2026-10-05T20:10");
  });
  test.each([
    ["setups.between[0].from", { between: [{ from: "dark", to: "thin", minutes: 9 }] }, {}],
    ["setups.between[0].to", { between: [{ from: "thin", to: "thin", minutes: 9 }] }, {}],
    [
      "tasks[0].needs.person",
      {},
      { capacity: { person: 2 }, tasks: [{ ...coat("a", "thin"), needs: { person: 2 } }, coat("b", "full")] },
    ],
    // thin to full by way of tint takes 4 minutes
    [
      "setups.anyOther",
      {
        between: [
          { from: "thin", to: "tint", minutes: 2 },
          { from: "tint", to: "full", minutes: 2 },
        ],
      },
      {},
    ],
    [
      "tasks[2].setup",
      {},
      { tasks: [coat("a", "thin"), coat("b", "full"), { ...coat("c", "tint"), hands: false }] },
    ],
    ["setups", {}, { tasks: [coat("a"), coat("b")] }],
  ])("%s is refused", (field, change, more) => {
    const tasks = [coat("a", "thin"), coat("b", "full"), coat("c", "tint")];
    const given = { ...base, tasks, waits: [], setups: { anyOther: 5, ...change }, ...more };
    expect(refusal("schedule", given).field).toBe(field);
  });
});

describe("boards coated in one round", () => {
  const board = (task: string, more = {}) => hands(task, 30, { round: "edge", ...more });
  const other = hands("a long job", 100);
  test("they follow each other without a break and so stay in one window", () => {
    const tasks = [board("x"), board("y"), board("z"), other];
    const found = run("schedule", { ...base, tasks, waits: [] }) as { starts: Record<string, string> };
    const { x, y, z } = found.starts;
    expect([x, y, z].map((at) => at?.slice(11))).toEqual(["18:00", "18:30", "19:00"]);
  });
  test.each([
    ["tasks[0].round", [board("x", { minutes: 100 }), board("y", { minutes: 100 })]],
    ["tasks[1].round", [board("x"), board("y", { hands: false })]],
    ["tasks[1].setup", [board("x", { setup: "thin" }), board("y", { setup: "full" })]],
  ])("%s is refused", (field, tasks) => {
    expect(refusal("schedule", { ...base, tasks, waits: [] }).field).toBe(field);
  });
});

describe("goals in their order", () => {
  const job = (task: string, minutes: number) => hands(task, minutes);
  test("the finish comes before the sessions, and the sessions before the idle minutes", () => {
    // 100 + 100 do not fit one evening, and the last may be begun on the second only
    const tasks = [job("a", 100), job("b", 60), { ...job("c", 100), notBefore: "2026-10-06T18:00" }];
    expect(run("schedule", { ...base, tasks, waits: [] })).toMatchObject({
      finish: "2026-10-06T19:40",
      sessions: 2,
      idleMinutes: 0,
      provenBest: "all goals",
    });
  });
  test("what may be done at any time is done beside the rest, on the evening on which somebody comes anyway", () => {
    const tasks = [
      job("a", 20),
      { ...job("late", 20), notBefore: "2026-10-06T19:00" },
      { ...job("later", 20), notBefore: "2026-10-06T20:00" },
    ];
    expect(run("schedule", { ...base, tasks, waits: [] })).toMatchObject({
      finish: "2026-10-06T20:20",
      sessions: 1,
      idleMinutes: 0,
      provenBest: "all goals",
    });
  });
  test("nobody idles less than the waits allow", () => {
    const tasks = [job("a", 20), job("b", 20), job("c", 20)];
    const waits = [{ from: "a", to: "b", leastMinutes: 45 }];
    // c within the wait, 25 minutes are left over
    expect(run("schedule", { ...base, tasks, waits })).toMatchObject({
      idleMinutes: 25,
      provenBest: "all goals",
    });
  });
});

describe("several people", () => {
  test("stay from the first start to the last end: work that parts evenly leaves nobody idle", () => {
    const tasks = [hands("a", 10), hands("b", 20), hands("c", 30)];
    const plan = (more: object) =>
      run("schedule", { ...base, tasks, waits: [], capacity: { person: 2 }, ...more });
    expect(plan({})).toMatchObject({ finish: "2026-10-05T18:30", idleMinutes: 0, provenBest: "all goals" });
    // of an odd minute of work one of two is idle
    const odd = [...tasks, hands("d", 1)];
    expect(plan({ tasks: odd })).toMatchObject({ idleMinutes: 1, provenBest: "all goals" });
    // b is an hour after a: 90 minutes by two, less 61 of work
    const waits = [{ from: "a", to: "b", leastMinutes: 60 }];
    expect(plan({ tasks: odd, waits })).toMatchObject({ idleMinutes: 119, provenBest: "all goals" });
  });
});

describe("several people with set-ups", () => {
  const coat = (task: string, setup?: string) => hands(task, 10, setup === undefined ? {} : { setup });
  const given = { ...base, waits: [], capacity: { person: 2 }, setups: { anyOther: 5 } };
  const tasks = [coat("a", "thin"), coat("b", "full"), coat("c", "thin"), coat("d", "full")];
  test("each keeps a pad and nobody changes", () => {
    const plan = run("schedule", { ...given, tasks }) as { who: Record<string, number> };
    expect(plan).toMatchObject({ finish: "2026-10-05T18:20", idleMinutes: 0, provenBest: "all goals" });
    const { a, b, c, d } = plan.who;
    expect([a === c, b === d, a === b]).toEqual([true, true, false]);
    expect([a, b].toSorted()).toEqual([1, 2]);
  });
  test("of three pads one person changes once: 25 minutes instead of 20", () => {
    const plan = run("schedule", { ...given, tasks: [...tasks.slice(0, 3), coat("d", "tint")] });
    expect(plan).toMatchObject({ finish: "2026-10-05T18:25", idleMinutes: 10, provenBest: "all goals" });
  });
  test("the boards of a round have one pair of hands", () => {
    const round = tasks.map((task) => ({ ...task, setup: "thin", round: "edge" }));
    const plan = run("schedule", { ...given, tasks: [...round, coat("e", "full")] });
    const { e, ...edge } = (plan as { who: Record<string, number> }).who;
    expect(new Set(Object.values(edge)).size).toBe(1);
    expect(Object.values(edge)).not.toContain(e);
  });
  const replan = (more: object) => ({
    ...given,
    tasks,
    replan: {
      now: "2026-10-05T18:11",
      starts: { c: "2026-10-05T18:11", d: "2026-10-05T18:11" },
      done: { a: "2026-10-05T18:00", b: "2026-10-05T18:01" },
      ...more,
    },
  });
  test("after what is done everybody goes on with what is in the hand", () => {
    const plan = run("schedule", replan({ who: { a: 2, b: 1 } }));
    expect(plan).toMatchObject({ moved: [], isFewestMoved: true, who: { a: 2, b: 1, c: 2, d: 1 } });
  });
  test.each([
    ["replan.who", {}],
    ["replan.who.a", { who: { a: 3, b: 1 } }],
    ["replan.who.z", { who: { z: 1 } }],
  ])("%s is refused", (field, more) => {
    expect(refusal("schedule", replan(more)).field).toBe(field);
  });
});

describe("a coat came late", () => {
  const coats = ["a", "b", "c"].flatMap((board) => [1, 2].map((n) => hands(`${board}${n}`, 30)));
  const waits = ["a", "b", "c"].map((board) => ({ from: `${board}1`, to: `${board}2`, leastMinutes: 1320 }));
  const trial = { ...base, tasks: coats, waits };
  const starts = {
    ...{ a1: "2026-10-05T18:00", b1: "2026-10-05T18:30", c1: "2026-10-05T19:00" },
    ...{ a2: "2026-10-06T18:00", b2: "2026-10-06T18:30", c2: "2026-10-06T19:00" },
  };
  const { a1, b1, c1 } = starts;
  const replan = (late: Record<string, string>, now: string, more = {}) => ({
    ...trial,
    ...more,
    replan: { starts, now, done: { a1, b1, c1, ...late } },
  });
  test("a coat that came late within its slack moves nothing", () => {
    const plan = run("schedule", replan({ a1: "2026-10-05T19:30" }, "2026-10-05T20:30"));
    expect(plan).toMatchObject({
      moved: [],
      isFewestMoved: true,
      starts: { ...starts, a1: "2026-10-05T19:30" },
    });
  });
  test("the finish is kept before the starts: two change places rather than one end later", () => {
    // a1 ended at 21:00, so a2 can start at 19:00, where c2 was
    const plan = run("schedule", replan({ a1: "2026-10-05T20:30" }, "2026-10-05T21:30"));
    expect(plan).toMatchObject({
      moved: ["a2", "c2"],
      isFewestMoved: true,
      starts: { a2: "2026-10-06T19:00", b2: starts.b2, c2: "2026-10-06T18:00" },
      finish: "2026-10-06T19:30",
    });
  });
  test("what ends later anyway moves only what cannot stay", () => {
    const plan = run("schedule", replan({ a1: "2026-10-05T21:00" }, "2026-10-05T21:30"));
    expect(plan).toMatchObject({
      moved: ["a2"],
      isFewestMoved: true,
      starts: { a2: "2026-10-06T19:30", b2: starts.b2, c2: starts.c2 },
      provenBest: "finish",
    });
  });
  test("a coat that is behind is not put into the past, and what is to come stays", () => {
    const given = { ...trial, replan: { starts, now: "2026-10-05T18:45", done: { a1 } } };
    expect(run("schedule", given)).toMatchObject({ moved: ["b1"], starts: { b1: "2026-10-05T19:30", c1 } });
  });
  test.each([
    ["replan.done.a9", { done: { a9: a1 } }],
    ["replan.starts.a9", { starts: { a9: a1 } }],
    ["replan.done.c1", { now: "2026-10-05T18:45", done: { c1 } }],
    ["replan.now", { now: "2026-10-05T25:00" }],
  ])("%s is refused", (field, change) => {
    const given = { ...trial, replan: { starts, now: "2026-10-05T21:30", ...change } };
    expect(refusal("schedule", given).field).toBe(field);
  });
  test("a most-wait that is over is named", () => {
    const most = waits.map((wait) => ({ ...wait, mostMinutes: 1500 }));
    const given = replan({}, "2026-10-06T20:00", { waits: most });
    const refused = refusal("schedule", given);
    expect(refused.field).toBe("replan.now");
    expect(refused.message).toContain("1500 minutes after a1");
  });
});

describe("a wait over a night", () => {
  const night = (more = {}) => [{ from: "a1", to: "a2", leastMinutes: 10, otherWindow: true, ...more }];
  test("is for another window, though the minutes would fit this one", () => {
    expect(run("schedule", { ...base, waits: night() })).toMatchObject({
      starts: { a2: "2026-10-06T18:00" },
      sessions: 2,
      provenBest: "all goals",
    });
  });
  test("a coat that came late the next morning may be followed the same evening", () => {
    const replan = (a1: string, now: string) => ({
      ...base,
      windows: [...base.windows, evening("2026-10-07")],
      waits: night(),
      replan: { starts: {}, now, done: { a1 } },
    });
    expect(run("schedule", replan("2026-10-06T09:00", "2026-10-06T10:00"))).toMatchObject({
      starts: { a2: "2026-10-06T18:00" },
    });
    // in the evening itself the next one is meant
    expect(run("schedule", replan("2026-10-06T18:00", "2026-10-06T18:40"))).toMatchObject({
      starts: { a2: "2026-10-07T18:00" },
    });
  });
  const dries = { task: "a2", minutes: 30, hands: false };
  test.each([
    ["waits[0].otherWindow", { tasks: [hands("a1", 30), dries] }],
    ["waits[0].otherWindow", { windows: [evening("2026-10-05")] }],
    ["waits[0].mostMinutes", { waits: night({ mostMinutes: 1000 }) }],
    ["windows", { replan: { starts: {}, now: "2026-10-06T21:00", done: { a1: "2026-10-06T20:00" } } }],
  ])("%s is refused", (field, more) => {
    expect(refusal("schedule", { ...base, waits: night(), ...more }).field).toBe(field);
  });
  test("the shortest night between is the nearest that a most-wait can be", () => {
    const waits = night({ mostMinutes: 1000 });
    expect(refusal("schedule", { ...base, waits }).limits).toEqual({ min: 1260 });
  });
});

describe("what is refused", () => {
  test.each([
    ["windows[0]", { windows: [["2026-10-05T21:00", "2026-10-05T18:00"]] }],
    ["windows[0][0]", { windows: [["2027-03-28T02:30", "2027-03-28T05:00"]] }],
    ["zone", { zone: "Europe/Nowhere" }],
    ["tasks[0].jar", { tasks: [hands("a1", 30, { jar: "J9" }), hands("a2", 30)] }],
    ["tasks[1].task", { tasks: [hands("a1", 30), hands("a1", 30)] }],
    ["tasks[0].minutes", { tasks: [hands("a1", 181), hands("a2", 30)] }],
    ["tasks[0].needs.oven", { tasks: [hands("a1", 30, { needs: { oven: 1 } }), hands("a2", 30)] }],
    ["tasks[0].needs.person", { tasks: [hands("a1", 30, { needs: { person: 0 } }), hands("a2", 30)] }],
    ["waits[0].to", { waits: [{ from: "a1", to: "a9", leastMinutes: 5 }] }],
    ["waits[0].to", { waits: [{ from: "a1", to: "a1", leastMinutes: 5 }] }],
    ["waits[0].mostMinutes", { waits: [{ from: "a1", to: "a2", leastMinutes: 5, mostMinutes: 4 }] }],
    ["waits[0].mostMinutes", { waits: [{ from: "a1", to: "a2", leastMinutes: 400, mostMinutes: 600 }] }],
  ])("%s", (field, change) => {
    expect(refusal("schedule", { ...base, ...change }).field).toBe(field);
  });
  test("waits in a ring are named", () => {
    const waits = [
      { from: "a1", to: "a2", leastMinutes: 5 },
      { from: "a2", to: "a1", leastMinutes: 5 },
    ];
    expect(refusal("schedule", { ...base, waits }).message).toMatch(/a1, a2|a2, a1/);
  });
});
