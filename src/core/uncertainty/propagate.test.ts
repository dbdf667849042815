import { expect, test } from "vitest";
import { DomainError } from "../domain-error.ts";
import { randomFromSeed } from "../random.ts";
import { readExpression } from "./expression.ts";
import { firstOrder, type Inputs, propagate } from "./propagate.ts";
import { correlatedResults, meansOfRepeated } from "./repeated.ts";

const drawn = (formula: string, inputs: Inputs, draws = 400_000, seed = "propagate") =>
  propagate(readExpression(formula), inputs, { level: 0.95, draws, random: randomFromSeed(seed) });
const four = (d: Inputs[string]): Inputs => ({ a: d, b: d, c: d, d });

test("JCGM 101:2008, 9.2.2 and 9.2.3: a sum of four, normal and rectangular: u = 2.00, ±3.92 and ±3.88", () => {
  const root3 = Math.sqrt(3);
  for (const [d, end] of [
    [{ dist: "normal", mean: 0, sd: 1 }, 3.92],
    [{ dist: "rectangular", low: -root3, high: root3 }, 3.88],
  ] as const) {
    const { mean, standardUncertainty, symmetric } = drawn("a + b + c + d", four(d));
    expect(Math.abs(mean)).toBeLessThan(0.013); // four standard errors
    expect(Math.abs(standardUncertainty - 2)).toBeLessThan(0.01);
    expect(Math.abs(symmetric[0] + end)).toBeLessThan(0.03);
    expect(Math.abs(symmetric[1] - end)).toBeLessThan(0.03);
  }
});

test("the shortest interval of a lognormal is the known one, and not the symmetric one", () => {
  // The density is equal at both ends: found by bisection on the normal quantile, apart from this code: 0.26165, 2.31808
  const { shortest, symmetric } = drawn("exp(x)", { x: { dist: "normal", mean: 0, sd: 0.5 } }, 1_000_000);
  expect(Math.abs(shortest[0] - 0.26165)).toBeLessThan(0.02 * 0.604);
  expect(Math.abs(shortest[1] - 2.31808)).toBeLessThan(0.02 * 0.604);
  expect(symmetric[0]).toBeGreaterThan(0.36); // exp(−0.5·1.96) = 0.3753
});

test("the same seed draws the same, another seed nearly the same", () => {
  const inputs: Inputs = { x: { dist: "triangular", low: 1, high: 2 } };
  expect(drawn("x^2", inputs, 10_000)).toEqual(drawn("x^2", inputs, 10_000));
  expect(drawn("x^2", inputs, 10_000).mean).not.toBe(drawn("x^2", inputs, 10_000, "other").mean);
});

test("a result that is linear: slopes and draws agree", () => {
  const inputs: Inputs = {
    x: { dist: "rectangular", low: 0, high: 6 },
    y: { dist: "normal", mean: 1, sd: 2 },
  };
  const { value, standardUncertainty } = firstOrder(readExpression("2*x - y"), inputs);
  expect(value).toBe(5);
  expect(Math.abs(standardUncertainty - 4)).toBeLessThan(1e-14); // √(4·36/12 + 4)
  expect(Math.abs(drawn("2*x - y", inputs).standardUncertainty - 4)).toBeLessThan(0.02);
});

test("what cannot be drawn is refused", () => {
  const normal: Inputs = { x: { dist: "normal", mean: 0, sd: 1 } };
  expect(() => drawn("x + y", normal)).toThrow(DomainError);
  expect(() => drawn("x^0.5", normal, 1000)).toThrow(DomainError); // no root of a negative draw
  expect(() => drawn("x", normal, 10)).toThrow(DomainError);
});

test("JCGM 100:2008, H.2: resistance and reactance from the same five readings", () => {
  const readings = meansOfRepeated({
    V: [5.007, 4.994, 5.005, 4.99, 4.999],
    I: [19.663, 19.639, 19.64, 19.685, 19.678],
    phi: [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
  });
  const { values, uncertainties, correlations } = correlatedResults(
    readings,
    ["1000*V/I*cos(phi)", "1000*V/I*sin(phi)", "1000*V/I"].map(readExpression),
  );
  // As printed: R 127.732, u 0.071; X 219.847; Z 254.260; r(R, X) −0.588. The document rounds on the way, so u(X) is .295 there.
  expect(Math.abs((values[0] as number) - 127.732)).toBeLessThan(0.0006);
  expect(Math.abs((values[2] as number) - 254.26)).toBeLessThan(0.0006);
  expect(Math.abs((uncertainties[0] as number) - 0.071)).toBeLessThan(0.0006);
  expect(Math.abs((uncertainties[1] as number) - 0.295)).toBeLessThan(0.0011);
  expect(Math.abs((correlations[0]?.[1] as number) - -0.588)).toBeLessThan(0.001);
});

test("readings that do not belong together are refused", () => {
  expect(() => meansOfRepeated({ a: [1] })).toThrow(DomainError);
  expect(() => meansOfRepeated({ a: [1, 2], b: [1, 2, 3] })).toThrow(DomainError);
  expect(() => correlatedResults(meansOfRepeated({ a: [1, 2] }), [readExpression("a + b")])).toThrow(
    DomainError,
  );
});
