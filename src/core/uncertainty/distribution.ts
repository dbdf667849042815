import { DomainError, inRange } from "../domain-error.ts";
import { type Random, randomNormal } from "../random.ts";

interface Ends {
  readonly low: number;
  readonly high: number;
}
/** What is known of a quantity, as a distribution of the values that it may have. */
export type Distribution =
  | { readonly dist: "normal"; readonly mean: number; readonly sd: number }
  | ({ readonly dist: "rectangular" | "triangular" | "arcsine" } & Ends)
  /** `top` is the width of the flat part over that of the base. */
  | ({ readonly dist: "trapezoid"; readonly top: number } & Ends)
  /** Both ends are known only to ± `inexact`, the middle exactly. */
  | ({ readonly dist: "curvilinear-trapezoid"; readonly inexact: number } & Ends)
  | { readonly dist: "t"; readonly mean: number; readonly scale: number; readonly df: number };

const positive = { min: 0, max: Number.MAX_VALUE };

/** @throws DomainError for a width, scale or ratio that cannot be, and for NaN */
function checked<T extends Distribution>(d: T): T {
  if (d.dist === "normal") inRange("sd", d.sd, positive);
  else if (d.dist === "t") {
    inRange("scale", d.scale, positive);
    inRange("df", d.df, { min: Number.MIN_VALUE, max: Number.MAX_VALUE });
  } else {
    if (!(d.low <= d.high))
      throw new DomainError({ code: "contradiction", field: "high", value: d.high, limits: { min: d.low } });
    if (d.dist === "trapezoid") inRange("top", d.top, { min: 0, max: 1 });
    if (d.dist === "curvilinear-trapezoid")
      inRange("inexact", d.inexact, { min: 0, max: (d.high - d.low) / 2 });
  }
  return d;
}

/**
 * The middle of a distribution: its expectation.
 *
 * @param distribution  of any shape
 * @returns             (low + high)/2, or the mean
 */
export const centreOf = (distribution: Distribution): number =>
  "mean" in distribution ? distribution.mean : (distribution.low + distribution.high) / 2;

/**
 * The standard deviation of a distribution: the standard uncertainty of what it describes.
 *
 *     half-width a: rectangular a/√3, triangular a/√6, arcsine a/√2
 *     trapezoid a·√((1 + β²)/6), curvilinear trapezoid √(a²/3 + d²/9), t scale·√(ν/(ν − 2))
 *
 * @param distribution  of any shape
 * @returns             scalar, in the unit of the quantity
 * @throws DomainError for a t with 2 degrees of freedom or fewer, which has none; for impossible widths; for NaN
 *
 * Valid:    low ≤ high, top 0–1, inexact at most the half-width
 * Accuracy: full digits
 * Source:   JCGM 100:2008, 4.3.7–4.3.9; JCGM 101:2008, 6.4.3.4, 6.4.9.5
 * @example
 * standardDeviationOf({ dist: "rectangular", low: -1, high: 1 }) // => 0.57735
 */
export function standardDeviationOf(distribution: Distribution): number {
  const d = checked(distribution);
  if (d.dist === "normal") return d.sd;
  if (d.dist === "t") {
    inRange("df", d.df, { min: 2 * (1 + Number.EPSILON), max: Number.MAX_VALUE });
    return d.scale * Math.sqrt(d.df / (d.df - 2));
  }
  const half = (d.high - d.low) / 2;
  switch (d.dist) {
    case "rectangular":
      return half / Math.sqrt(3);
    case "triangular":
      return half / Math.sqrt(6);
    case "arcsine":
      return half / Math.SQRT2;
    case "trapezoid":
      return half * Math.sqrt((1 + d.top ** 2) / 6);
    case "curvilinear-trapezoid":
      return Math.sqrt(half ** 2 / 3 + d.inexact ** 2 / 9);
  }
}

/**
 * A source of values of a distribution.
 *
 * The t is drawn by Bailey's polar form, which holds for degrees of freedom that are not whole.
 *
 * @param distribution  of any shape
 * @param random        seeded, uniform in [0, 1)
 * @returns             a function that draws a value each time
 * @throws DomainError for impossible widths, and for NaN
 *
 * Valid:    as `standardDeviationOf`; a t of any degrees of freedom above 0
 * Accuracy: values have the 32 bits of the source
 * Source:   JCGM 101:2008, 6.4; R. W. Bailey, Math. Comp. 62 (1994) 779 (t)
 */
export function drawFrom(distribution: Distribution, random: Random): () => number {
  const d = checked(distribution);
  if (d.dist === "normal") return () => d.mean + d.sd * randomNormal(random);
  if (d.dist === "t")
    return () => {
      const radius = Math.sqrt(d.df * ((1 - random()) ** (-2 / d.df) - 1));
      return d.mean + d.scale * radius * Math.cos(2 * Math.PI * random());
    };
  const { low, high } = d;
  const half = (high - low) / 2;
  switch (d.dist) {
    case "rectangular":
      return () => low + 2 * half * random();
    case "triangular":
      return () => low + half * (random() + random());
    case "arcsine":
      return () => low + half * (1 + Math.cos(2 * Math.PI * random()));
    case "trapezoid":
      return () => low + half * ((1 + d.top) * random() + (1 - d.top) * random());
    case "curvilinear-trapezoid":
      return () => {
        const end = low - d.inexact + 2 * d.inexact * random();
        return end + (low + high - 2 * end) * random();
      };
  }
}
