import fc from "fast-check";
import { expect, test } from "vitest";
import { coatsForFilm } from "./coats-for-film.ts";

// Published volume solids of 5, 10 and 16 % at ½, 1 and 2 lb (trade reference B3): for the film of four coats of 2 lb it
// takes 4·16/10 = 6.4, so 7 of 1 lb, and 4·16/5 = 12.8, so 13 of ½ lb, laid on as wet.
test("the film of four coats of two pounds takes seven of one pound and thirteen of half a pound", () => {
  expect(coatsForFilm(64, 10, 1)).toBe(7);
  expect(coatsForFilm(64, 5, 1)).toBe(13);
  expect(coatsForFilm(64, 16, 1)).toBe(4);
});

test("so many coats reach the film, and one fewer does not", () => {
  const um = fc.double({ min: 0.1, max: 500, noNaN: true });
  fc.assert(
    fc.property(um, um, fc.double({ min: 1, max: 2, noNaN: true }), (film, coat, times) => {
      const n = coatsForFilm(film, coat, times);
      expect((n - 1 + times) * coat).toBeGreaterThanOrEqual(film * (1 - 1e-6));
      if (n > 1) expect((n - 2 + times) * coat).toBeLessThan(film * (1 + 1e-6));
    }),
  );
});

test.each([
  ["filmUm", 0, 10],
  ["filmUm", Number.NaN, 10],
  ["coatUm", 40, -1],
])("%s that is not above 0 is refused by name", (field, film, coat) => {
  expect(() => coatsForFilm(film, coat, 1.2)).toThrow(field);
});
