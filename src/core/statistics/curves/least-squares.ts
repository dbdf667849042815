import { DomainError } from "../../domain-error.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { householderQr, solveUpper } from "../numeric/qr.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";

/** A curve at the place of one reading: its height, and its slope by each parameter. */
export interface CurvePoint {
  readonly value: number;
  readonly slopes: Vector;
}

/** A curve with p parameters, asked for by the place of a reading in the list. */
export type Curve = (parameters: Vector, reading: number) => CurvePoint;

export interface CurveFit {
  readonly parameters: readonly number[];
  readonly standardErrors: readonly number[];
  /** (JᵀJ)⁻¹, p×p: the covariance if a reading's variance were 1. */
  readonly inverseInformation: readonly Vector[];
  readonly residualSumOfSquares: number;
  /** √(sum of squares / degrees of freedom). */
  readonly residualDeviation: number;
  readonly degreesOfFreedom: number;
}

interface Place {
  readonly parameters: Vector;
  readonly residuals: Float64Array;
  /** p columns of n slopes. */
  readonly columns: readonly Float64Array[];
  readonly squares: number;
}

const mostSteps = 1000;
/** What a step may still promise, as a share of the sum of squares, when the bottom is reached. */
const nothingMore = 1e-20;
/** Below this share of the readings' own squares what is left is rounding. */
const exactly = 1e-26;

function look(readings: Vector, curve: Curve, parameters: Vector): Place {
  const points = Array.from(readings, (_, i) => curve(parameters, i));
  const residuals = Float64Array.from(points, ({ value }, i) => at(readings, i) - value);
  const columns = Array.from(parameters, (_, j) => Float64Array.from(points, ({ slopes }) => at(slopes, j)));
  return { parameters, residuals, columns, squares: sum(residuals.map((r) => r * r)) };
}

const lengthOf = (v: Vector): number => Math.sqrt(sum(Array.from(v, (x) => x * x)));
const isDefined = ({ squares, columns }: Place): boolean =>
  Number.isFinite(squares) && columns.every((column) => column.every(Number.isFinite));

const isExact = ({ squares }: Place, readings: Vector): boolean =>
  squares <= exactly * lengthOf(readings) ** 2;

/** The step that least squares ask for when each parameter is held back by its own scale: Levenberg's and Marquardt's. */
function heldStep({ columns, residuals }: Place, scale: Vector, damping: number): Float64Array {
  const p = columns.length;
  const held = columns.map((column, j) =>
    Float64Array.from([
      ...column,
      ...Array.from({ length: p }, (_, i) => (i === j ? damping * at(scale, j) : 0)),
    ]),
  );
  const { r, rotate } = householderQr(held, held.map(lengthOf));
  return solveUpper(r, rotate([...residuals, ...new Float64Array(p)]));
}

/** The part of the residuals that a straight step could still take away, as a share of what it could not. */
function promised({ columns, residuals, squares }: Place): number {
  const { kept, rotate } = householderQr(columns);
  const left = rotate(residuals);
  const within = sum(Array.from(kept, (_, j) => at(left, j) ** 2));
  return within / Math.max(squares, Number.MIN_VALUE);
}

const noBottom = (because: string): DomainError =>
  new DomainError({ code: "no-convergence", field: "start", value: null, because });

function walkDown(readings: Vector, curve: Curve, start: Vector): Place {
  let here = look(readings, curve, start);
  if (!isDefined(here)) throw noBottom("The curve has no value at the start.");
  let scale: Vector = new Float64Array(start.length);
  let damping = 100; // short first steps: a long one may leave the region where the slopes mean anything
  for (let pass = 0; pass < mostSteps; pass++) {
    if (isExact(here, readings) || promised(here) < nothingMore) return here;
    // A scale only grows (Moré 1978), so that a parameter which stops mattering is not thrown far away.
    scale = here.columns.map((column, j) => Math.max(at(scale, j), lengthOf(column)) || 1);
    const step = heldStep(here, scale, damping);
    const to = Float64Array.from(step, (s, j) => at(here.parameters, j) + s);
    const there = look(readings, curve, to);
    if (isDefined(there) && there.squares < here.squares) {
      here = there;
      damping = Math.max(damping / 10, 1e-12);
    } else if (
      damping > 1e12 ||
      step.every((s, j) => Math.abs(s) <= 1e-15 * Math.abs(at(here.parameters, j)))
    )
      return here; // no step that a number can hold goes down any further
    else damping *= 5;
  }
  throw noBottom(`The sum of squares still falls after ${mostSteps} steps.`);
}

/** What a straight step still promises at a place that counts as the bottom: rounding spoils the last digits. */
const settled = 1e-9;

/**
 * The curve with the least sum of squared distances from readings, each reading as sure as the others.
 *
 *     minimise Σ (yᵢ − f(θ, i))²,   cov θ = s²(JᵀJ)⁻¹
 *
 * @param readings  y, n numbers
 * @param curve     its value and slopes at each reading
 * @param start     p parameters to begin at
 * @returns         parameters with standard errors, (JᵀJ)⁻¹, residual sum of squares and deviation, degrees of freedom
 * @throws DomainError with fewer readings than parameters, where readings do not fix every parameter, and where no bottom
 *         is found from this start
 *
 * Valid:    a bottom near the start; another start may find a deeper one
 * Accuracy: NIST StRD nonlinear problems to 6 digits and more from both printed starts, or a refusal
 * Source:   J. J. Moré, The Levenberg–Marquardt algorithm, in Lecture Notes in Mathematics 630 (1978) 105;
 *           D. M. Bates and D. G. Watts, Nonlinear Regression Analysis and Its Applications (1988), 2.2
 * @example
 * fitLeastSquares([1, 2, 4], (v, i) => ({ value: v[0] + v[1] * i, slopes: [1, i] }), [0, 0]).parameters[1] // => 1.5
 */
export function fitLeastSquares(readings: Vector, curve: Curve, start: Vector): CurveFit {
  const [n, p] = [readings.length, start.length];
  if (n < p)
    throw new DomainError({
      code: "not-enough-data",
      field: "readings",
      value: n,
      limits: { min: p },
      because: "A curve needs as many readings as it has parameters.",
    });
  const bottom = walkDown(readings, curve, start);
  const { columns, squares } = bottom;
  const information = columns.map((a) => columns.map((b) => sum(a.map((x, i) => x * at(b, i)))));
  const solver = householderQr(columns).kept.length < p ? undefined : cholesky(information);
  if (solver === undefined) throw noBottom("The readings do not fix every parameter of this curve.");
  if (!isExact(bottom, readings) && promised(bottom) > settled)
    throw noBottom("The sum of squares falls no further, and has no bottom there.");
  const degreesOfFreedom = n - p;
  const variance = squares / degreesOfFreedom;
  const inverseInformation = solver.inverse();
  return {
    parameters: Array.from(bottom.parameters),
    standardErrors: inverseInformation.map((row, j) => Math.sqrt(at(row, j) * variance)),
    inverseInformation,
    residualSumOfSquares: squares,
    residualDeviation: Math.sqrt(variance),
    degreesOfFreedom,
  };
}
