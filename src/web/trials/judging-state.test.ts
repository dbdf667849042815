import { expect, test } from "vitest";
import { randomFromSeed } from "../../core/random.ts";
import type { Reading } from "../../core/views/judging.ts";
import type { Trial } from "../../core/views/trial.ts";
import type { PatchState } from "../../core/views/trial-patches.ts";
import { drawnOrder, judgedBody, measuredBody, nextOccasion, numberTyped, toRead } from "./judging-state.ts";

const patch = (name: string, leftOut = false) =>
  ({
    patch: name,
    code: name.toUpperCase(),
    coats: 4,
    leftOut: leftOut ? { entry: "x" } : null,
  }) as unknown as PatchState;
const reading = (name: string, occasion = 1, afterCoat = 4) =>
  ({ patch: name, response: "gloss", who: "Ada", occasion, afterCoat }) as unknown as Reading;
const trial = (readings: readonly Reading[]) =>
  ({
    patches: [patch("a"), patch("b"), patch("c", true)],
    readings,
    key: { state: "sealed" },
  }) as unknown as Trial;

test("what is left out is not judged, nor what this judge has read at these coats", () => {
  expect(toRead(trial([]), "gloss", "Ada", 1)).toEqual(["a", "b"]);
  expect(toRead(trial([reading("a")]), "gloss", "Ada", 1)).toEqual(["b"]);
  expect(toRead(trial([reading("a")]), "gloss", "Ben", 1)).toEqual(["a", "b"]);
  expect(toRead(trial([reading("a", 1, 3)]), "gloss", "Ada", 1)).toEqual(["a", "b"]);
});

test("once all are read, the next time is the second", () => {
  expect(nextOccasion(trial([reading("a")]), "gloss", "Ada")).toBe(1);
  expect(nextOccasion(trial([reading("a"), reading("b")]), "gloss", "Ada")).toBe(2);
});

test("the order of a sitting is drawn: every order of two comes up", () => {
  const orders = new Set(
    Array.from({ length: 40 }, (_, i) =>
      drawnOrder(trial([]), "gloss", "Ada", 1, randomFromSeed(`${i}`)).join(""),
    ),
  );
  expect(orders).toEqual(new Set(["ab", "ba"]));
});

test.each([
  ["41,5", 41.5],
  [" 41.5 ", 41.5],
  ["−2", -2],
  ["", null],
  ["forty", null],
  ["4 1", null],
])("%j is typed for %s", (typed, value) => {
  expect(numberTyped(typed)).toBe(value);
});

test("a reading says who, in what light, which turn, after which coat, and that only the code was seen", () => {
  const about = {
    trial: trial([]),
    patch: patch("b"),
    sitting: { response: "gloss", who: "Ada", light: "window", occasion: 1, order: ["a", "b"] },
  };
  const look = { name: "gloss", scale: "measured", unit: "gloss units" } as const;
  expect(measuredBody(about, look, " 41 ", 41)).toEqual({
    patch: "b",
    response: "gloss",
    who: "Ada",
    light: "window",
    seen: "code",
    order: 2,
    occasion: 1,
    afterCoat: 4,
    value: { typed: "41", unit: "gloss units", si: 41 },
  });
  const open = { ...about, trial: { ...trial([]), key: { state: "open" } } as unknown as Trial };
  expect(judgedBody(open, "slight")).toMatchObject({ level: "slight", seen: "recipe" });
});
