import { beforeEach, expect, test } from "vitest";
import { ReminderClock } from "./reminder-clock.ts";

let nowMs: number;
let timer: { readonly atMs: number; readonly then: () => void } | undefined;
let told: string[];
let clock: ReminderClock;
beforeEach(() => {
  [nowMs, timer, told] = [0, undefined, []];
  clock = new ReminderClock({
    nowMs: () => nowMs,
    wait: (ms, then) => {
      const mine = { atMs: nowMs + ms, then };
      timer = mine;
      return () => {
        if (timer === mine) timer = undefined;
      };
    },
    show: ({ key }) => told.push(key),
  });
});
function passTo(ms: number): void {
  while (timer !== undefined && timer.atMs <= ms) {
    const { atMs, then } = timer;
    timer = undefined;
    nowMs = atMs;
    then();
  }
  nowMs = ms;
}
const at = (key: string, atMs: number) => ({ key, atMs, says: key });

test("each is told once, at its time, however often the list is set again", () => {
  clock.set([at("b", 20), at("a", 10)]);
  passTo(9);
  expect(told).toEqual([]);
  passTo(10);
  clock.set([at("a", 10), at("b", 20)]);
  passTo(30);
  expect(told).toEqual(["a", "b"]);
});

test("what was due before it was heard of is not told, and what is no longer due is dropped", () => {
  passTo(50);
  clock.set([at("long ago", 40), at("written meanwhile", 60), at("later", 70)]);
  clock.set([at("later", 70)]);
  passTo(100);
  expect(told).toEqual(["later"]);
});

test("a page that slept over the time tells it when it wakes, even when the list is set before the timer runs", () => {
  clock.set([at("a", 10)]);
  nowMs = 500;
  clock.set([]);
  expect(told).toEqual(["a"]);
});

test("set to nothing it is silent; another time for the same thing is told anew", () => {
  clock.set([at("a", 10)]);
  clock.set([]);
  passTo(20);
  expect(told).toEqual([]);
  clock.set([at("a", 30)]);
  passTo(30);
  clock.set([at("a", 40)]);
  passTo(40);
  expect(told).toEqual(["a", "a"]);
});
