import fc from "fast-check";
import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { readExpression } from "./expression.ts";

const value = (text: string, values: readonly number[] = []) => readExpression(text).value(values);

test.each([
  // The usual rules of arithmetic, each worked by hand
  ["1 + 2*3", 7],
  ["(1 + 2)*3", 9],
  ["8 - 2 - 1", 5],
  ["8/2/2", 2],
  ["2^3^2", 512],
  ["-2^2", -4],
  ["2^-1", 0.5],
  ["--3", 3],
  ["2*-3", -6],
  ["1.5e2 + .5", 150.5],
  ["exp(0) + cos(0) + sin(0)", 2],
] as const)("%s = %d", (text, expected) => {
  expect(value(text)).toBe(expected);
});

test("names stand in the order in which they are met, once each", () => {
  const expression = readExpression("b1*(1 - exp(-b2*x)) + b1");
  expect(expression.names).toEqual(["b1", "b2", "x"]);
  expect(Math.abs(expression.value([2, 0.5, 3]) - (2 * (1 - Math.exp(-1.5)) + 2))).toBeLessThan(1e-15);
});

test.each(["", "1 +", "(1", "1)", "2 x", "exp 1", "exp", "1,5", "a = b", "* 2", "sqrt(2)(3)"])(
  "%j is refused",
  (text) => {
    expect(() => readExpression(text)).toThrow(DomainError);
  },
);

test("the refusal says where", () => {
  expect(() => readExpression("12 + ;")).toThrow("from character 5 on");
});

test.each([
  "a + b*a",
  "a/b - b/a",
  "a^3 + 2^b",
  "a^b",
  "exp(-a*b)*cos(a) + sin(b)^2",
  "-(a - b)^2",
  "(a + b)/(1 + a*b)",
])("the gradient of %s agrees with numeric differences", (text) => {
  const expression = readExpression(text);
  const positive = fc.double({ min: 0.2, max: 3, noNaN: true });
  fc.assert(
    fc.property(positive, positive, (a, b) => {
      const at = (x: readonly number[]) => expression.value(x);
      const h = 1e-5;
      const [da, db] = expression.gradient([a, b]);
      const scale = 1 + Math.abs(da as number) + Math.abs(db as number);
      expect(Math.abs((at([a + h, b]) - at([a - h, b])) / (2 * h) - (da as number))).toBeLessThan(
        1e-6 * scale,
      );
      expect(Math.abs((at([a, b + h]) - at([a, b - h])) / (2 * h) - (db as number))).toBeLessThan(
        1e-6 * scale,
      );
    }),
  );
});

test("a negative base with a fixed exponent has a slope", () => {
  expect(readExpression("x^2").gradient([-3])).toEqual([-6]);
});
