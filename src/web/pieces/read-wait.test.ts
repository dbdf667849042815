import fc from "fast-check";
import { expect, test } from "vitest";
import { readWait, waitTyped } from "./read-wait.ts";

// By arithmetic.
test.each([
  ["90", 90],
  ["15 min", 15],
  ["2h", 120],
  ["1 h 30 min", 90],
  ["1,5 h", 90],
  ["14 days", 20160],
  ["2 weeks", 20160],
  ["overnight", undefined],
  ["2 h or so", undefined],
  ["-5", undefined],
  ["", undefined],
])("%s", (typed, minutes) => expect(readWait(typed)).toBe(minutes));

test("what is written out is read back", () => {
  fc.assert(fc.property(fc.integer({ min: 0, max: 500_000 }), (m) => readWait(waitTyped(m)) === m));
});
