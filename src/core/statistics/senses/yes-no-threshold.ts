import { DomainError } from "../../domain-error.ts";
import { logNormalCdf } from "../distribution/normal.ts";

/** Whether it was enough, and how much there was of it. */
export interface YesNo {
  readonly at: number;
  readonly yes: boolean;
}

/** What is thought of a threshold before anything is logged: a normal distribution. */
export interface Expected {
  readonly mean: number;
  readonly standardDeviation: number;
}

export interface Threshold {
  readonly estimate: number;
  readonly standardError: number;
  /** 95 %. */
  readonly interval: readonly [number, number];
  readonly yes: number;
  readonly no: number;
}

const pointsASide = 400;
/** Where the density has fallen by e⁻⁴⁰ it no longer counts. */
const negligible = 40;

/** The highest place of a concave function, by halving a bracket that is widened until it falls off at both ends. */
function summit(f: (x: number) => number, start: number, width: number): number {
  let [low, high] = [start - width, start + width];
  while (f(low) > f(low + width)) low -= width;
  while (f(high) > f(high - width)) high += width;
  for (let i = 0; i < 100; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(a) < f(b)) low = a;
    else high = b;
  }
  return (low + high) / 2;
}

/** How far from the top a concave function has fallen by `negligible`. */
function reach(f: (x: number) => number, top: number, step: number): number {
  let far = step;
  while (f(top) - f(top + far) < negligible) far *= 1.5;
  return far;
}

/** Densities on an even grid over all that counts, not yet divided by their sum. */
function densities(log: (x: number) => number, top: number, width: number): readonly [number, number][] {
  const [left, right] = [reach(log, top, -width / 8), reach(log, top, width / 8)];
  const step = (right - left) / (2 * pointsASide);
  const peak = log(top);
  return Array.from({ length: 2 * pointsASide + 1 }, (_, i) => {
    const x = top + left + i * step;
    return [x, Math.exp(log(x) - peak)];
  });
}

/** Where the distribution function of the grid comes to p, by straight lines between its points. */
function quantileOnGrid(grid: readonly [number, number][], total: number, p: number): number {
  let below = 0;
  for (let i = 1; i < grid.length; i++) {
    const [[a, f], [b, g]] = [grid[i - 1] as [number, number], grid[i] as [number, number]];
    const part = (f + g) / 2 / total;
    if (below + part >= p) return a + ((p - below) / part) * (b - a);
    below += part;
  }
  return grid.at(-1)?.[0] ?? Number.NaN;
}

/**
 * A threshold from answers of yes and no at known places, with what was thought of it before.
 *
 *     P(yes at x) = Φ((x − θ)/s),   p(θ) ∝ φ((θ − m)/τ)·Π P(answer)
 *
 * Each answer bounds θ from one side only; they pin it down between them. The estimate is the mean of p(θ), the interval
 * holds its middle 95 %.
 *
 * @param answers   n places with yes or no
 * @param expected  m and τ, in the unit of the places
 * @param spread    s: how much the threshold differs from one time to the next, scalar, above 0
 * @returns         estimate, its standard deviation and interval, in the unit of the places, and how many of each
 * @throws DomainError `not-a-number` for a place that is none
 *
 * Valid:    any number of answers; with none it is what was expected
 * Accuracy: 1e-6 of the standard error; the interval 1e-3 of it
 * Source:   probit model with a normal prior: C. E. Rasmussen, C. K. I. Williams, Gaussian Processes for Machine Learning
 *           (2006), section 3.9 for one answer; integrated by the trapezium rule
 * @example
 * thresholdFromAnswers([{ at: 0, yes: true }], { mean: 0, standardDeviation: 1 }, 1).estimate // => -0.564190
 */
export function thresholdFromAnswers(
  answers: readonly YesNo[],
  expected: Expected,
  spread: number,
): Threshold {
  const bad = answers.find((answer) => !Number.isFinite(answer.at));
  if (bad !== undefined) throw new DomainError({ code: "not-a-number", field: "at", value: bad.at });
  const log = (x: number): number => {
    let sum = -0.5 * ((x - expected.mean) / expected.standardDeviation) ** 2;
    for (const answer of answers) {
      const z = (answer.at - x) / spread;
      sum += logNormalCdf(answer.yes ? z : -z);
    }
    return sum;
  };
  const top = summit(log, expected.mean, expected.standardDeviation);
  const grid = densities(log, top, expected.standardDeviation);
  const total = grid.reduce((sum, [, f]) => sum + f, 0);
  const mean = grid.reduce((sum, [x, f]) => sum + x * f, 0) / total;
  const variance = grid.reduce((sum, [x, f]) => sum + (x - mean) ** 2 * f, 0) / total;
  const yes = answers.filter((answer) => answer.yes).length;
  return {
    estimate: mean,
    standardError: Math.sqrt(variance),
    interval: [quantileOnGrid(grid, total, 0.025), quantileOnGrid(grid, total, 0.975)],
    yes,
    no: answers.length - yes,
  };
}
