import { expect, test } from "vitest";
import { parseQuantity } from "./parse-quantity.ts";
import { quantityProblemSentence, sayItAs } from "./problem-sentence.ts";

const asked = (typed: string, gallon?: "imperial") => {
  const read = parseQuantity(typed, { dimensions: ["mass"], flakes: true, ...(gallon ? { gallon } : {}) });
  if (read.ok) throw new Error(`${typed} was read as ${read.value.unit}`);
  return read.error;
};

test("a cup of flakes is asked about: some 85 g of air and resin, or 8 ounces", () => {
  const problem = asked("1 cup");
  expect(problem.code).toBe("flakes-by-volume");
  const [bulk, ounces] = problem.readings ?? [];
  // a cup is 236.588 mL (NIST Handbook 44, appendix C); 0.36 g/mL from memory
  expect((bulk?.si ?? 0) * 1e3).toBeCloseTo(236.588 * 0.36, 2);
  expect((bulk?.standardUncertainty ?? 0) * 1e3).toBeCloseTo((236.588 * 0.25) / Math.sqrt(12), 2);
  expect((ounces?.si ?? 0) * 1e3).toBeCloseTo(8 * 28.349523, 3);
  expect(quantityProblemSentence(problem)).toContain("“85 g” or “8 oz by weight” would do.");
});

test("millilitres of flakes may have been meant as grams, an imperial ounce as one of weight", () => {
  expect(asked("250 ml").readings?.[1]).toMatchObject({ unit: "g", si: 0.25 });
  expect(asked("10 fl oz", "imperial").readings?.[1]?.si).toBeCloseTo(10 * 0.028349523, 7);
});

test("what was meant, typed, is read without a question", () => {
  for (const reading of asked("2 cups").readings ?? []) {
    const again = parseQuantity(sayItAs(reading), { dimensions: ["mass"], flakes: true });
    expect(again.ok && Math.abs(again.value.si / reading.si - 1) < 0.01).toBe(true);
  }
});

test("elsewhere a cup is still no mass", () => {
  const read = parseQuantity("1 cup", { dimensions: ["mass"] });
  expect(read.ok ? null : read.error.code).toBe("wrong-dimension");
});
