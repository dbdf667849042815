import { expect, test } from "vitest";
import { planRows } from "./plan-rows.ts";

const chair = (n: number, what: "sand" | "coat", day: string, at: string) => ({
  ...{ step: `${what} ${n}`, what, surface: `chair ${n}`, day: `2026-10-${day}`, at },
  ...(what === "coat"
    ? { minutes: 10, leastWaitMinutes: 120, millilitres: 30 }
    : { minutes: 5, leastWaitMinutes: 0 }),
});
const sanded = [
  chair(1, "sand", "05", "18:00"),
  chair(2, "sand", "05", "18:05"),
  chair(3, "sand", "05", "18:10"),
  chair(4, "sand", "05", "18:15"),
];
const tell = (rows: ReturnType<typeof planRows>) =>
  rows.map(({ name, day, at, until, minutes, millilitres }) => [
    name,
    `${day?.slice(8)} ${at}${until === undefined ? "" : ` to ${until}`}`,
    minutes,
    millilitres,
  ]);

// By hand: four times 5 minutes from 18:00; three coats of 10 from 18:20, and the fourth on the next evening.
test("the same step on one evening is one row with its sums, on another evening it has a row of its own", () => {
  const coats = [
    chair(1, "coat", "05", "18:20"),
    chair(2, "coat", "05", "18:30"),
    chair(3, "coat", "05", "18:40"),
    chair(4, "coat", "06", "18:00"),
  ];
  expect(tell(planRows([...sanded, ...coats]))).toEqual([
    ["Sand to 220, wipe off the dust: chair 1 to chair 4", "05 18:00 to 18:20", 20, 0],
    ["Coat 1: chair 1 to chair 3", "05 18:20 to 18:50", 30, 90],
    ["Coat 1: chair 4", "06 18:00", 10, 30],
  ]);
});

// By hand: two at work at once from 18:20; the places to dry are free again at 20:30.
test("two people at once are one row; after a pause on the same evening the hours are told anew", () => {
  const coats = [
    chair(1, "coat", "05", "18:20"),
    chair(2, "coat", "05", "18:20"),
    chair(3, "coat", "05", "20:30"),
    chair(4, "coat", "05", "20:30"),
  ];
  expect(tell(planRows(coats))).toEqual([
    ["Coat 1: chair 1 and chair 2", "05 18:20 to 18:30", 20, 60],
    ["Coat 1: chair 3 and chair 4", "05 20:30 to 20:40", 20, 60],
  ]);
});

test("coats that are on stand apart from those that are not, and so do different waits after them", () => {
  const coats = [1, 2, 3, 4].map((n) => chair(n, "coat", "05", `18:${n}0`));
  const isOn = ({ surface }: { readonly surface?: string }) => (surface === "chair 1" ? "on" : undefined);
  expect(planRows(coats, isOn).map(({ name, done }) => [name, done])).toEqual([
    ["Coat 1: chair 1", "on"],
    ["Coat 1: chair 2 to chair 4", undefined],
  ]);
  const next = [chair(1, "coat", "05", "20:50"), chair(2, "coat", "06", "18:00")];
  expect(planRows([...coats.slice(0, 2), ...next]).map(({ name, wait }) => [name, wait])).toEqual([
    ["Coat 1: chair 1", "2 h"],
    ["Coat 1: chair 2", "the night"],
    ["Coat 2: chair 1", ""],
    ["Coat 2: chair 2", ""],
  ]);
});

test("a piece that is worked all at once has a row a step", () => {
  const whole = sanded.map(({ surface: _, ...step }) => step);
  expect(planRows(whole)).toHaveLength(4);
});
