import { DomainError } from "../../domain-error.ts";

/**
 * The place in [low, high] where a function changes sign.
 *
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4: inverse quadratic or linear
 * steps while they shrink the bracket, halving otherwise.
 * @throws DomainError when the two ends have the same sign
 * @example
 * rootBetween((x) => x * x - 2, 0, 2) // => 1.41421356237
 */
export function rootBetween(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) {
    throw new DomainError({ code: "no-convergence", field: "root", value: [low, high] });
  }
  let [c, fc] = [a, fa];
  let step = b - a;
  let before = step;
  for (let i = 0; i < 300; i++) {
    if (fb * fc > 0) {
      [c, fc] = [a, fa];
      step = b - a;
      before = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const least = 2 * Number.EPSILON * Math.abs(b) + 1e-300;
    const half = (c - b) / 2;
    if (Math.abs(half) <= least || fb === 0) return b;
    const trial = Math.abs(before) >= least && Math.abs(fa) > Math.abs(fb) ? interpolated() : undefined;
    before = trial === undefined ? half : step;
    step = trial ?? half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > least ? step : Math.sign(half) * least;
    fb = f(b);

    function interpolated(): number | undefined {
      const s = fb / fa;
      let p = 2 * half * s;
      let q = 1 - s;
      if (a !== c) {
        const [t, r] = [fa / fc, fb / fc];
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      return 2 * p < Math.min(3 * half * q - Math.abs(least * q), Math.abs(before * q)) ? p / q : undefined;
    }
  }
  return b;
}

/** Widens outward from `start` in doubling steps until an increasing function changes sign, then solves. */
export function rootOfIncreasing(f: (x: number) => number, start: number, firstStep: number): number {
  const here = f(start);
  if (here === 0) return start;
  const towards = here > 0 ? -1 : 1;
  let near = start;
  for (let step = firstStep; step < 1e300; step *= 2) {
    const far = near + towards * step;
    if (Math.sign(f(far)) !== Math.sign(here))
      return rootBetween(f, Math.min(near, far), Math.max(near, far));
    near = far;
  }
  throw new DomainError({ code: "no-convergence", field: "root", value: start });
}
