import { DomainError } from "../../domain-error.ts";
import { chiSquareTails } from "../distribution/chi-square.ts";
import { normalQuantile } from "../distribution/normal.ts";
import { householderQr, solveUpper } from "../numeric/qr.ts";
import { at, sum } from "../numeric/vector.ts";

/** A thing watched until something happened to it (`event`) or it was seen no more. */
export interface WatchedTime {
  readonly time: number;
  readonly event: boolean;
  readonly group: string;
}

export interface KaplanMeierMedian {
  readonly count: number;
  readonly events: number;
  /** Null where half was not reached. */
  readonly median: number | null;
  /** 95 %, on the scale of the logarithm; null where a limit was not reached. */
  readonly lower: number | null;
  readonly upper: number | null;
}

interface Step {
  readonly time: number;
  readonly value: number;
}

const eventTimes = (times: readonly WatchedTime[]): number[] =>
  [...new Set(times.filter((t) => t.event).map((t) => t.time))].sort((a, b) => a - b);

/** The time at which falling steps first reach ½; the middle of the level part where they lie on it. */
function halfway(steps: readonly Step[], last: number): number | null {
  const tolerance = 1e-9;
  const i = steps.findIndex((s) => s.value <= 0.5 + tolerance);
  const first = steps[i];
  if (first === undefined) return null;
  if (first.value < 0.5 - tolerance) return first.time;
  const below = steps.slice(i).find((s) => s.value < 0.5 - tolerance);
  return (first.time + (below?.time ?? last)) / 2;
}

/**
 * The median time by Kaplan and Meier, with limits where the pointwise 95 % limits of the curve cross one half.
 *
 *     S(t) = Π (1 − d/n),   var ln S = Σ d/(n (n − d))
 *
 * @param times  of one group
 * @returns      count, events, median with limits
 * @throws DomainError without times
 *
 * Valid:    times ≥ 0
 * Accuracy: exact
 * Source:   E. L. Kaplan and P. Meier, J. Am. Statist. Assoc. 53 (1958) 457
 */
export function kaplanMeierMedian(times: readonly WatchedTime[]): KaplanMeierMedian {
  if (times.length === 0) throw new DomainError({ code: "not-enough-data", field: "times", value: 0 });
  const z = normalQuantile(0.975);
  let [survival, variance] = [1, 0];
  const curve: Step[] = [];
  const lower: Step[] = [];
  const upper: Step[] = [];
  for (const time of eventTimes(times)) {
    const risk = times.filter((t) => t.time >= time).length;
    const events = times.filter((t) => t.event && t.time === time).length;
    survival *= 1 - events / risk;
    curve.push({ time, value: survival });
    if (events === risk) break; // nobody is left, and the logarithm has no limits
    variance += events / (risk * (risk - events));
    const reach = z * Math.sqrt(variance);
    lower.push({ time, value: survival * Math.exp(-reach) });
    upper.push({ time, value: Math.min(1, survival * Math.exp(reach)) });
  }
  const last = Math.max(...times.map((t) => t.time));
  return {
    count: times.length,
    events: times.filter((t) => t.event).length,
    median: halfway(curve, last),
    lower: halfway(lower, last),
    upper: halfway(upper, last),
  };
}

export interface LogRankTest {
  readonly method: "log-rank";
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  readonly observed: readonly number[];
  readonly expected: readonly number[];
}

/**
 * The log-rank test that groups are alike.
 *
 *     (O − E)ᵀ V⁻ (O − E),   V_gh = Σ d (n − d)/(n − 1) · (n_g/n)(δ_gh − n_h/n)
 *
 * @param times   n watched times
 * @param groups  names, in order
 * @returns       statistic, p-value, observed and expected events by group
 * @throws DomainError for fewer than two groups or no event
 *
 * Valid:    two or more groups
 * Accuracy: 1e-10 relative
 * Source:   N. Mantel, Cancer Chemother. Rep. 50 (1966) 163; R. Peto and J. Peto, J. R. Statist. Soc. A 135 (1972) 185
 */
