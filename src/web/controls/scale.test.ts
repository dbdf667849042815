import { expect, test } from "vitest";
import { scaleOf } from "./scale.ts";

test("marks are round and few, ends included when they are round", () => {
  expect(scaleOf(1.3, 1.7, 0, 100).marks).toEqual([1.3, 1.4, 1.5, 1.6, 1.7]);
  expect(scaleOf(0, 24, 0, 100).marks).toEqual([0, 10, 20]);
  expect(scaleOf(-3, 7, 0, 100).marks).toEqual([-2.5, 0, 2.5, 5]);
});

test("a value is placed in proportion", () => {
  const scale = scaleOf(10, 20, 50, 150);
  expect(scale.place(10)).toBe(50);
  expect(scale.place(15)).toBe(100);
  expect(scale.place(22)).toBe(170);
});
