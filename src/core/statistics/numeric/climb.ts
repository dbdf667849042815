import { cholesky } from "./cholesky.ts";
import { at, sum } from "./vector.ts";

/** A log-likelihood at one place, with its first derivatives and minus its second ones. */
export interface Surface {
  readonly log: number;
  readonly gradient: Float64Array;
  readonly information: readonly Float64Array[];
}

export interface Top {
  readonly x: Float64Array;
  readonly top: Surface;
}

/**
 * The top of a concave surface by Newton's method, each step halved until it climbs.
 *
 * @param start  p numbers
 * @param see    the surface at a place; a log of −∞ where it is not defined
 * @returns      the place of the top and the surface there; "flat" where the data do not fix a direction,
 *               "endless" where it still climbs after 200 steps
 *
 * Source: D. G. Luenberger and Y. Ye, Linear and Nonlinear Programming (2016), 8.5
 */
export function climb(start: Float64Array, see: (x: Float64Array) => Surface): Top | "flat" | "endless" {
  let [x, here] = [start, see(start)];
  for (let pass = 0; pass < 200; pass++) {
    const solver = cholesky(here.information);
    if (solver === undefined) return "flat";
    const step = solver.solve(here.gradient);
    const gain = sum(Array.from(step, (s, i) => s * at(here.gradient, i)));
    // Newton's steps square what is left: one more from here reaches the last digit.
    if (gain < 1e-10) {
      const last = x.map((v, i) => v + at(step, i));
      return { x: last, top: see(last) };
    }
    let [share, next, seen] = [1, x, here];
    do {
      next = x.map((v, i) => v + share * at(step, i));
      seen = see(next);
      share /= 2;
    } while (!(seen.log >= here.log) && share > 1e-12);
    if (share <= 1e-12) return { x, top: here };
    [x, here] = [next, seen];
  }
  return "endless";
}
