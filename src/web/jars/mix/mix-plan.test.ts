import { expect, test } from "vitest";
import { aqueous } from "../../../core/solution/composition.ts";
import { massFraction } from "../../../core/units.ts";
import { asGrams } from "../as-typed.ts";
import { type MixFrom, type MixGiven, mixPlan, recipeOf } from "./mix-plan.ts";
import { trapIn } from "./traps.ts";

const nothing: MixGiven = {
  flakes: undefined,
  cut: undefined,
  alcohol: undefined,
  makes: undefined,
  vessel: undefined,
};
// 95 % by volume is 92.4 % by mass (OIML R 22)
const from: MixFrom = {
  resins: [{ massShare: 1, moistureMassFraction: 0, waxMassFraction: 0, insolubleMassFraction: 0 }],
  composition: aqueous("ethanol", massFraction(0.92408)),
  scale: undefined,
  jug: undefined,
};
const grams = (g: number) => ({ typed: `${g} g`, unit: "g", si: g / 1e3 });
const twoPounds = { typed: "2 lb", unit: "lb-cut", si: 2 * 119.826427 };

test("57 g to a 2 lb cut: 238 mL or 193 g of alcohol makes 285 mL (published swelling, mass balance)", () => {
  const plan = mixPlan({ ...nothing, flakes: grams(57), cut: twoPounds }, from);
  expect(plan?.ok && plan.value.solventMl).toBeCloseTo(237.8, 0);
  expect(plan?.ok && plan.value.solventG).toBeCloseTo(193, 0);
  expect(plan?.ok && plan.value.solutionMl).toBeCloseTo(285.1, 0);
});

const untouched = { flakes: "", cut: "", alcohol: "", makes: "" };
const trap = (typed: Partial<typeof untouched>) => trapIn({ ...untouched, ...typed }, recipeOf(from));
const cuts = (found: ReturnType<typeof trap>) =>
  found?.meant.map((one) => Number(one.cutLbPerGal.toFixed(2)));

// Common practice: 2 oz of flakes to 8 fl oz is a 2 lb cut; with the alcohol weighed it is 1.69.
test("8 ounces by the jug and on the scale are two cuts", () => {
  const found = trap({ flakes: "2 oz", alcohol: "8 oz" });
  expect(found?.kind).toBe("ounce");
  expect(found?.meant.map((one) => one.by)).toEqual(["volume", "mass"]);
  expect(cuts(found)).toEqual([2, 1.69]);
  const byCut = trap({ cut: "2 lb", alcohol: "8 oz" });
  expect(byCut?.meant[0]?.ifOtherLbPerGal).toBeCloseTo(1.69, 2);
});

// 2 oz to a US pint is a 1 lb cut, to an imperial one of 20 fl oz 0.83.
test("a pint is of two gallons; a fluid ounce is nearly one", () => {
  const found = trap({ flakes: "2 oz", alcohol: "1 pint" });
  expect([found?.kind, cuts(found)]).toEqual(["pint", [1, 0.83]]);
  expect(trap({ flakes: "2 oz", alcohol: "8 fl oz" })).toBeUndefined();
  expect(trap({ flakes: "2 oz", alcohol: found?.meant[0]?.typed ?? "" })).toBeUndefined();
});

// A maker meant 2 lb by the cup and had about three quarters.
test("a cup of flakes weighs little", () => {
  const found = trap({ flakes: "1 cup", cut: "2 lb" });
  expect(found?.kind).toBe("flakes");
  expect(found?.meant[1]?.ifOtherLbPerGal).toBeCloseTo(0.75, 1);
});

// 1 to 4 by weight is 1.69 lb; 1 g to 4 mL is 250 g/L, 2.09 lb.
test("parts are three cuts, wherever they are typed", () => {
  expect(cuts(trap({ cut: "1:4" }))).toEqual([1.69, 2.09, 0.75]);
  expect(cuts(trap({ flakes: "1 part", alcohol: "4 parts" }))).toEqual([1.69, 2.09, 0.75]);
});

test("a glass and a cut are enough; one thing alone is not", () => {
  const plan = mixPlan({ ...nothing, cut: twoPounds, vessel: 500e-6 }, from);
  expect(plan?.ok && plan.value.solutionMl).toBeCloseTo(450, 6); // a tenth stays free to shake in
  expect(mixPlan({ ...nothing, cut: twoPounds }, from)).toBeUndefined();
  expect(mixPlan({ ...nothing, vessel: 500e-6 }, from)).toBeUndefined();
});

test("three amounts are one too many, and the refusal names the third", () => {
  const plan = mixPlan({ ...nothing, flakes: grams(57), cut: twoPounds, alcohol: grams(100) }, from);
  expect(plan?.ok).toBe(false);
  expect(plan?.ok === false && plan.error.code).toBe("contradiction");
});

test("a weight that was worked out is written as a scale shows it", () => {
  expect(asGrams(57.04).typed).toBe("57 g");
  expect(asGrams(192.98).typed).toBe("193 g");
});
