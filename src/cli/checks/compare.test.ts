import { expect, test } from "vitest";
import { compare } from "./compare.ts";
import type { ToleranceTable } from "./tolerance.ts";

const passes = (expected: object, got: unknown, tol: ToleranceTable = { "*": ["exact", 0] }) =>
  compare(expected as Record<string, unknown>, got, tol).every((q) => q.ok !== false);

test.each([
  [["rel", 0.01], 100, 101, 101.1],
  [["abs", 0.5], 100, 99.5, 99.4],
  [["exact", 0], 4, 4, 4.0000001],
  [["at-least", 0.1], 10, 9.9, 9.89],
  [["rel", 1e-9, "abs", 0.2], 100, 100.2, 100.3],
] as const)("%j of %d: %d passes, %d does not", (pair, expected, near, far) => {
  expect(passes({ x: expected }, { x: near }, { x: pair })).toBe(true);
  expect(passes({ x: expected }, { x: far }, { x: pair })).toBe(false);
});

test("at-least has no upper end", () => {
  expect(passes({ x: 10 }, { x: 1e6 }, { x: ["at-least", 0] })).toBe(true);
});

test("abs-u counts in the expected standard uncertainty beside or above the key", () => {
  const tol: ToleranceTable = { "*": ["abs-u", 0.1] };
  const expected = { u: 2, ends: [-4, 4] };
  expect(passes(expected, { u: 2, ends: [-4.2, 4.2] }, tol)).toBe(true);
  expect(passes(expected, { u: 2, ends: [-4.2, 4.3] }, tol)).toBe(false);
  expect(passes({ x: 1 }, { x: 1 }, tol)).toBe(false);
});

test("inside, includes and any", () => {
  expect(passes({ x: [1, 2] }, { x: 1 }, { x: ["inside", 0] })).toBe(true);
  expect(passes({ x: [1, 2] }, { x: 2.1 }, { x: ["inside", 0] })).toBe(false);
  expect(passes({ x: ["a"] }, { x: ["b", "a"] }, { x: ["includes", 0] })).toBe(true);
  expect(passes({ x: ["a", "c"] }, { x: ["a"] }, { x: ["includes", 0] })).toBe(false);
  expect(compare({ x: 1 }, { x: 2 }, { x: ["any", 0] })[0]?.ok).toBe(null);
});

test("the tolerance of the innermost key that has one", () => {
  const tol: ToleranceTable = { "*": ["exact", 0], groups: ["abs", 1], median: ["abs", 10] };
  expect(
    passes(
      { groups: [{ group: "A", median: 5, n: 3 }] },
      { groups: [{ group: "A", median: 14, n: 4 }] },
      tol,
    ),
  ).toBe(true);
  expect(passes({ groups: [{ group: "A", n: 3 }] }, { groups: [{ group: "A", n: 5 }] }, tol)).toBe(false);
});

test("null must be absent, and only null or nothing is absent", () => {
  expect(passes({ F: null }, {})).toBe(true);
  expect(passes({ F: null }, { F: null })).toBe(true);
  expect(passes({ F: null }, { F: Number.NaN })).toBe(false);
  expect(passes({ F: null }, { F: 0 })).toBe(false);
});

test("numbers that are not finite, text for a number and a number for text do not pass", () => {
  const wide: ToleranceTable = { "*": ["abs", 1e300] };
  for (const got of [Number.NaN, Number.POSITIVE_INFINITY, "5", null, undefined, [5]])
    expect(passes({ x: 5 }, { x: got }, wide)).toBe(false);
  expect(passes({ x: "5" }, { x: 5 })).toBe(false);
  expect(passes({ x: true }, { x: "true" })).toBe(false);
});

test("lists of objects are matched by their label, in any order, none missing and none over", () => {
  const expected = {
    table: [
      { term: "a", df: 1 },
      { term: "Residuals", df: 9 },
    ],
  };
  expect(
    passes(expected, {
      table: [
        { term: "Residuals", df: 9 },
        { term: "a", df: 1 },
      ],
    }),
  ).toBe(true);
  expect(passes(expected, { table: [{ term: "a", df: 1 }] })).toBe(false);
  expect(passes(expected, { table: [...expected.table, { term: "b", df: 1 }] })).toBe(false);
  expect(passes({ pairs: [{ pair: 5, d: 1 }] }, { pairs: [{ pair: "5", d: 1 }] })).toBe(true);
});

test("lists of text are sets; other lists are in order and of one length", () => {
  expect(passes({ x: ["a", "b"] }, { x: ["b", "a"] })).toBe(true);
  expect(passes({ x: ["a", "b"] }, { x: ["a"] })).toBe(false);
  expect(passes({ x: ["a"] }, { x: ["a", "b"] })).toBe(false);
  expect(passes({ x: [1, 2] }, { x: [2, 1] })).toBe(false);
  expect(passes({ x: [1, 2] }, { x: [1, 2, 3] })).toBe(false);
  expect(passes({ x: [] }, { x: ["a"] })).toBe(false);
  expect(passes({ x: [] }, {})).toBe(false);
  expect(passes({ x: [true, false] }, { x: [true, false] })).toBe(true);
});

test("what should be an object or a list and is not fails once, whatever it held", () => {
  expect(passes({ home: { a: null } }, {})).toBe(false);
  expect(passes({ x: 1 }, undefined)).toBe(false);
  expect(passes({ x: 1 }, { x: 1, more: 2 })).toBe(true);
});
