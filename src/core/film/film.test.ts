import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { DomainError } from "../domain-error.ts";
import {
  cutFromPoundsPerUsGallon,
  kilogramPerCubicMetre,
  metre,
  usGallonM3,
  volumeFraction,
} from "../units.ts";
import { dryFromMass, dryFromWet, filmAfterEachCoat, volumeSolids } from "./film.ts";

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

const mil = 25.4e-6;
const squareFoot = 0.3048 ** 2;
const dryOf = (lb: number, wet: number, transfer = 1): number =>
  dryFromWet(metre(wet), volumeSolids(cutFromPoundsPerUsGallon(lb)), transfer);

// Printed film-thickness formulae: a US gallon covers 1604 square feet at one mil; a litre a square metre at a millimetre.
test("the identities of wet and dry films", () => {
  expectNear(dryFromWet(metre(usGallonM3 / (1604 * squareFoot)), volumeFraction(1), 1), mil, {
    relative: 2e-4,
  });
  expectNear(dryFromWet(metre(1e-3 / 1), volumeFraction(0.5), 1), 0.5e-3, { relative: 1e-12 });
  expectNear(dryFromMass(0.1, 0.2, kilogramPerCubicMetre(1000), 1), 20e-6, { relative: 1e-12 });
});

// The trade's table of dry build, in mil, to its last figure: a brushed coat of 4 mil wet, a pad's pass of 1 mil.
test.each([
  [0.5, 4, 0.19],
  [1, 4, 0.36],
  [1.5, 4, 0.52],
  [2, 4, 0.66],
  [3, 4, 0.92],
  [1, 1, 0.09],
  [2, 1, 0.17],
])("%d lb, %d mil wet: %d mil dry", (lb, wet, dry) => {
  expectNear(dryOf(lb, wet * mil) / mil, dry, { absolute: 0.006 });
});

// A guitar takes a US pint of 2 lb: 78 mL of solids on 0.53 m², half of which stays, is a film of 73 µm. Three mil with
// half lost take 0.92 L of 2 lb to a square metre, and a mil of resin weighs 30 g. A first coat covers 300–400 square feet
// to a gallon: 5.3–4.0 mil.
test("consumption and coverage as the trade has them", () => {
  const pint = usGallonM3 / 8;
  expectNear(dryOf(2, pint) * 1e6, 78, { relative: 0.01 });
  expectNear(dryOf(2, pint / 0.53, 0.5) * 1e6, 73, { relative: 0.02 });
  expectNear(3 * mil, dryOf(2, 0.92e-3, 0.5), { relative: 0.01 });
  expectNear(mil * 1205 * 1e3, 30, { relative: 0.03 });
  for (const [feet, thick] of [
    [300, 5.3],
    [400, 4],
  ] as const)
    expectNear(usGallonM3 / (feet * squareFoot) / mil, thick, { absolute: 0.05 });
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
