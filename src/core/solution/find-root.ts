import { DomainError } from "../domain-error.ts";

const mostSteps = 200;

/**
 * The place in [low, high] where a continuous function of one sign change is zero.
 *
 * Regula falsi with the Illinois halving, which keeps the bracket: unlike Newton's it cannot leave the range in
 * which a density formula holds.
 *
 * @param f          continuous, of opposite signs at the ends (a zero at an end counts)
 * @param low, high  the bracket
 * @returns          x with |f(x)| = 0 or the bracket no wider than 1e-14 of its place
 * @throws DomainError `no-convergence` when the ends have one sign
 *
 * Accuracy: 1e-14 relative in x, as far as f itself is smooth at that scale
 * Source:   M. Dowell, P. Jarratt, BIT 11 (1971) 168 (the Illinois algorithm)
 * @example
 * findRoot((x) => x * x - 2, 0, 2) // => 1.414213562
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) throw new DomainError({ code: "no-convergence", field: "root", value: [low, high] });
  for (let step = 0; step < mostSteps; step++) {
    const x = (a * fb - b * fa) / (fb - fa);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx * fb < 0) {
      [a, fa] = [b, fb];
    } else {
      fa /= 2;
    }
    const moved = Math.abs(x - b);
    [b, fb] = [x, fx];
    if (moved <= 1e-14 * Math.max(Math.abs(x), 1e-3)) return b;
  }
  throw new DomainError({ code: "no-convergence", field: "root", value: [low, high] });
}
