import { DomainError } from "../../domain-error.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { at, sum } from "../numeric/vector.ts";

type Deviance = (ratios: Float64Array) => number;

/** Ratios tried before Newton's method starts, so that it starts in the right valley. */
const coarse = [0, 0.03, 0.3, 3, 100];
/** Beside this a ratio counts as 0, and its inverse as no noise at all. */
const negligible = 1e-10;
/** Step of numeric derivatives in ln γ, and the fall in deviance that is not worth another step. */
const [nudge, worthwhile] = [2e-3, 1e-9];

const withRatio = (ratios: Float64Array, k: number, value: number): Float64Array => {
  const next = ratios.slice();
  next[k] = value;
  return next;
};

/** The best of the coarse ratios, one term after the other until none changes. */
function coarsest(deviance: Deviance, terms: number): Float64Array {
  let ratios: Float64Array = new Float64Array(terms).fill(1);
  for (let sweep = 0; sweep < 4; sweep++) {
    const before = ratios;
    for (let k = 0; k < terms; k++) {
      const tried = coarse.map((value) => withRatio(ratios, k, value));
      const seen = tried.map(deviance);
      ratios = tried[seen.indexOf(Math.min(...seen))] ?? ratios;
    }
    if (ratios.every((v, k) => v === at(before, k))) break;
  }
  return ratios;
}

interface Slopes {
  readonly gradient: Float64Array;
  readonly curvature: readonly Float64Array[];
}

/** First and second differences in the logarithms of the ratios that are not 0. */
function slopesAt(deviance: Deviance, ratios: Float64Array, active: readonly number[], here: number): Slopes {
  const moved = (steps: readonly (readonly [number, number])[]): number => {
    const next = ratios.slice();
    for (const [k, by] of steps) next[k] = at(next, k) * Math.exp(by * nudge);
    return deviance(next);
  };
  const ups = active.map((k) => moved([[k, 1]]));
  const downs = active.map((k) => moved([[k, -1]]));
  const gradient = Float64Array.from(active, (_, i) => (at(ups, i) - at(downs, i)) / (2 * nudge));
  const curvature = active.map(() => new Float64Array(active.length));
  active.forEach((k, i) => {
    active.slice(0, i + 1).forEach((l, j) => {
      const both = moved([[k, 1], [l, 1]]) - at(ups, i) - at(ups, j) + here; // biome-ignore format: pairs read as pairs
      const second = i === j ? at(ups, i) - 2 * here + at(downs, i) : both;
      (curvature[i] as Float64Array)[j] = second / nudge ** 2; // one row a term
      (curvature[j] as Float64Array)[i] = second / nudge ** 2;
    });
  });
  return { gradient, curvature };
}

/** Newton's step, damped until the curvature is that of a valley, and no longer than a factor of e² in any ratio. */
function stepFrom({ gradient, curvature }: Slopes): Float64Array {
  const size = Math.max(1e-6, ...curvature.map((row, i) => Math.abs(at(row, i))));
  for (let damping = 0; ; damping = Math.max(4 * damping, 1e-3 * size)) {
    const damped = curvature.map((row, i) => row.map((v, j) => (i === j ? v + damping : v)));
    if (!damped.every((row, i) => at(row, i) > 0)) continue;
    const step = cholesky(damped)
      ?.solve(gradient)
      .map((v) => -v);
    if (step === undefined) continue;
    const longest = Math.max(...step.map(Math.abs));
    return longest > 2 ? step.map((v) => (2 * v) / longest) : step;
  }
}

function descend(deviance: Deviance, from: Float64Array): Float64Array {
  let [ratios, here] = [from, deviance(from)];
  for (let pass = 0; pass < 100; pass++) {
    const active = [...ratios.keys()].filter((k) => at(ratios, k) > 0);
    if (active.length === 0) return ratios;
    const slopes = slopesAt(deviance, ratios, active, here);
    const step = stepFrom(slopes);
    const gain = -sum(step.map((s, i) => s * at(slopes.gradient, i)));
    let share = 1;
    for (; share > 1e-6; share /= 2) {
      const next = ratios.slice();
      active.forEach((k, i) => {
        const value = at(next, k) * Math.exp(share * at(step, i));
        next[k] = value < negligible ? 0 : value;
      });
      const seen = deviance(next);
      if (!(seen <= here)) continue;
      [ratios, here] = [next, seen];
      break;
    }
    if (gain < worthwhile || share <= 1e-6) return ratios;
  }
  throw new DomainError({
    code: "no-convergence",
    field: "rows",
    value: null,
    because: "The likelihood of the variances has no bottom here.",
  });
}

/** Puts a ratio to 0 where that is no worse, or lifts one from 0 where that is better; undefined where neither is. */
function acrossZero(deviance: Deviance, ratios: Float64Array): Float64Array | undefined {
  const here = deviance(ratios);
  for (const k of ratios.keys()) {
    const others = at(ratios, k) > 0 ? [0] : [1e-6, 1e-4, 1e-2];
    const allowance = at(ratios, k) > 0 ? worthwhile : -worthwhile;
    const better = others.map((v) => withRatio(ratios, k, v)).find((r) => deviance(r) <= here + allowance);
    if (better !== undefined) return better;
  }
  return undefined;
}

/**
 * The variance ratios at which a deviance is least: a coarse search, then Newton's method in their logarithms, with
 * each ratio tried at exactly 0 as well.
 *
 * @param deviance  of k ratios ≥ 0
 * @param terms     k
 * @returns         k ratios
 * @throws DomainError where no residual noise is left, and where the deviance has no bottom
 *
 * Source: J. C. Pinheiro and D. M. Bates, Mixed-Effects Models in S and S-PLUS (2000), 2.2, on profiled deviances
 */
export function leastDeviance(deviance: Deviance, terms: number): Float64Array {
  let ratios = descend(deviance, coarsest(deviance, terms));
  for (let round = 0; round < 2 * terms + 2; round++) {
    const moved = acrossZero(deviance, ratios);
    if (moved === undefined) break;
    ratios = descend(deviance, moved);
  }
  if (ratios.some((v) => !(v < 1 / negligible)))
    throw new DomainError({
      code: "no-variation",
      field: "rows",
      value: null,
      because:
        "What was treated alike reads exactly alike: there is no noise left to hold a difference against.",
    });
  return ratios;
}
