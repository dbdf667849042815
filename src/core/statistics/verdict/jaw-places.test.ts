import { expect, test } from "vitest";
import { placesKnown, placesThatKeepSides } from "./jaw-places.ts";

test.each([
  [[6, 12], 0],
  [[-0.1, 0.5], 1],
  [[0.01, 0.03], 3],
  [[2, 2], 4],
] as const)("a difference in %j is told to %d places", (interval, places) => {
  expect(placesKnown(interval)).toBe(places);
});

test.each([
  [[4.7, 11.2], 5, 1],
  [[-3.01, 4.98], 5, 2],
  [[0.3, 8.2], 5, 1],
  [[-8.4, 2.1], 5, 0],
] as const)("ends %j against a band of %d need %d places", (interval, matters, places) => {
  expect(placesThatKeepSides(interval, matters)).toBe(places);
});