export function logRankTest(times: readonly WatchedTime[], groups: readonly string[]): LogRankTest {
  const at0 = eventTimes(times);
  if (groups.length < 2 || at0.length === 0)
    throw new DomainError({ code: "not-enough-data", field: "times", value: at0.length });
  const expected = groups.map(() => 0);
  const covariance = groups.map(() => groups.map(() => 0));
  for (const time of at0) {
    const risk = times.filter((t) => t.time >= time);
    const n = risk.length;
    const d = times.filter((t) => t.event && t.time === time).length;
    const shares = groups.map((g) => risk.filter((t) => t.group === g).length / n);
    const spread = n > 1 ? (d * (n - d)) / (n - 1) : 0;
    shares.forEach((share, g) => {
      expected[g] = at(expected, g) + d * share;
      const row = covariance[g] as number[]; // one row a group
      shares.forEach((other, h) => {
        row[h] = at(row, h) + spread * share * ((g === h ? 1 : 0) - other);
      });
    });
  }
  const observed = groups.map((g) => times.filter((t) => t.event && t.group === g).length);
  const excess = observed.map((o, g) => o - at(expected, g)).slice(0, -1);
  const qr = householderQr(covariance.slice(0, -1).map((row) => row.slice(0, -1)));
  const solved = solveUpper(qr.r, qr.rotate(excess));
  const statistic = sum(qr.kept.map((g, i) => at(solved, i) * at(excess, g)));
  return {
    method: "log-rank",
    statistic,
    degreesOfFreedom: qr.kept.length,
    pValue: chiSquareTails(statistic, qr.kept.length).upper,
    observed,
    expected,
  };
}

export interface HazardRatio {
  /** ln of the ratio. */
  readonly coefficient: number;
  readonly standardError: number;
  readonly logLikelihood: number;
}

/** Log partial likelihood with its first two derivatives at β. */
function partialLikelihood(
  times: readonly WatchedTime[],
  second: string,
  beta: number,
): [number, number, number] {
  const x = (t: WatchedTime): number => (t.group === second ? 1 : 0);
  const weight = (t: WatchedTime): number => Math.exp(beta * x(t));
  let [log, slope, curve] = [0, 0, 0];
  for (const time of eventTimes(times)) {
    const risk = times.filter((t) => t.time >= time);
    const events = risk.filter((t) => t.event && t.time === time);
    const [all, allX] = [sum(risk.map(weight)), sum(risk.map((t) => weight(t) * x(t)))];
    const [own, ownX] = [sum(events.map(weight)), sum(events.map((t) => weight(t) * x(t)))];
    log += beta * sum(events.map(x));
    slope += sum(events.map(x));
    for (let k = 0; k < events.length; k++) {
      const s0 = all - (k / events.length) * own;
      const share = (allX - (k / events.length) * ownX) / s0;
      log -= Math.log(s0);
      slope -= share;
      curve -= share * (1 - share); // x is 0 or 1, so that x² = x
    }
  }
  return [log, slope, curve];
}

/**
 * The hazard of the second group over the first by Cox's partial likelihood, ties by Efron.
 *
 * @param times   n watched times of two groups
 * @param second  the group held against the other
 * @returns       ln ratio, standard error, log partial likelihood
 * @throws DomainError when all events are in one group, so that the ratio has no end
 *
 * Valid:    two groups
 * Accuracy: 1e-9 relative
 * Source:   D. R. Cox, J. R. Statist. Soc. B 34 (1972) 187; B. Efron, J. Am. Statist. Assoc. 72 (1977) 557
 */
export function hazardRatioEfron(times: readonly WatchedTime[], second: string): HazardRatio {
  let beta = 0;
  for (let pass = 0; pass < 100; pass++) {
    const [logLikelihood, slope, curve] = partialLikelihood(times, second, beta);
    const step = -slope / curve;
    if (Math.abs(step) < 1e-12 * (1 + Math.abs(beta)))
      return { coefficient: beta, standardError: 1 / Math.sqrt(-curve), logLikelihood };
    beta += Math.max(-2, Math.min(2, step)); // a longer step may leave the concave top behind
    if (!(Math.abs(beta) < 30)) break;
  }
  throw new DomainError({ code: "no-convergence", field: "times", value: times.length });
}
