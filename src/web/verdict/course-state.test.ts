import { expect, test } from "vitest";
import { type CoursePoint, equalFrom } from "./course-state.ts";

const points = (...words: readonly ("different" | "equal" | "unclear")[]): CoursePoint[] =>
  words.map((verdict, i) => ({ coat: i + 1, pair: { verdict } as CoursePoint["pair"] }));

test.each([
  [points("different", "unclear", "equal", "equal"), 3],
  [points("equal", "different", "equal"), 3],
  [points("equal", "equal"), 1],
  [points("equal", "unclear"), null],
])("from the last coat backwards, and no further than the first that is not equal", (course, from) => {
  expect(equalFrom(course)).toBe(from);
});
