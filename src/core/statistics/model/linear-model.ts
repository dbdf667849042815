import { DomainError } from "../../domain-error.ts";
import { fTails } from "../distribution/f-distribution.ts";
import { householderQr, type Qr, solveLowerTransposed, solveUpper } from "../numeric/qr.ts";
import { at, mean, sum, type Vector } from "../numeric/vector.ts";
import { type Column, interceptTerm, type ModelData, modelColumns } from "./model-matrix.ts";

/** One line of an analysis of variance. F and p are null for what is left over, and where nothing is left over. */
export interface AnovaLine {
  readonly term: string;
  readonly degreesOfFreedom: number;
  readonly sumOfSquares: number;
  readonly meanSquare: number;
  readonly f: number | null;
  readonly pValue: number | null;
}

export const residualTerm = "Residuals";

export interface LinearFit {
  readonly columns: readonly Column[];
  readonly qr: Qr;
  /** Coefficients of the kept columns, by name. */
  readonly coefficients: ReadonlyMap<string, number>;
  /** Sequential sums of squares in the order of the terms, the residual last. */
  readonly table: readonly AnovaLine[];
  /** What is left over; the mean square is NaN where nothing is. */
  readonly residual: { readonly degreesOfFreedom: number; readonly meanSquare: number };
  /** Qᵀ(y − mean). */
  readonly rotated: Vector;
}

/**
 * Sequential sums of squares: the squares of a rotated response, gathered by the term of the column that each place
 * belongs to. A term with no degree of freedom left has no line.
 */
export function anovaLines(
  terms: readonly string[],
  columns: readonly Column[],
  kept: readonly number[],
  rotated: Vector,
): AnovaLine[] {
  const squares = new Map<string, number[]>([...terms, residualTerm].map((term) => [term, []]));
  for (let i = 0; i < rotated.length; i++) {
    const column = i < kept.length ? columns[at(kept, i)] : undefined;
    squares.get(column?.term ?? residualTerm)?.push(at(rotated, i) ** 2);
  }
  const left = squares.get(residualTerm) ?? [];
  const error = left.length > 0 ? sum(left) / left.length : Number.NaN;
  return [...squares]
    .filter(([, list]) => list.length > 0)
    .map(([term, list]) => {
      const sumOfSquares = sum(list);
      const meanSquare = sumOfSquares / list.length;
      const f = term === residualTerm || !(error > 0) ? null : meanSquare / error;
      const pValue = f === null ? null : fTails(f, list.length, left.length).upper;
      return { term, degreesOfFreedom: list.length, sumOfSquares, meanSquare, f, pValue };
    });
}

/**
 * A linear model with factors, fitted by least squares through Householder QR; terms in their order, a column that
 * is a combination of earlier ones left out.
 *
 *     y = Xβ + e,   SS(term) = Σ (Qᵀy)ᵢ² over the term's columns
 *
 * The response is taken about its mean before it is rotated, so that a common offset costs no digits.
 *
 * @param response  n numbers
 * @param terms     names of factors or numeric variables, `a:b` for an interaction
 * @param data      n rows, paired with the response
 * @returns         coefficients, sequential table and what is left over
 * @throws DomainError for an unknown name, and for fewer than two rows
 *
 * Valid:    any number of rows from 2
 * Accuracy: NIST StRD SmLs04 (values around 1 000 000) to 1e-9
 * Source:   J. M. Chambers and T. J. Hastie, Statistical Models in S (1992), ch. 4 and 5
 */
export function fitLinearModel(response: Vector, terms: readonly string[], data: ModelData): LinearFit {
  if (response.length < 2 || response.length !== data.rows)
    throw new DomainError({ code: "not-enough-data", field: "rows", value: response.length });
  const columns = modelColumns(terms, data);
  const qr = householderQr(columns.map((c) => c.values));
  const centre = mean(response);
  const rotated = qr.rotate(Array.from(response, (y) => y - centre));
  const solved = solveUpper(qr.r, rotated);
  const coefficients = new Map(
    qr.kept.map((j, i) => {
      const name = (columns[j] as Column).name; // j is a place in columns
      return [name, at(solved, i) + (name === interceptTerm ? centre : 0)];
    }),
  );
  const table = anovaLines(terms, columns, qr.kept.slice(1), rotated.slice(1));
  const left = table.find((line) => line.term === residualTerm);
  return {
    columns,
    qr,
    coefficients,
    table,
    rotated,
    residual: {
      degreesOfFreedom: left?.degreesOfFreedom ?? 0,
      meanSquare: left?.meanSquare ?? Number.NaN,
    },
  };
}

/** A combination of coefficients, by column name; columns that it does not name weigh nothing. */
export type Contrast = ReadonlyMap<string, number>;

/** The weight of each response in a contrast's estimate: w = Q R⁻ᵀ c, so that the estimate is wᵀy. */
export function responseWeights(fit: LinearFit, contrast: Contrast): Float64Array {
  const c = fit.qr.kept.map((j) => contrast.get((fit.columns[j] as Column).name) ?? 0);
  const padded = new Float64Array(fit.rotated.length);
  padded.set(solveLowerTransposed(fit.qr.r, c));
  return fit.qr.rotateBack(padded);
}
