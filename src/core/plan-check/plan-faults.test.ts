import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { planFaults } from "./plan-faults.ts";
import { type ClaimedPlan, type PlanFaultCode, type PlanRules, planFaultCodes } from "./plan-rules.ts";

// Two evenings of three hours; two sides of a top and a box, two recipes, a rack of two places, Ann who helps on the first.
const rules: PlanRules = {
  tasks: [
    { task: "under", minutes: 30, hands: true, kit: "thin", jar: "J1" },
    { task: "under dries", minutes: 60, hands: false, needs: { rack: 1 } },
    { task: "top", minutes: 30, hands: true, kit: "thin", notBefore: 100 },
    { task: "box a", minutes: 10, hands: true, kit: "full", round: "box" },
    { task: "box b", minutes: 10, hands: true, kit: "full", round: "box" },
    { task: "turn", minutes: 5, hands: true, by: ["Ann"] },
    { task: "carry", minutes: 5, hands: true, by: ["Ann"] },
    { task: "box dries", minutes: 60, hands: false, needs: { rack: 1 } },
    { task: "lid dries", minutes: 60, hands: false, needs: { rack: 1 } },
  ],
  waits: [
    { from: "under", to: "under dries", leastMinutes: 0, mostMinutes: 0 },
    { from: "under dries", to: "top", leastMinutes: 10, mostMinutes: 1500 },
    { from: "box b", to: "box dries", leastMinutes: 0, mostMinutes: 60 },
  ],
  capacity: { person: 1, rack: 2 },
  windows: [
    [0, 180],
    [1440, 1620],
  ],
  people: { Ann: [[60, 120]] },
  jars: { J1: 0 },
  changes: { others: 5, between: [{ from: "full", to: "thin", minutes: 12 }] },
  notTogether: [["under", "under dries", "top"]],
};
const starts = {
  under: 0,
  "under dries": 30,
  "box a": 35,
  "box b": 45,
  "box dries": 55,
  turn: 60,
  carry: 70,
  top: 110,
  "lid dries": 120,
};
const right: ClaimedPlan = { starts, finish: 180, lowerBound: 170, sessions: 2, idleMinutes: 5 + 55 + 5 };

test("a right plan has no faults", () => {
  expect(planFaults(rules, right)).toEqual([]);
});

const moved = (change: Record<string, number>): ClaimedPlan => ({ starts: { ...starts, ...change } });
const without = ({ under: _, ...others }: typeof starts): ClaimedPlan => ({ starts: others });
const byBoth = { under: 1, top: 1, "box a": 1, "box b": 1 };
const broken: Record<PlanFaultCode, readonly [ClaimedPlan, Partial<PlanRules>?]> = {
  "no start": [without(starts)],
  "unknown task": [moved({ lid: 5 })],
  "no number": [moved({ top: Number.NaN })],
  "no whole minute": [moved({ top: 110.5 })],
  "before its date": [moved({ top: 99 })],
  "before its jar is ready": [{ starts }, { jars: { J1: 1 } }],
  "unknown jar": [{ starts }, { jars: {} }],
  "hands before a window": [moved({ turn: 58 })],
  "hands after a window": [moved({ top: 160 })],
  "hands while nobody is there": [moved({ top: 700 })],
  "least wait cut short": [moved({ "under dries": 31, top: 100 })],
  "most wait overrun": [moved({ "under dries": 31 })],
  "no night between": [
    { starts },
    { waits: [{ from: "under", to: "top", leastMinutes: 0, otherWindow: true }] },
  ],
  "wait of an unknown task": [
    { starts },
    { waits: [...rules.waits, { from: "lid", to: "top", leastMinutes: 0 }] },
  ],
  "too many hands": [moved({ "box a": 101, "box b": 111, "box dries": 121 })],
  "one person at two tasks": [moved({ carry: 63 })],
  "nobody to do it": [
    { starts, who: { ...byBoth, turn: 2, top: 3 } },
    { capacity: { ...rules.capacity, person: 2 } },
  ],
  "too little room": [moved({ "lid dries": 80 })],
  "more than there ever is": [{ starts }, { capacity: { person: 1, rack: 0 } }],
  "no time to change": [moved({ "box a": 80, "box b": 90, "box dries": 100 })],
  "round broken up": [moved({ "box b": 46 })],
  "round out of order": [moved({ "box a": 45, "box b": 35 })],
  "round by two people": [
    { starts, who: { ...byBoth, "box b": 2 } },
    { capacity: { ...rules.capacity, person: 2 } },
  ],
  together: [{ starts }, { notTogether: [["box a", "under dries"]] }],
  finish: [{ ...right, finish: 179 }],
  sessions: [{ ...right, sessions: 1 }],
  "idle minutes": [{ ...right, idleMinutes: 64 }],
  "finish below its bound": [{ ...right, lowerBound: 181 }],
  "proven above its bound": [{ ...right, isFinishProven: true }],
};

test.each(planFaultCodes.map((code) => [code, ...broken[code]] as const))(
  "%s is found",
  (code, plan, other) => {
    expect(planFaults({ ...rules, ...other }, plan).map((fault) => fault.code)).toContain(code);
  },
);

test("hands that do something else meanwhile do not change the kit", () => {
  const tasks = [
    { task: "thin coat", minutes: 10, hands: true, kit: "thin" },
    { task: "label", minutes: 5, hands: true },
    { task: "full coat", minutes: 10, hands: true, kit: "full" },
  ];
  const codes = (full: number) =>
    planFaults(
      { tasks, waits: [], capacity: {}, windows: [[0, 60]], changes: { others: 5, between: [] } },
      { starts: { "thin coat": 0, label: 10, "full coat": full } },
    ).map((fault) => fault.code);
  expect(codes(19)).toEqual(["no time to change"]);
  expect(codes(20)).toEqual([]);
});

test("of several people each changes for itself, and does one task at a time", () => {
  const coat = (task: string, kit: string) => ({ task, minutes: 10, hands: true, kit });
  const tasks = [coat("a", "thin"), coat("b", "full"), coat("c", "thin")];
  const codes = (who: Record<string, number>, b: number) =>
    planFaults(
      { tasks, waits: [], capacity: { person: 2 }, windows: [[0, 60]], changes: { others: 5, between: [] } },
      { starts: { a: 0, b, c: 12 }, who },
    ).map((fault) => fault.code);
  expect(codes({ a: 1, b: 2, c: 1 }, 0)).toEqual([]);
  expect(codes({ a: 1, b: 2, c: 2 }, 0)).toEqual(["no time to change"]);
  expect(codes({ a: 1, b: 1, c: 1 }, 5)).toEqual(["one person at two tasks", "one person at two tasks"]);
  expect(codes({ a: 1, b: 2 }, 0)).toContain("nobody to do it");
});

test("the check imports nothing from the planner", () => {
  const folder = new URL(".", import.meta.url);
  for (const file of readdirSync(folder).filter((name) => !name.endsWith(".test.ts")))
    for (const [, from] of readFileSync(new URL(file, folder), "utf8").matchAll(/from "([^"]+)"/g))
      expect(from).toMatch(/^\.\/[\w-]+\.ts$/);
});
