import { logNormalCdf, normalQuantile } from "./normal.ts";

/** The distribution of W in log T = Xβ + σW, in logarithms so that far tails keep their digits. */
export interface ErrorDistribution {
  readonly logLower: (w: number) => number;
  readonly logUpper: (w: number) => number;
  readonly logDensity: (w: number) => number;
  /** f′/f. */
  readonly slope: (w: number) => number;
  /** The slope's own slope. */
  readonly slopeChange: (w: number) => number;
  /** The w below which a share p lies. */
  readonly quantile: (p: number) => number;
  /** Whether σ is 1 and not estimated. */
  readonly fixedScale: boolean;
}

export const timeDistributions = ["weibull", "lognormal", "loglogistic", "exponential"] as const;
export type TimeDistribution = (typeof timeDistributions)[number];

const leastExtreme = {
  logLower: (w: number) => Math.log(-Math.expm1(-Math.exp(w))),
  logUpper: (w: number) => -Math.exp(w),
  logDensity: (w: number) => w - Math.exp(w),
  slope: (w: number) => 1 - Math.exp(w),
  slopeChange: (w: number) => -Math.exp(w),
  quantile: (p: number) => Math.log(-Math.log1p(-p)),
};

/** log(1 + e^w) without overflow. */
const softplus = (w: number): number => Math.max(w, 0) + Math.log1p(Math.exp(-Math.abs(w)));

/** Source: J. D. Kalbfleisch and R. L. Prentice, The Statistical Analysis of Failure Time Data (2002), 2.2. */
export const errorDistributions: Readonly<Record<TimeDistribution, ErrorDistribution>> = {
  weibull: { ...leastExtreme, fixedScale: false },
  exponential: { ...leastExtreme, fixedScale: true },
  lognormal: {
    logLower: logNormalCdf,
    logUpper: (w) => logNormalCdf(-w),
    logDensity: (w) => -0.5 * (w * w + Math.log(2 * Math.PI)),
    slope: (w) => -w,
    slopeChange: () => -1,
    quantile: normalQuantile,
    fixedScale: false,
  },
  loglogistic: {
    logLower: (w) => -softplus(-w),
    logUpper: (w) => -softplus(w),
    logDensity: (w) => -softplus(w) - softplus(-w),
    slope: (w) => -Math.tanh(w / 2),
    slopeChange: (w) => -0.5 / Math.cosh(w / 2) ** 2,
    quantile: (p) => Math.log(p / (1 - p)),
    fixedScale: false,
  },
};
