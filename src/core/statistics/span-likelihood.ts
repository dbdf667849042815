import type { Surface } from "./climb.ts";
import type { ErrorDistribution } from "./error-distribution.ts";
import { type IntervalLog, intervalLog } from "./interval-log.ts";
import { at, type Vector } from "./vector.ts";

/** When something happened: after `left` and by `right` (null = not yet seen); equal when it was seen happening. */
export interface TimeSpan {
  readonly left: number;
  readonly right: number | null;
  /** How many alike; 1 unless told. */
  readonly weight?: number;
}

/** Log-likelihood of one span, with first and second derivatives in its ends w = γ ln t − xθ. */
interface Piece extends IntervalLog {
  /** ln t of each end that counts. */
  readonly ends: readonly number[];
}

function seenHappening(d: ErrorDistribution, time: number, w: (logTime: number) => number): Piece {
  const end = Math.log(time);
  return {
    log: d.logDensity(w(end)) - end,
    ends: [end],
    slopes: [d.slope(w(end))],
    curves: [[d.slopeChange(w(end))]],
  };
}

function pieceOf(d: ErrorDistribution, { left, right }: TimeSpan, w: (logTime: number) => number): Piece {
  if (left === right) return seenHappening(d, left, w);
  const [from, to] = [left === 0 ? null : Math.log(left), right === null ? null : Math.log(right)];
  const inside = intervalLog(d, from === null ? null : w(from), to === null ? null : w(to));
  return { ...inside, ends: [from, to].filter((end) => end !== null) };
}

/**
 * The log-likelihood of spans of time in (θ, γ) = (β/σ, 1/σ), where it is concave, with its derivatives. With a
 * fixed scale γ = 1 and the parameters are θ alone.
 *
 * @param spans       n spans
 * @param rows        n rows of the model matrix
 * @param d           distribution of W in log T = Xβ + σW
 * @param parameters  θ, then γ where the scale is estimated
 */
export function spanLikelihood(
  spans: readonly TimeSpan[],
  rows: readonly Vector[],
  d: ErrorDistribution,
  parameters: Vector,
): Surface {
  const p = parameters.length;
  const scaleAt = d.fixedScale ? -1 : p - 1;
  const gamma = d.fixedScale ? 1 : at(parameters, scaleAt);
  const gradient = new Float64Array(p);
  const information = Array.from({ length: p }, () => new Float64Array(p));
  let log = 0;
  spans.forEach((span, n) => {
    const x = rows[n] as Vector; // one row a span
    let base = 0;
    for (let i = 0; i < x.length; i++) base += at(x, i) * at(parameters, i);
    const weight = span.weight ?? 1;
    const piece = pieceOf(d, span, (logTime) => gamma * logTime - base);
    const along = (e: number, i: number): number => (i === scaleAt ? at(piece.ends, e) : -at(x, i));
    log += weight * piece.log;
    piece.slopes.forEach((slope, e) => {
      for (let i = 0; i < p; i++) gradient[i] = at(gradient, i) + weight * slope * along(e, i);
      piece.curves[e]?.forEach((curve, f) => {
        information.forEach((row, i) => {
          for (let j = 0; j < p; j++) row[j] = at(row, j) - weight * curve * along(e, i) * along(f, j);
        });
      });
    });
    if (span.left !== span.right || d.fixedScale) return;
    // An exact time is a density: dw/d(ln t) = γ stands in it as a factor.
    log += weight * Math.log(gamma);
    gradient[scaleAt] = at(gradient, scaleAt) + weight / gamma;
    const last = information[scaleAt] as Float64Array;
    last[scaleAt] = at(last, scaleAt) + weight / gamma ** 2;
  });
  return { log, gradient, information };
}
