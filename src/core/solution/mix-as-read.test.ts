import { describe, expect, test } from "vitest";
import { parseParts } from "../quantity/parse-parts.ts";
import { type Expected, parseQuantity } from "../quantity/parse-quantity.ts";
import type { Reading } from "../quantity/reading.ts";
import { cutFromPoundsPerUsGallon, kilogram, massFraction, poundsPerUsGallonFromCut } from "../units.ts";
import { aqueous } from "./composition.ts";
import { cutsOfParts } from "./cut-of-parts.ts";
import { mixesAsRead } from "./mix-as-read.ts";
import { blendOfResins, plainResin } from "./resin.ts";
import { strengthAt20C } from "./strength.ts";

const recipe = {
  resin: blendOfResins([plainResin]),
  solvent: aqueous("ethanol", massFraction(0.924077)), // 95 % by volume
  temperature: strengthAt20C,
};
const ounces = (n: number) => kilogram(n * 0.028349523125);
const pounds = poundsPerUsGallonFromCut;

function readingsOf(typed: string, expected: Expected): readonly Reading[] {
  const read = parseQuantity(typed, expected);
  if (!read.ok) return read.error.readings ?? [];
  return read.value.instead === undefined ? [read.value] : [read.value, read.value.instead];
}

describe("one mix, read both ways", () => {
  // Common practice, by mass balance: 2 oz to 8 fl oz is a 2 lb cut; with the 8 oz weighed it is 1.69.
  test("2 oz to 8 oz of alcohol: fluid 2.00, by weight 1.69", () => {
    const readings = readingsOf("8 oz", { dimensions: ["volume", "mass"] });
    const [fluid, weight] = mixesAsRead(recipe, { resin: ounces(2) }, "solvent", readings);
    expect(pounds(fluid?.mixed.cut as never)).toBeCloseTo(2, 3);
    expect(pounds(weight?.mixed.cut as never)).toBeCloseTo(1.69, 2);
    expect(fluid?.cutIfOther).toBe(weight?.mixed.cut);
    expect(weight?.cutIfOther).toBe(fluid?.mixed.cut);
  });

  // 16 oz weight to the gallon is 1 lb: 2 oz a US pint = 1 lb cut; to an imperial pint, 20 of its fl oz, 0.833.
  test("2 oz to a pint: US 1.00, imperial 0.83", () => {
    const readings = readingsOf("1 pint", { dimensions: ["volume"] });
    const [us, imperial] = mixesAsRead(recipe, { resin: ounces(2) }, "solvent", readings);
    expect(pounds(us?.mixed.cut as never)).toBeCloseTo(1, 3);
    expect(pounds(imperial?.mixed.cut as never)).toBeCloseTo(0.8327, 3);
  });

  // A maker who measured flakes by the cup and meant 2 lb had about three quarters.
  test("flakes for 2 lb by the cup come out near ¾ lb", () => {
    const readings = readingsOf("1 cup", { dimensions: ["mass"], flakes: true });
    const solvent = mixesAsRead(recipe, { cut: cutFromPoundsPerUsGallon(2) }, "resin", readings)[1];
    expect(pounds(solvent?.mixed.cut as never)).toBeCloseTo(2, 9);
    expect(pounds(solvent?.cutIfOther as never)).toBeCloseTo(0.75, 1);
  });

  test("a cut and alcohol read two ways: what is weighed out for one is not what the other needs", () => {
    const readings = readingsOf("8 oz", { dimensions: ["volume", "mass"] });
    const two = { cut: cutFromPoundsPerUsGallon(2) };
    const [fluid, weight] = mixesAsRead(recipe, two, "solvent", readings);
    expect(pounds(fluid?.cutIfOther as never)).toBeCloseTo(1.69, 2);
    expect(pounds(weight?.cutIfOther as never)).toBeCloseTo((2 * 2) / 1.693, 2);
  });

  test("a pint of finished liquid: a cut given is the same for both, resin given is not", () => {
    const readings = readingsOf("1 pint", { dimensions: ["volume"] });
    const [byCut] = mixesAsRead(recipe, { cut: cutFromPoundsPerUsGallon(2) }, "solution", readings);
    expect(pounds(byCut?.cutIfOther as never)).toBeCloseTo(2, 9);
    const [byResin, other] = mixesAsRead(recipe, { resin: ounces(2) }, "solution", readings);
    expect(byResin?.cutIfOther).toBe(other?.mixed.cut);
  });
});

describe("parts", () => {
  const cuts = (text: string) => {
    const parts = parseParts(text);
    if (parts === undefined) throw new Error(text);
    return cutsOfParts(parts, recipe.resin, recipe.solvent).map(({ by, cut }) => [by, pounds(cut)]);
  };

  // Common practice, by mass balance: 1 to 3 by weight is 2.2–2.26 lb, 1 to 4 is 1.69; 20 % weight to volume is 1.67.
  test("by weight 1:3 is 2.26 lb and 1:4 1.69, by weight to volume 1:5 is 1.67", () => {
    expect(cuts("1:3 by weight")).toEqual([["weight", expect.closeTo(2.26, 2)]]);
    expect(cuts("1:4 by weight")).toEqual([["weight", expect.closeTo(1.69, 2)]]);
    expect(cuts("1:5 w/v")).toEqual([["weight-to-volume", expect.closeTo(1.67, 2)]]);
  });

  test("unsaid, all three; by volume it is as uncertain as the flakes' bulk", () => {
    expect(cuts("1:4").map(([by]) => by)).toEqual(["weight", "weight-to-volume", "volume"]);
    const byVolume = cutsOfParts({ resin: 1, solvent: 4, by: "volume" }, recipe.resin, recipe.solvent)[0];
    expect((byVolume?.standardUncertainty ?? 0) / (byVolume?.cut ?? 1)).toBeCloseTo(0.2, 2);
  });
});
