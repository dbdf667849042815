import { describe, expect, test } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { refusalOf } from "../../../../test/refusal-of.ts";
import { readExpression } from "../../uncertainty/expression.ts";
import { at } from "../numeric/vector.ts";
import { curveOfExpression } from "./expression-curve.ts";
import { type Curve, fitLeastSquares } from "./least-squares.ts";

/** NIST StRD nonlinear regression, MGH10, "higher" difficulty: certified values, from memory; other problems of it are outside cases. */
describe("NIST StRD MGH10", () => {
  const y = [
    34780, 28610, 23650, 19630, 16370, 13720, 11540, 9744, 8261, 7030, 6005, 5147, 4427, 3820, 3307, 2872,
  ];
  const x = y.map((_, i) => 50 + 5 * i);
  const curve = curveOfExpression(readExpression("b1*exp(b2/(x+b3))"), ["b1", "b2", "b3"], { x });
  const certified = [
    [5.609636471e-3, 1.5687892471e-4],
    [6.1813463463e3, 2.3309021107e1],
    [3.4522363462e2, 7.8486103508e-1],
  ] as const;

  test("estimates, standard deviations and the sum of squares from the second start", () => {
    const fit = fitLeastSquares(y, curve, [0.02, 4000, 250]);
    certified.forEach(([estimate, deviation], j) => {
      expectNear(fit.parameters[j] ?? Number.NaN, estimate, { relative: 1e-9 });
      expectNear(fit.standardErrors[j] ?? Number.NaN, deviation, { relative: 1e-8 });
    });
    expectNear(fit.residualSumOfSquares, 87.945855171, { relative: 1e-9 });
    expect(fit.degreesOfFreedom).toBe(13);
  });

  test("from the first, far one: the same, or a refusal, never another answer", () => {
    expect(refusalOf(() => fitLeastSquares(y, curve, [2, 400_000, 25_000]))).toMatchObject({
      code: "no-convergence",
      field: "start",
    });
  });
});

const line: Curve = (v, i) => ({ value: at(v, 0) + at(v, 1) * i, slopes: [1, i] });

test("a straight line is what its normal equations give, by hand", () => {
  const fit = fitLeastSquares([1, 2, 4], line, [0, 0]); // slope 3/2, mean 7/3; residuals 1/6, −1/3, 1/6
  expectNear(fit.parameters[0] ?? 0, 5 / 6, { relative: 1e-12 });
  expectNear(fit.parameters[1] ?? 0, 3 / 2, { relative: 1e-12 });
  expectNear(fit.residualSumOfSquares, 1 / 6, { relative: 1e-12 });
  expectNear(fit.standardErrors[1] ?? 0, Math.sqrt(1 / 6 / 2), { relative: 1e-12 });
});

test("the order of the readings changes nothing", () => {
  const times = [0, 1, 2, 3, 5];
  const y = [9, 5.2, 2.9, 1.8, 0.4];
  const fitOf = (order: readonly number[]) =>
    fitLeastSquares(
      order.map((i) => y[i] as number),
      curveOfExpression(readExpression("a*exp(-k*t)"), ["a", "k"], {
        t: order.map((i) => times[i] as number),
      }),
      [8, 0.5],
    ).parameters;
  const [straight, turned] = [fitOf([0, 1, 2, 3, 4]), fitOf([4, 2, 0, 1, 3])];
  for (const [j, value] of straight.entries()) expectNear(turned[j] ?? 0, value, { relative: 1e-9 });
});

test("what readings do not fix is refused: fewer of them than parameters, two that do the same, no value at the start", () => {
  expect(refusalOf(() => fitLeastSquares([1], line, [0, 0]))).toMatchObject({
    code: "not-enough-data",
    value: 1,
    limits: { min: 2 },
  });
  const twice: Curve = (v) => ({ value: at(v, 0) + at(v, 1), slopes: [1, 1] });
  expect(refusalOf(() => fitLeastSquares([1, 2, 4], twice, [0, 0])).because).toMatch(/do not fix/);
  const nowhere: Curve = () => ({ value: Number.NaN, slopes: [1, 1] });
  expect(refusalOf(() => fitLeastSquares([1, 2, 4], nowhere, [0, 0])).because).toMatch(
    /no value at the start/,
  );
});

test("a name of a formula that is neither a parameter nor a column is refused", () => {
  expect(refusalOf(() => curveOfExpression(readExpression("a*t + z"), ["a"], { t: [1] }))).toMatchObject({
    code: "unknown-name",
    value: "z",
  });
});
