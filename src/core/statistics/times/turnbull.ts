import { DomainError } from "../../domain-error.ts";
import { at, sum } from "../numeric/vector.ts";
import type { TimeSpan } from "./span-likelihood.ts";

/** A stretch (left, right] that carries a share; right is null where it was never closed. */
export interface MassInterval {
  readonly left: number;
  readonly right: number | null;
  readonly mass: number;
}

export interface TurnbullEstimate {
  readonly intervals: readonly MassInterval[];
  readonly logLikelihood: number;
}

interface Stretch {
  readonly left: number;
  readonly right: number;
}

const endOf = ({ right }: TimeSpan): number => right ?? Number.POSITIVE_INFINITY;

/**
 * The innermost stretches: a left end followed at once by a right end. Spans are half open, so that at one time a
 * right end comes first; a time seen exactly is a stretch of its own.
 */
function innermost(spans: readonly TimeSpan[]): Stretch[] {
  const exact = (s: TimeSpan): boolean => s.left === s.right;
  const ends = spans.flatMap((s) => [
    { time: s.left, order: exact(s) ? -2 : 1, opens: true },
    { time: endOf(s), order: exact(s) ? -1 : 0, opens: false },
  ]);
  const sorted = ends.sort((a, b) => (a.time === b.time ? a.order - b.order : a.time - b.time));
  const found = sorted.flatMap((end, i) => {
    const next = sorted[i + 1];
    return end.opens && next !== undefined && !next.opens ? [{ left: end.time, right: next.time }] : [];
  });
  return found.filter((s, i) => i === 0 || s.left !== found[i - 1]?.left || s.right !== found[i - 1]?.right);
}

const holds = (span: TimeSpan, s: Stretch): boolean =>
  s.left >= span.left &&
  s.right <= endOf(span) &&
  !(s.left === s.right && s.left === span.left && span.left !== span.right);

interface Problem {
  readonly stretches: readonly Stretch[];
  /** Of each span, the stretches within it. */
  readonly inside: readonly (readonly number[])[];
  readonly weights: readonly number[];
}

const chanceOf = (places: readonly number[], mass: Float64Array): number =>
  places.reduce((p, j) => p + at(mass, j), 0);

/** What each stretch's share would be multiplied by next: 1 where it has its due, less where it deserves none. */
function pullOf({ stretches, inside, weights }: Problem, mass: Float64Array): Float64Array {
  const total = sum(weights);
  const pull = new Float64Array(stretches.length);
  inside.forEach((places, i) => {
    const share = at(weights, i) / (chanceOf(places, mass) * total);
    for (const j of places) pull[j] = at(pull, j) + share;
  });
  return pull;
}

/** Self-consistency steps from a start; a stretch that starts with nothing keeps nothing. */
function settled(problem: Problem, start: Float64Array): Float64Array {
  let mass = start;
  for (let pass = 0; pass < 100_000; pass++) {
    const pull = pullOf(problem, mass);
    const next = mass.map((m, j) => m * at(pull, j));
    const moved = next.some((m, j) => Math.abs(m - at(mass, j)) > 1e-12);
    mass = next;
    if (!moved) break;
  }
  return mass;
}

/** Small shares go when the rest does not want them back; those that fade slowly never would by steps alone. */
function withoutTraces(problem: Problem, mass: Float64Array): Float64Array {
  const kept = mass.map((m) => (m > 1e-5 ? m : 0));
  const whole = sum(kept);
  const trimmed = settled(
    problem,
    kept.map((m) => m / whole),
  );
  return pullOf(problem, trimmed).every((p) => p < 1 + 1e-8) ? trimmed : mass;
}

/**
 * The nonparametric likelihood of times known to lie between two looks: shares on the innermost stretches. Where in
 * a stretch its share lies is not determined.
 *
 * Self-consistency steps, checked by the Kuhn–Tucker condition that no stretch would gain by taking more. Stretches
 * without a share are left out.
 *
 * @param spans  n spans of time, in one unit
 * @returns      stretches with their shares, and the log-likelihood
 * @throws DomainError without spans, and when the steps do not settle
 *
 * Valid:    spans of any kind, exact times as well
 * Accuracy: shares 1e-7, log-likelihood 1e-9
 * Source:   B. W. Turnbull, J. R. Statist. Soc. B 38 (1976) 290; R. Gentleman and C. J. Geyer, Biometrika 81 (1994) 618
 */
export function turnbull(spans: readonly TimeSpan[]): TurnbullEstimate {
  if (spans.length === 0) throw new DomainError({ code: "not-enough-data", field: "times", value: 0 });
  const stretches = innermost(spans);
  const problem: Problem = {
    stretches,
    inside: spans.map((span) => stretches.flatMap((s, j) => (holds(span, s) ? [j] : []))),
    weights: spans.map((s) => s.weight ?? 1),
  };
  const start = new Float64Array(stretches.length).fill(1 / stretches.length);
  const mass = withoutTraces(problem, settled(problem, start));
  if (!pullOf(problem, mass).every((p) => p < 1 + 1e-5))
    throw new DomainError({ code: "no-convergence", field: "times", value: spans.length });
  return {
    intervals: stretches.flatMap(({ left, right }, j) =>
      at(mass, j) > 1e-7
        ? [{ left, right: right === Number.POSITIVE_INFINITY ? null : right, mass: at(mass, j) }]
        : [],
    ),
    logLikelihood: sum(
      problem.inside.map((places, i) => at(problem.weights, i) * Math.log(chanceOf(places, mass))),
    ),
  };
}
