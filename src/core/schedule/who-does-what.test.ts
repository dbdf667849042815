import { expect, test } from "vitest";
import type { Crew } from "./crew.ts";
import { whoDoesWhat } from "./who-does-what.ts";

const [thin, full, tint] = [0, 1, 2];
const block = (task: number, kit: number) => ({ tasks: [task], minutes: 10, kit, doneBy: -1 });
const crew: Crew = {
  people: 2,
  blocks: [block(0, thin), block(1, tint), block(2, full), block(3, thin)],
  blockOf: Int32Array.of(0, 1, 2, 3),
  // tint to thin takes longer than either to full
  change: [Int32Array.of(0, 3, 9), Int32Array.of(6, 0, 9), Int32Array.of(9, 3, 0)],
};

// By hand: the last can follow the first alone, so the third, which could follow either, is for the other person.
test("a choice that leaves nobody for a later task is taken back", () => {
  const who = whoDoesWhat(crew, [0, 0, 13, 14]);
  expect([who[3], who[2]]).toEqual([who[0], who[1]]);
  expect(who[0]).not.toBe(who[1]);
});

test("a wish is kept where it can be, and what somebody began is theirs", () => {
  expect([...whoDoesWhat(crew, [0, 0, 13, 30], [1, 0, 1, 0])]).toEqual([1, 0, 1, 0]);
  const blocks = crew.blocks.map((b, k) => (k === 0 ? { ...b, doneBy: 1 } : b));
  expect([...whoDoesWhat({ ...crew, blocks }, [0, 0, 13, 14])]).toEqual([1, 0, 0, 1]);
});
