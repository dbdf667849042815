import { DomainError } from "../domain-error.ts";

/** A straight line through corrections that were read at several places: a thermometer or a scale, checked. */
export interface CalibrationLine {
  /** The correction at the reference place, and its change for one unit. */
  readonly intercept: number;
  readonly slope: number;
  readonly interceptUncertainty: number;
  readonly slopeUncertainty: number;
  /** Correlation of the two. */
  readonly correlation: number;
  /** Standard deviation of the points about the line. */
  readonly residual: number;
  readonly degreesOfFreedom: number;
}

function checkPoints(places: readonly number[], readings: readonly number[]): void {
  if (places.length !== readings.length)
    throw new DomainError({
      code: "contradiction",
      field: "readings",
      value: readings.length,
      because: `There are ${places.length} places.`,
    });
  if (places.length < 3)
    throw new DomainError({
      code: "not-enough-data",
      field: "places",
      value: places.length,
      limits: { min: 3 },
    });
  if (places.every((x) => x === places[0]))
    throw new DomainError({ code: "no-variation", field: "places", value: places[0] });
}

/**
 * A calibration line by least squares, with how sure its two figures are and how they hang together.
 *
 *     b(t) = y1 + y2·(t − t0)
 *     s² = Σ(b − b̂)²/(n − 2),   u²(y1) = s²·Σθ²/D,   u²(y2) = n·s²/D,   r = −Σθ/√(n·Σθ²)
 *     θ = t − t0,   D = n·Σθ² − (Σθ)²
 *
 * @param places     n ≥ 3, not all the same
 * @param readings   n, paired with the places
 * @param reference  t0
 * @returns          the line
 * @throws DomainError for fewer than three points, unequal lists, and places that are all one
 *
 * Valid:    points of equal uncertainty
 * Accuracy: full digits where the places are not far from the reference beside their spread
 * Source:   JCGM 100:2008, H.3, eq. H.13a–H.13f
 * @example
 * calibrationLine([0, 1, 2], [1, 3, 5.3], 0).slope // => 2.15
 */
export function calibrationLine(
  places: readonly number[],
  readings: readonly number[],
  reference: number,
): CalibrationLine {
  checkPoints(places, readings);
  const n = places.length;
  const sum = (of: (i: number) => number): number => places.reduce((total, _, i) => total + of(i), 0);
  const theta = places.map((t) => t - reference);
  const at = (i: number): number => theta[i] as number;
  const reading = (i: number): number => readings[i] as number;
  const [st, stt] = [sum(at), sum((i) => at(i) ** 2)];
  const [sb, sbt] = [sum(reading), sum((i) => reading(i) * at(i))];
  const determinant = n * stt - st ** 2;
  const intercept = (sb * stt - sbt * st) / determinant;
  const slope = (n * sbt - sb * st) / determinant;
  const residual = Math.sqrt(sum((i) => (reading(i) - intercept - slope * at(i)) ** 2) / (n - 2));
  return {
    intercept,
    slope,
    interceptUncertainty: residual * Math.sqrt(stt / determinant),
    slopeUncertainty: residual * Math.sqrt(n / determinant),
    correlation: -st / Math.sqrt(n * stt),
    residual,
    degreesOfFreedom: n - 2,
  };
}

/**
 * The correction that a calibration line gives at a place, and its standard uncertainty.
 *
 *     u²(b) = u²(y1) + (t − t0)²·u²(y2) + 2(t − t0)·u(y1)·u(y2)·r
 *
 * @param line  as `calibrationLine` gives it
 * @param away  t − t0, scalar
 *
 * Valid:    near the places that were read
 * Accuracy: full digits
 * Source:   JCGM 100:2008, H.3, eq. H.15
 */
export function correctionAt(
  line: CalibrationLine,
  away: number,
): { readonly value: number; readonly standardUncertainty: number } {
  const { interceptUncertainty: u1, slopeUncertainty: u2, correlation } = line;
  return {
    value: line.intercept + line.slope * away,
    standardUncertainty: Math.sqrt(u1 ** 2 + (away * u2) ** 2 + 2 * away * u1 * u2 * correlation),
  };
}
