import { normalQuantile } from "../distribution/normal.ts";
import { studentTUpperQuantile } from "../distribution/student-t.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import type { CurveFit } from "./least-squares.ts";

export interface Estimated {
  readonly value: number;
  readonly standardError: number;
  /** 95 %. */
  readonly interval: readonly [number, number];
}

/** What was told, not estimated. */
export const known = (value: number): Estimated => ({ value, standardError: 0, interval: [value, value] });

/** How sure a figure is whose slope by each parameter is given. */
interface Errors {
  readonly straight: (value: number, weights: Vector) => Estimated;
  /** For what is above 0: `weights` and the interval are those of its logarithm. */
  readonly byLogarithm: (value: number, weights: Vector) => Estimated;
}

/** Errors and 95 % intervals at a fit, of readings that scatter by `atLeast` however well they lie on the curve. */
export function errorsOf(
  { inverseInformation, residualDeviation, degreesOfFreedom }: CurveFit,
  atLeast: number,
): Errors {
  const scatter = Math.max(residualDeviation, atLeast);
  const reach = Math.max(
    studentTUpperQuantile(0.025, degreesOfFreedom) * residualDeviation,
    normalQuantile(0.975) * atLeast,
  );
  const spread = (weights: Vector): number =>
    Math.sqrt(
      sum(
        inverseInformation.flatMap((row, i) =>
          Array.from(row, (v, j) => at(weights, i) * v * at(weights, j)),
        ),
      ),
    );
  return {
    straight: (value, weights) => {
      const one = spread(weights);
      return {
        value,
        standardError: scatter * one,
        interval: [value - reach * one, value + reach * one],
      };
    },
    byLogarithm: (value, weights) => {
      const one = spread(weights);
      return {
        value,
        standardError: value * scatter * one,
        interval: [value * Math.exp(-reach * one), value * Math.exp(reach * one)],
      };
    },
  };
}
