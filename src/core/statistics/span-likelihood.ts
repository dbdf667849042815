import type { ErrorDistribution } from "./error-distribution.ts";
import { at, type Vector } from "./vector.ts";

/** When something happened: after `left` and by `right` (null = not yet seen); equal when it was seen happening. */
export interface TimeSpan {
  readonly left: number;
  readonly right: number | null;
  /** How many alike; 1 unless told. */
  readonly weight?: number;
}

/** Log-likelihood of one span, with first and second derivatives in its ends w = γ ln t − xθ. */
interface Piece {
  readonly log: number;
  /** ln t of each end that counts. */
  readonly ends: readonly number[];
  readonly slopes: readonly number[];
  readonly curves: readonly (readonly number[])[];
}

/** log(e^a − e^b) for a ≥ b. */
const logDifference = (a: number, b: number): number => a + Math.log1p(-Math.exp(b - a));

function seenHappening(d: ErrorDistribution, time: number, w: (logTime: number) => number): Piece {
  const end = Math.log(time);
  return {
    log: d.logDensity(w(end)) - end,
    ends: [end],
    slopes: [d.slope(w(end))],
    curves: [[d.slopeChange(w(end))]],
  };
}

/** From one side only: `sign` is 1 for "by then" and −1 for "not by then". */
function oneSided(d: ErrorDistribution, time: number, w: (logTime: number) => number, sign: 1 | -1): Piece {
  const end = Math.log(time);
  const log = sign === 1 ? d.logLower(w(end)) : d.logUpper(w(end));
  const share = Math.exp(d.logDensity(w(end)) - log);
  return {
    log,
    ends: [end],
    slopes: [sign * share],
    curves: [[sign * share * d.slope(w(end)) - share * share]],
  };
}

function between(d: ErrorDistribution, from: number, to: number, w: (logTime: number) => number): Piece {
  const ends = [Math.log(from), Math.log(to)] as const;
  const [left, right] = [w(ends[0]), w(ends[1])];
  const log =
    left > 0
      ? logDifference(d.logUpper(left), d.logUpper(right))
      : logDifference(d.logLower(right), d.logLower(left));
  const [l, r] = [Math.exp(d.logDensity(left) - log), Math.exp(d.logDensity(right) - log)];
  return {
    log,
    ends,
    slopes: [-l, r],
    curves: [
      [-l * d.slope(left) - l * l, l * r],
      [l * r, r * d.slope(right) - r * r],
    ],
  };
}

const nothingSeen: Piece = { log: 0, ends: [], slopes: [], curves: [] };

function pieceOf(d: ErrorDistribution, { left, right }: TimeSpan, w: (logTime: number) => number): Piece {
  if (left === right) return seenHappening(d, left, w);
  if (right === null) return left === 0 ? nothingSeen : oneSided(d, left, w, -1);
  return left === 0 ? oneSided(d, right, w, 1) : between(d, left, right, w);
}

export interface Surface {
  readonly log: number;
  readonly gradient: Float64Array;
  /** Minus the second derivatives. */
  readonly information: readonly Float64Array[];
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
