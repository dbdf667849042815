import type { ErrorDistribution } from "../distribution/error-distribution.ts";
import { type IntervalLog, intervalLog } from "../distribution/interval-log.ts";
import type { Surface } from "../numeric/climb.ts";
import type { Vector } from "../numeric/vector.ts";

/** When something happened: after `left` and by `right` (null = not yet seen); equal when it was seen happening. */
export interface TimeSpan {
  readonly left: number;
  readonly right: number | null;
  /** How many alike; 1 unless told. */
  readonly weight?: number;
}

// Lists are read in place here, not through `at`, which all kinds of lists pass through: this is the inner loop of a fit.

/** A span on its logarithmic scale: the ends that count, and whether it was seen happening. */
interface LogSpan {
  readonly from: number | null;
  readonly to: number | null;
  readonly ends: readonly number[];
  readonly exact: boolean;
  readonly weight: number;
}

function logSpan({ left, right, weight = 1 }: TimeSpan): LogSpan {
  const exact = left === right;
  const [from, to] = [left === 0 ? null : Math.log(left), right === null ? null : Math.log(right)];
  const ends = exact ? [to as number] : [from, to].filter((end) => end !== null); // an exact time has its end
  return { from, to, ends, exact, weight };
}

/** Log-likelihood of one span, with first and second derivatives in its ends w = γ ln t − xθ. */
function pieceOf(
  d: ErrorDistribution,
  { from, to, exact }: LogSpan,
  gamma: number,
  base: number,
): IntervalLog {
  if (!exact)
    return intervalLog(d, from === null ? null : gamma * from - base, to === null ? null : gamma * to - base);
  const end = to as number; // seen at that time
  const w = gamma * end - base;
  return { log: d.logDensity(w) - end, slopes: [d.slope(w)], curves: [[d.slopeChange(w)]] };
}

/** Sums over a span's ends: of slopes and curves alone, and with ln t once and twice, which the scale asks for. */
function overEnds({ slopes, curves }: IntervalLog, ends: readonly number[]) {
  let [s, st, c, ct, ctt] = [0, 0, 0, 0, 0];
  for (let e = 0; e < ends.length; e++) {
    const t = ends[e] as number;
    s += slopes[e] as number;
    st += (slopes[e] as number) * t;
    const row = curves[e] as readonly number[]; // one an end
    for (let f = 0; f < ends.length; f++) {
      const curve = row[f] as number;
      c += curve;
      ct += curve * t;
      ctt += curve * t * (ends[f] as number);
    }
  }
  return { s, st, c, ct, ctt };
}

/** Gradient and information as they are added up, a span at a time; dw/dθ = −x and dw/dγ = ln t. */
class Sums {
  log = 0;
  readonly gradient: Float64Array;
  readonly information: Float64Array[];
  readonly #scaleAt: number;
  constructor(p: number, scaleAt: number) {
    this.gradient = new Float64Array(p);
    this.information = Array.from({ length: p }, () => new Float64Array(p));
    this.#scaleAt = scaleAt;
  }

  add(x: Vector, piece: IntervalLog, { ends, weight }: LogSpan): void {
    const { s, st, c, ct, ctt } = overEnds(piece, ends);
    const scaleAt = this.#scaleAt;
    const last = this.information[scaleAt];
    this.log += weight * piece.log;
    for (let i = 0; i < x.length; i++) {
      const wx = weight * (x[i] as number);
      if (wx === 0) continue;
      const row = this.information[i] as Float64Array;
      this.gradient[i] = (this.gradient[i] as number) - s * wx;
      for (let j = 0; j < x.length; j++) row[j] = (row[j] as number) - c * wx * (x[j] as number);
      if (last === undefined) continue;
      row[scaleAt] = (row[scaleAt] as number) + ct * wx;
      last[i] = row[scaleAt] as number;
    }
    if (last === undefined) return;
    this.gradient[scaleAt] = (this.gradient[scaleAt] as number) + weight * st;
    last[scaleAt] = (last[scaleAt] as number) - weight * ctt;
  }

  /** An exact time is a density: dw/d(ln t) = γ stands in it as a factor. */
  addDensity(gamma: number, weight: number): void {
    const last = this.information[this.#scaleAt];
    if (last === undefined) return;
    this.log += weight * Math.log(gamma);
    this.gradient[this.#scaleAt] = (this.gradient[this.#scaleAt] as number) + weight / gamma;
    last[this.#scaleAt] = (last[this.#scaleAt] as number) + weight / gamma ** 2;
  }
}

/**
 * The log-likelihood of spans of time in (θ, γ) = (β/σ, 1/σ), where it is concave, with its derivatives. With a
 * fixed scale γ = 1 and the parameters are θ alone.
 *
 * @param spans  n spans
 * @param rows   n rows of the model matrix
 * @param d      distribution of W in log T = Xβ + σW
 * @returns      the surface at parameters: θ, then γ where the scale is estimated
 */
export function spanLikelihood(
  spans: readonly TimeSpan[],
  rows: readonly Vector[],
  d: ErrorDistribution,
): (parameters: Vector) => Surface {
  const logSpans = spans.map(logSpan);
  return (parameters) => {
    const scaleAt = d.fixedScale ? -1 : parameters.length - 1;
    const gamma = d.fixedScale ? 1 : (parameters[scaleAt] as number);
    const sums = new Sums(parameters.length, scaleAt);
    for (const [n, span] of logSpans.entries()) {
      const x = rows[n] as Vector; // one row a span
      let base = 0;
      for (let i = 0; i < x.length; i++) base += (x[i] as number) * (parameters[i] as number);
      sums.add(x, pieceOf(d, span, gamma, base), span);
      if (span.exact) sums.addDensity(gamma, span.weight);
    }
    return sums;
  };
}
