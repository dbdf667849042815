import { DomainError, inRange } from "../domain-error.ts";

const rootTwoPi = Math.sqrt(2 * Math.PI);

export const normalDensity = (z: number): number => Math.exp(-0.5 * z * z) / rootTwoPi;

/** Horner's rule, highest power first. */
function polynomial(x: number, coefficients: readonly number[]): number {
  let total = 0;
  for (const c of coefficients) total = total * x + c;
  return total;
}

// W. J. Cody, "Rational Chebyshev approximation for the error function", Math. Comp. 23 (1969) 631, in the form
// used for the normal integral: z up to 0.67448975, then to √32, then beyond.
const a = [
  0.065682337918207449113, 2.2352520354606839287, 161.02823106855587881, 1067.6894854603709582,
  18154.981253343561249,
] as const;
const b = [
  1, 47.20258190468824187, 976.09855173777669322, 10260.932208618978205, 45507.789335026729956,
] as const;
const c = [
  1.0765576773720192317e-8, 0.39894151208813466764, 8.8831497943883759412, 93.506656132177855979,
  597.27027639480026226, 2494.5375852903726711, 6848.1904505362823326, 11602.651437647350124,
  9842.7148383839780218,
] as const;
const d = [
  1, 22.266688044328115691, 235.38790178262499861, 1519.377599407554805, 6485.558298266760755,
  18615.571640885098091, 34900.952721145977266, 38912.003286093271411, 19685.429676859990727,
] as const;
const p = [
  0.02307344176494017303, 0.21589853405795699, 0.1274011611602473639, 0.022235277870649807,
  0.001421619193227893466, 2.9112874951168792e-5,
] as const;
const q = [
  1, 1.28426009614491121, 0.468238212480865118, 0.0659881378689285515, 0.00378239633202758244,
  7.29751555083966205e-5,
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
    2509.0809287301226727, 33430.575583588128105, 67265.770927008700853, 45921.953931549871457,
    13731.693765509461125, 1971.5909503065514427, 133.14166789178437745, 3.387132872796366608,
  ],
  under: [
    5226.495278852545925, 28729.085735721942674, 39307.89580009271061, 21213.794301586595867,
    5394.1960214247511077, 687.1870074920579083, 42.313330701600911252, 1,
  ],
} as const;
const shoulder = {
  over: [
    7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177, 1.27045825245236838258,
    3.64784832476320460504, 5.7694972214606914055, 4.6303378461565452959, 1.42343711074968357734,
  ],
  under: [
    1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966, 0.14810397642748007459,
    0.68976733498510000455, 1.6763848301838038494, 2.05319162663775882187, 1,
  ],
} as const;
const far = {
  over: [
    2.01033439929228813265e-7, 2.71155556874348757815e-5, 0.0012426609473880784386, 0.026532189526576123093,
    0.29656057182850489123, 1.7848265399172913358, 5.4637849111641143699, 6.6579046435011037772,
  ],
  under: [
    2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5, 7.868691311456132591e-4,
    0.0148753612908506148525, 0.13692988092273580531, 0.59983220655588793769, 1,
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
