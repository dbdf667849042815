import fc from "fast-check";
import { expect, test } from "vitest";
import { canonicalJson, sameJson } from "./same-json.ts";

test.each([
  ['{"a":1,"b":[true,null]}', ' { "b" : [ true , null ] ,\n"a":1 }'],
  ["1", "1.0"],
  ["1", "10e-1"],
  ["100", "1E+2"],
  ["0.5", "5e-1"],
  ["0", "-0"],
  ["0", "0e99"],
  ["9007199254740993", "9007199254740993.0"],
  ['"A"', '"\\u0041"'],
  ['"/"', '"\\/"'],
  ['{"\\u0061":1}', '{"a":1}'],
  ['{"a":1,"a":2}', '{"a":2}'],
])("%s and %s say the same", (a, b) => {
  expect(sameJson(a, b)).toBe(true);
  expect(sameJson(b, a)).toBe(true);
});

test.each([
  ["9007199254740993", "9007199254740992"],
  ["0.1", "0.1000000000000000055511151231257827"],
  ["1e400", "1e401"],
  ["1", "-1"],
  ["1", '"1"'],
  ["null", "false"],
  ["[1,2]", "[2,1]"],
  ["[]", "{}"],
  ['{"a":1}', '{"a":1,"b":null}'],
  ['"é"', '"e\\u0301"'],
])("%s and %s do not say the same", (a, b) => {
  expect(sameJson(a, b)).toBe(false);
});

/** The keys in another order, and one zero instead of two. */
const shuffledKeys = (value: unknown): unknown => {
  if (value === 0) return 0;
  if (Array.isArray(value)) return value.map(shuffledKeys);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inner]) => [key, shuffledKeys(inner)]),
  );
};

test("the canonical spelling reads as the same value, and any layout and key order has the same one", () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => {
      const text = JSON.stringify(value);
      const spelling = canonicalJson(text);
      expect(JSON.parse(spelling)).toEqual(shuffledKeys(JSON.parse(text)));
      expect(canonicalJson(JSON.stringify(shuffledKeys(JSON.parse(text)), null, 3))).toBe(spelling);
      expect(canonicalJson(spelling)).toBe(spelling);
    }),
    { numRuns: 500 },
  );
});
