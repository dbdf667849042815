import { DomainError } from "../../domain-error.ts";
import { normalQuantile } from "../distribution/normal.ts";
import { studentTUpperQuantile } from "../distribution/student-t.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import { type Curve, type CurveFit, fitLeastSquares } from "./least-squares.ts";

/** What was read at a time. */
export interface TimedReading {
  readonly time: number;
  readonly value: number;
}

export const settlingShapes = ["first-order", "weibull"] as const;
export type SettlingShape = (typeof settlingShapes)[number];

/** Ends of the way that are known beforehand; the others are estimated. */
export interface KnownEnds {
  readonly start?: number | undefined;
  readonly end?: number | undefined;
}

export interface Estimated {
  readonly value: number;
  readonly standardError: number;
  /** 95 %. */
  readonly interval: readonly [number, number];
}

export interface Settling {
  readonly start: Estimated;
  readonly end: Estimated;
  /** After this time 1/e of the way is left. */
  readonly timeConstant: Estimated;
  /** β; exactly 1 for a way of first order. */
  readonly shape: Estimated;
  /** When no more than such a share of the way is left. */
  readonly timeUntilLeft: (share: number) => Estimated;
  readonly valueAt: (time: number) => number;
  readonly fit: CurveFit;
}

const known = (value: number): Estimated => ({ value, standardError: 0, interval: [value, value] });

/** Places of the four quantities among the parameters; −1 for one that is known. τ and β go by their logarithms, so that both stay above 0. */
interface Layout {
  readonly logTime: number;
  readonly logShape: number;
  readonly start: number;
  readonly end: number;
  readonly count: number;
}

function layoutOf(shape: SettlingShape, ends: KnownEnds): Layout {
  let count = 1;
  const next = (estimated: boolean): number => (estimated ? count++ : -1);
  const [logShape, start, end] = [
    next(shape === "weibull"),
    next(ends.start === undefined),
    next(ends.end === undefined),
  ];
  return { logTime: 0, logShape, start, end, count };
}

/** Readings as they must be: enough of them, at times of 0 and later, and not all alike. */
function checked(readings: readonly TimedReading[], parameters: number): void {
  if (readings.length <= parameters)
    throw new DomainError({
      code: "not-enough-data",
      field: "readings",
      value: readings.length,
      limits: { min: parameters + 1 },
      because: "One reading more than there are unknowns says how far the readings lie off the curve.",
    });
  readings.forEach(({ time }, i) => {
    if (!(time >= 0) || !Number.isFinite(time))
      throw new DomainError({
        code: "out-of-range",
        field: `readings[${i}].time`,
        value: time,
        limits: { min: 0 },
      });
  });
  if (readings.every(({ value }) => value === readings[0]?.value))
    throw new DomainError({
      code: "no-variation",
      field: "readings",
      value: readings[0]?.value,
      because: "All readings are alike: nothing settles.",
    });
}

/** A first guess: the ends as read, and 1/e of the way left by the middle of the times. */
function firstGuess(readings: readonly TimedReading[], layout: Layout): Float64Array {
  const inOrder = [...readings].sort((a, b) => a.time - b.time);
  const [first, last] = [inOrder[0], inOrder.at(-1)];
  const guess = new Float64Array(layout.count);
  const times = inOrder.map(({ time }) => time).filter((time) => time > 0);
  guess[layout.logTime] = Math.log(times[Math.floor((times.length - 1) / 2)] ?? 1);
  if (layout.start >= 0) guess[layout.start] = first?.value ?? 0;
  if (layout.end >= 0) guess[layout.end] = last?.value ?? 0;
  return guess;
}

/** What parameters stand for. */
interface Figures {
  readonly start: number;
  readonly end: number;
  readonly timeConstant: number;
  readonly exponent: number;
}

const figuresOf = (layout: Layout, ends: KnownEnds, parameters: Vector): Figures => ({
  start: layout.start < 0 ? (ends.start as number) : at(parameters, layout.start),
  end: layout.end < 0 ? (ends.end as number) : at(parameters, layout.end),
  timeConstant: Math.exp(at(parameters, layout.logTime)),
  exponent: layout.logShape < 0 ? 1 : Math.exp(at(parameters, layout.logShape)),
});

