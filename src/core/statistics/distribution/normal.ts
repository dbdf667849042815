import { DomainError, inRange } from "../../domain-error.ts";
import { at } from "../numeric/vector.ts";

const rootTwoPi = Math.sqrt(2 * Math.PI);

/** The density of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / rootTwoPi;

/** Horner's rule, highest power first. Counted, not iterated: an iterator takes three times as long here. */
function polynomial(x: number, coefficients: readonly number[]): number {
  let total = 0;
  for (let i = 0; i < coefficients.length; i++) total = total * x + at(coefficients, i);
  return total;
}

// W. J. Cody, "Rational Chebyshev approximation for the error function", Math. Comp. 23 (1969) 631, in the form
// used for the normal integral: z up to 0.67448975, then to √32, then beyond.
const a = [
  0.06568233791820745, 2.2352520354606837, 161.02823106855587, 1067.6894854603709, 18154.98125334356,
] as const;
const b = [1, 47.202581904688245, 976.0985517377767, 10260.932208618979, 45507.78933502673] as const;
const c = [
  1.0765576773720192e-8, 0.39894151208813466, 8.883149794388377, 93.50665613217785, 597.2702763948002,
  2494.5375852903726, 6848.190450536283, 11602.65143764735, 9842.714838383978,
] as const;
const d = [
  1, 22.266688044328117, 235.387901782625, 1519.3775994075547, 6485.558298266761, 18615.571640885097,
  34900.95272114598, 38912.00328609327, 19685.429676859992,
] as const;
const p = [
  0.023073441764940174, 0.215898534057957, 0.12740116116024736, 0.022235277870649807, 0.0014216191932278934,
  2.9112874951168793e-5,
] as const;
const q = [
  1, 1.284260096144911, 0.4682382124808651, 0.06598813786892856, 0.0037823963320275824, 7.297515550839662e-5,
] as const;

/** Probability above z for z ≥ 0. The square is split so that its rounding does not reach the exponential. */
function upperTail(z: number): number {
  if (z <= 0.67448975) return 0.5 - z * (polynomial(z * z, a) / polynomial(z * z, b));
  if (z > 38.5) return 0;
  const whole = Math.trunc(z * 16) / 16;
  const e = Math.exp(-0.5 * whole * whole) * Math.exp(-0.5 * (z - whole) * (z + whole));
  if (z <= Math.SQRT2 * 4) return (e * polynomial(z, c)) / polynomial(z, d);
  const w = 1 / (z * z);
  return (e * (1 / rootTwoPi - (w * polynomial(w, p)) / polynomial(w, q))) / z;
}

/**
 * The normal distribution function, with full relative digits in both tails: the upper one is
 * `normalCdf(-z)`.
 *
 *     Φ(z) = ∫₋∞ᶻ e^(−t²/2) dt / √(2π)
 *
 * @param z  scalar
 * @returns  probability, scalar
 * @throws DomainError for NaN
 *
 * Valid:    any z
 * Accuracy: 1e-14 relative
 * Source:   W. J. Cody, Math. Comp. 23 (1969) 631
 * @example
 * normalCdf(-1.96) // => 0.024997895148
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new DomainError({ code: "not-a-number", field: "z", value: z });
  return z > 0 ? 1 - upperTail(z) : upperTail(-z);
}

/** ln Φ(z), to full digits where Φ(z) itself has left the range of numbers. */
export function logNormalCdf(z: number): number {
  if (z > 0) return Math.log1p(-upperTail(z));
  if (z > -37) return Math.log(upperTail(-z));
  const w = 1 / (z * z);
  return -0.5 * z * z - Math.log(-z * rootTwoPi) + Math.log1p(-w * (1 - w * (3 - w * (15 - 105 * w))));
}

// M. J. Wichura, Algorithm AS 241, Appl. Statist. 37 (1988) 477, PPND16.
const centre = {
  over: [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946,
    1971.5909503065513, 133.14166789178438, 3.3871328727963665,
  ],
  under: [
    5226.495278852546, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751,
    687.1870074920579, 42.31333070160091, 1,
  ],
} as const;
const shoulder = {
  over: [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
    5.769497221460691, 4.630337846156546, 1.4234371107496835,
  ],
  under: [
    1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
    1.6763848301838038, 2.053191626637759, 1,
  ],
} as const;
const far = {
  over: [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124,
    0.29656057182850487, 1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  under: [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133,
    0.014875361290850615, 0.1369298809227358, 0.599832206555888, 1,
  ],
} as const;

/**
 * The normal quantile: z such that Φ(z) = p.
 *
 * @param probability  scalar
 * @returns            scalar
 * @throws DomainError outside (0, 1), and for NaN
 *
 * Valid:    0 < p < 1
 * Accuracy: 1e-15 relative
 * Source:   M. J. Wichura, Algorithm AS 241, Appl. Statist. 37 (1988) 477
 * @example
 * normalQuantile(0.975) // => 1.95996398454
 */
export function normalQuantile(probability: number): number {
  inRange("p", probability, { min: Number.MIN_VALUE, max: 1 - Number.EPSILON / 2 });
  const off = probability - 0.5;
  if (Math.abs(off) <= 0.425) {
    const r = 0.180625 - off * off;
    return (off * polynomial(r, centre.over)) / polynomial(r, centre.under);
  }
  const r = Math.sqrt(-Math.log(off < 0 ? probability : 1 - probability));
  const [part, from] = r <= 5 ? [shoulder, 1.6] : [far, 5];
  return (Math.sign(off) * polynomial(r - from, part.over)) / polynomial(r - from, part.under);
}
