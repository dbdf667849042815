import { expect, test } from "vitest";
import { aqueous } from "../../../core/solution/composition.ts";
import { massFraction } from "../../../core/units.ts";
import { ifMeant, type MixFrom, type MixGiven, mixPlan, worksOutGrams } from "./mix-plan.ts";

const nothing: MixGiven = {
  flakes: undefined,
  cut: undefined,
  alcohol: undefined,
  makes: undefined,
  vessel: undefined,
};
// 95 % by volume is 92.4 % by mass (OIML R 22)
const from: MixFrom = {
  resin: undefined,
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

// Common practice: 2 oz of flakes to 8 fl oz is a 2 lb cut; with the alcohol weighed it is 1.69.
test("8 ounces by the jug and on the scale are two cuts", () => {
  const flakes = { typed: "2 oz", unit: "oz", si: 0.0566990462 };
  const jug = ifMeant("8 fl oz", { ...nothing, flakes }, from);
  const scale = ifMeant("8 oz weight", { ...nothing, flakes }, from);
  expect([jug?.by, scale?.by]).toEqual(["jug", "scale"]);
  expect(jug?.mixed.cutLbPerGal).toBeCloseTo(2, 2);
  expect(scale?.mixed.cutLbPerGal).toBeCloseTo(1.69, 2);
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
  expect(worksOutGrams(57.04).typed).toBe("57 g");
  expect(worksOutGrams(192.98).typed).toBe("193 g");
});
