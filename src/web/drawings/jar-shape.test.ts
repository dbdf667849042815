import { expect, test } from "vitest";
import { jarBox, jarScale, levelAt, radiusAt } from "./jar-shape.ts";

test("within the straight sides equal volumes stand equally high (a cylinder: V = πr²h)", () => {
  const low = levelAt(0.2) - levelAt(0.3);
  const high = levelAt(0.5) - levelAt(0.6);
  expect(Math.abs(low - high)).toBeLessThan(1e-6);
  expect(radiusAt(60)).toBe(38);
});

test("the neck is narrower, so the same volume stands higher there", () => {
  expect(levelAt(0.95) - levelAt(1)).toBeGreaterThan(levelAt(0.5) - levelAt(0.55));
});

test("empty is the bottom, full the brim, and more than full is no higher", () => {
  expect(levelAt(0)).toBe(jarBox.bottom);
  expect(levelAt(1)).toBeCloseTo(jarBox.full, 9);
  expect(levelAt(1.4)).toBe(jarBox.full);
});

test("the level rises with every drop", () => {
  const levels = Array.from({ length: 101 }, (_, i) => levelAt(i / 100));
  levels.slice(1).forEach((level, i) => {
    expect(level).toBeLessThan(levels[i] as number);
  });
});

test("an eighth of the volume is half the size", () => expect(jarScale(125, 1000)).toBeCloseTo(0.5, 12));
