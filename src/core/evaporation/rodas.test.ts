import { expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { integrateStiff, RodasStep, type StiffSystem } from "./rodas.ts";

const system = (
  rates: (y: readonly number[]) => number[],
  jacobian: (y: readonly number[]) => number[],
  small: readonly number[],
): StiffSystem => ({
  size: small.length,
  small: Float64Array.from(small),
  rates: (y, out) => out.set(rates([...y])),
  jacobian: (y, _, out) => out.set(jacobian([...y])),
});

function endOf(s: StiffSystem, from: readonly number[], until: number, tolerance: number): readonly number[] {
  let end: readonly number[] = from;
  integrateStiff(s, {
    from: Float64Array.from(from),
    until,
    tolerance,
    firstStep: 1e-6,
    onStep: (_, __, step) => {
      end = [...step.end];
      return false;
    },
  });
  return end;
}

// H. H. Robertson's kinetics, the classic stiff problem. Values at 40 and at 10¹¹: Test Set for IVP Solvers (F. Mazzia,
// C. Magherini), problem ROBER, and E. Hairer, G. Wanner, Solving ODEs II, section IV.10.
const robertson = system(
  ([a = 0, b = 0, c = 0]) => {
    const [slow, back, fast] = [0.04 * a, 1e4 * b * c, 3e7 * b * b];
    return [back - slow, slow - back - fast, fast];
  },
  ([, b = 0, c = 0]) => [-0.04, 1e4 * c, 1e4 * b, 0.04, -1e4 * c - 6e7 * b, -1e4 * b, 0, 6e7 * b, 0],
  [1e-6, 1e-8, 1e-6],
);

test("Robertson's kinetics at 40", () => {
  const [a = 0, b = 0, c = 0] = endOf(robertson, [1, 0, 0], 40, 1e-8);
  expectNear(a, 0.7158270687, { relative: 1e-6 });
  expectNear(b, 9.185534764e-6, { relative: 1e-6 });
  expectNear(c, 0.2841637457, { relative: 1e-6 });
});

test("Robertson's kinetics at 10¹¹, where only the stiff hold out", () => {
  const tiny: StiffSystem = { ...robertson, small: Float64Array.from([1e-14, 1e-20, 1e-6]) };
  const [a = 0, b = 0] = endOf(tiny, [1, 0, 0], 1e11, 1e-8);
  expectNear(a, 0.2083340149701255e-7, { relative: 1e-5 });
  expectNear(b, 0.8333360770334713e-13, { relative: 1e-5 });
});

test("what the rates conserve, the steps conserve", () => {
  const sum = endOf(robertson, [1, 0, 0], 1e6, 1e-4).reduce((total, x) => total + x, 0);
  expectNear(sum, 1, { absolute: 1e-13 });
});

// y′ = −2·y², y(0) = 1: y = 1/(1 + 2·t)
const logistic = system(
  ([y = 0]) => [-2 * y * y],
  ([y = 0]) => [-4 * y],
  [1e-12],
);

test("steps of half the length are sixteen times as exact: order 4", () => {
  const errorOf = (steps: number): number => {
    const step = new RodasStep(logistic);
    let y = Float64Array.of(1);
    for (let i = 0; i < steps; i++) {
      step.from(y);
      step.take(1 / steps);
      y = step.end.slice();
    }
    return Math.abs((y[0] ?? 0) - 1 / 3);
  };
  const order = Math.log2(errorOf(20) / errorOf(40));
  expect(order).toBeGreaterThan(3.7);
  expect(order).toBeLessThan(4.4);
});

test("a system that runs away is refused, not followed", () => {
  const blowsUp = system(
    ([y = 0]) => [y * y],
    ([y = 0]) => [2 * y],
    [1e-6],
  );
  expect(() => endOf(blowsUp, [1], 2, 1e-6)).toThrow(/no-convergence/);
});
