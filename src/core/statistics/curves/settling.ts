import { DomainError } from "../../domain-error.ts";
import { type Estimated, errorsOf, known } from "./estimated.ts";
import { type CurveFit, fitLeastSquares } from "./least-squares.ts";
import {
  courseOver,
  figuresOf,
  firstGuess,
  type KnownEnds,
  layoutOf,
  type SettlingShape,
  type TimedReading,
} from "./settling-course.ts";

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
