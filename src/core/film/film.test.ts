import { describe, expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { cutFromPoundsPerUsGallon, metre } from "../units.ts";
import { filmAfterEachCoat, volumeSolids } from "./film.ts";

const solids = (lb: number): number => 100 * volumeSolids(cutFromPoundsPerUsGallon(lb));
const um = (x: number) => metre(x / 1e6);

// Published percent by volume of a refinisher's handbook, rounded to whole percents: within 1 point.
test.each([
  [0.5, 5],
  [1, 10],
  [2, 16],
])("volume solids of a %d lb cut", (lb, printed) => {
  expect(Math.abs(solids(lb) - printed)).toBeLessThanOrEqual(1);
});

test("three coats of 3 lb are about 4.2 of 2 lb and 7.7 of 1 lb, at equal wet thickness", () => {
  expect((3 * solids(3)) / solids(2)).toBeCloseTo(4.2, 1);
  expect((3 * solids(3)) / solids(1)).toBeCloseTo(7.6, 0);
});

describe("sanding", () => {
  test("comes off the film that is there, coat by coat", () => {
    const films = filmAfterEachCoat(
      [um(20), um(20), um(10)],
      [
        { afterCoat: 2, removed: um(5) },
        { afterCoat: 2, removed: um(1) },
      ],
    );
    expect(films.map((f) => f * 1e6)).toEqual([20, 34, 44].map((x) => expect.closeTo(x, 9)));
  });
  test("to the wood is the end of it", () => {
    expect(filmAfterEachCoat([um(20)], [{ afterCoat: 1, removed: um(20) }])[0]).toBeCloseTo(0, 12);
    expect(() => filmAfterEachCoat([um(20)], [{ afterCoat: 1, removed: um(20.1) }])).toThrow(DomainError);
  });
  test.each([0, 2, 1.5, Number.NaN])("after coat %d of one is refused", (afterCoat) => {
    expect(() => filmAfterEachCoat([um(20)], [{ afterCoat, removed: um(1) }])).toThrow(DomainError);
  });
});