const courseOver =
  (times: readonly number[], layout: Layout, ends: KnownEnds): Curve =>
  (parameters, reading) => {
    const { start, end, timeConstant, exponent } = figuresOf(layout, ends, parameters);
    const way = at(times, reading) / timeConstant;
    const power = way ** exponent;
    const left = Math.exp(-power);
    const byTime = (start - end) * left * power * exponent;
    const slopes = new Float64Array(layout.count);
    slopes[layout.logTime] = byTime;
    if (layout.logShape >= 0) slopes[layout.logShape] = way === 0 ? 0 : -byTime * Math.log(way);
    if (layout.start >= 0) slopes[layout.start] = left;
    if (layout.end >= 0) slopes[layout.end] = 1 - left;
    return { value: end + (start - end) * left, slopes };
  };

/** How sure a figure is whose slope by each parameter is given. */
interface Errors {
  readonly straight: (value: number, weights: Vector) => Estimated;
  /** For what is above 0: `weights` and the interval are those of its logarithm. */
  readonly byLogarithm: (value: number, weights: Vector) => Estimated;
}

function errorsOf(
  { inverseInformation, residualDeviation, degreesOfFreedom }: CurveFit,
  atLeast: number,
): Errors {
  const scatter = Math.max(residualDeviation, atLeast);
  const reach = Math.max(
    studentTUpperQuantile(0.025, degreesOfFreedom) * residualDeviation,
    normalQuantile(0.975) * atLeast,
  );
  const spread = (weights: Vector): number =>
    Math.sqrt(
      sum(
        inverseInformation.flatMap((row, i) =>
          Array.from(row, (v, j) => at(weights, i) * v * at(weights, j)),
        ),
      ),
    );
  return {
    straight: (value, weights) => {
      const one = spread(weights);
      return {
        value,
        standardError: scatter * one,
        interval: [value - reach * one, value + reach * one],
      };
    },
    byLogarithm: (value, weights) => {
      const one = spread(weights);
      return {
        value,
        standardError: value * scatter * one,
        interval: [value * Math.exp(-reach * one), value * Math.exp(reach * one)],
      };
    },
  };
}

/**
 * How readings settle from where they start to where they end: sheen or hardness of a coat over days, what is left of
 * flakes in a jar.
 *
 *     y(t) = end + (start − end)·exp(−(t/τ)^β),   β = 1 for first order
 *
 * Not for readings that turn back on their way, nor for looks that say only "not yet" and "done": those are times, and
 * go to `readyTime`.
 *
 * @param readings  n times with what was read
 * @param shape     first order, or Weibull with an exponent of its own
 * @param ends      start and end where they are known
 * @param atLeast   a standard deviation that readings have at the least, however well they lie on the curve [their unit], scalar
 * @returns         start, end, τ, β and the time until a share is left, each with its 95 % interval, and the fit
 * @throws DomainError for no more readings than unknowns, times below 0, readings all alike, and readings that do not fix the curve
 *
 * Valid:    readings each as sure as the others; intervals by slopes at the fit, too narrow where few readings lie on the bend
 * Accuracy: as the fit
 * Source:   D. M. Bates and D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988), 2.2 and A4.1
 * @example
 * settling([1, 2, 4, 8].map((time) => ({ time, value: 100 * 2 ** -time })), "first-order", { end: 0 }).timeUntilLeft(0.5).value // => 1
 */
export function settling(
  readings: readonly TimedReading[],
  shape: SettlingShape,
  ends: KnownEnds = {},
  atLeast = 0,
): Settling {
  const layout = layoutOf(shape, ends);
  checked(readings, layout.count);
  const course = courseOver(
    readings.map(({ time }) => time),
    layout,
    ends,
  );
  const fit = fitLeastSquares(
    readings.map(({ value }) => value),
    course,
    firstGuess(readings, layout),
  );
  const { start, end, timeConstant, exponent } = figuresOf(layout, ends, fit.parameters);
  const { straight, byLogarithm } = errorsOf(fit, atLeast);
  const only = (place: number): Float64Array =>
    Float64Array.from({ length: layout.count }, (_, i) => (i === place ? 1 : 0));
  return {
    start: layout.start < 0 ? known(start) : straight(start, only(layout.start)),
    end: layout.end < 0 ? known(end) : straight(end, only(layout.end)),
    timeConstant: byLogarithm(timeConstant, only(layout.logTime)),
    shape: layout.logShape < 0 ? known(1) : byLogarithm(exponent, only(layout.logShape)),
    timeUntilLeft: (share) => {
      const way = Math.log(-Math.log(share)) / exponent;
      const weights = only(layout.logTime);
      if (layout.logShape >= 0) weights[layout.logShape] = -way;
      return byLogarithm(timeConstant * Math.exp(way), weights);
    },
    valueAt: (time) => end + (start - end) * Math.exp(-((time / timeConstant) ** exponent)),
    fit,
  };
}
