import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { cutFromPoundsPerUsGallon, metre } from "../units.ts";
import { volumeSolids } from "./film.ts";
import { type CoatKind, equalCoats, readyToRub } from "./rubbing-out.ts";

const um = (x: number) => metre(x / 1e6);
const rubbing = { needed: um(76), least: um(25), removes: um(12) };

test.each([
  [20, 3, 10, 56, 6, "may go through"],
  [10, 1, 10, 66, 7, "goes through"],
  [90, 10, 10, 0, 0, "holds"],
  [45, 3, 10, 31, 4, "holds"],
  [45, 5, 10, 31, 4, "may go through"],
] as const)("%d ± %d µm, %d a coat: %d to go, %d coats, %s", (film, u, each, toGo, coats, risk) => {
  const found = readyToRub(um(film), u / 1e6, um(each), rubbing);
  expectNear(found.toGo * 1e6, toGo, { absolute: 1e-9 });
  expect([found.coatsToGo, found.risk]).toEqual([coats, risk]);
});

test("a coat that adds nothing never brings it", () => {
  expect(readyToRub(um(20), 0, um(0), rubbing).coatsToGo).toBeNull();
});

const kind = (lb: number, wetUm: number, transfer = 1): CoatKind => ({
  wet: um(wetUm),
  solids: volumeSolids(cutFromPoundsPerUsGallon(lb)),
  transfer,
});

// A refinisher's rounded table: at 4 mil wet, ½, 1, 1½, 2 and 3 lb leave 0.19, 0.36, 0.52, 0.66 and 0.92 mil.
test.each([
  [0.5, 0.19],
  [1, 0.36],
  [1.5, 0.52],
  [3, 0.92],
])("coats of %d lb to one of 2 lb, by the printed builds", (lb, mil) => {
  expectNear(equalCoats(1, kind(2, 100), kind(lb, 100)), 0.66 / mil, { relative: 0.03 });
});

test("there and back is where it began, and half of it lost is twice the coats", () => {
  const [brushed, padded] = [kind(2, 114), kind(1, 57, 0.5)];
  expectNear(equalCoats(equalCoats(6, brushed, padded), padded, brushed), 6, { relative: 1e-12 });
  expectNear(equalCoats(6, brushed, kind(2, 114, 0.5)), 12, { relative: 1e-12 });
});
