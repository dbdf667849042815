import { DomainError } from "../../domain-error.ts";
import { solveLower, solveTransposed } from "../numeric/lower-triangle.ts";
import { householderQr, type Qr, solveLowerTransposed, solveUpper } from "../numeric/qr.ts";
import { at, mean, sum, type Vector } from "../numeric/vector.ts";
import { type Grouping, type MixedEquations, type MixedFactor, mixedEquations } from "./mixed-equations.ts";
import type { Column } from "./model-matrix.ts";
import { leastDeviance } from "./variance-ratios.ts";

export interface FixedEffect {
  readonly term: string;
  readonly estimate: number;
  /** From the variances as estimated, their own uncertainty left out: `mixedContrasts` has it in. */
  readonly standardError: number;
}

export interface RandomVariance {
  readonly group: string;
  /** Exactly 0 where the data show none. */
  readonly variance: number;
}

/** What later steps need of a fit. */
export interface MixedParts {
  readonly qr: Qr;
  readonly columns: readonly Column[];
  readonly equations: MixedEquations;
  readonly ratios: Float64Array;
  /** L with LLᵀ = Qᵀ V⁻¹ Q for the kept columns X = QR, V in units of the residual variance. */
  readonly lower: readonly Float64Array[];
  /** QᵀXβ: the coefficients in the columns of Q. */
  readonly rotated: Float64Array;
}

export interface MixedFit {
  readonly method: "reml" | "ml";
  readonly fixed: readonly FixedEffect[];
  /** In the order of the groupings given. */
  readonly variances: readonly RandomVariance[];
  readonly residualVariance: number;
  /** −2 log-likelihood, restricted for REML. */
  readonly criterion: number;
  readonly rows: number;
  readonly parts: MixedParts;
}

/** The columns of Q that span the fixed part, and what of the response they leave. */
function spanned(qr: Qr, y: Vector): { basis: Float64Array[]; along: Float64Array; left: Float64Array } {
  const n = y.length;
  const p = qr.kept.length;
  const basis = Array.from({ length: p }, (_, i) => {
    const unit = new Float64Array(n);
    unit[i] = 1;
    return qr.rotateBack(unit);
  });
  const rotated = qr.rotate(y);
  const left = qr.rotateBack(rotated.map((v, i) => (i < p ? 0 : v)));
  return { basis, along: rotated.slice(0, p), left };
}

function check(response: Vector, groupings: readonly Grouping[], kept: number): void {
  const n = response.length;
  if (n <= kept)
    throw new DomainError({ code: "not-enough-data", field: "rows", value: n, limits: { min: kept + 1 } });
  for (const { name, of, groups } of groupings) {
    if (of.length !== n || groups < 2 || groups >= n)
      throw new DomainError({
        code: "not-enough-data",
        field: "random",
        value: name,
        because: `${name} has ${groups} in ${n} rows: two or more, and fewer than rows, would do.`,
      });
  }
}

interface Scale {
  readonly method: MixedFit["method"];
  readonly rows: number;
  readonly kept: number;
  /** Sum of squares that the response was divided by. */
  readonly squares: number;
  /** 2 Σ ln |Rᵢᵢ| of the fixed columns. */
  readonly logOfColumns: number;
}

const freedomOf = ({ method, rows, kept }: Scale): number => (method === "reml" ? rows - kept : rows);

const residualVarianceAt = (scale: Scale, { lower }: MixedFactor): number => {
  const last = lower[scale.kept] as Float64Array; // the response comes after the kept columns
  return (scale.squares * at(last, scale.kept) ** 2) / freedomOf(scale);
};

function devianceAt(scale: Scale, factor: MixedFactor): number {
  let deviance = factor.logDeterminant;
  if (scale.method === "reml") {
    deviance += scale.logOfColumns;
    for (let i = 0; i < scale.kept; i++) deviance += 2 * Math.log(at(factor.lower[i] as Float64Array, i));
  }
  return deviance + freedomOf(scale) * (1 + Math.log(2 * Math.PI * residualVarianceAt(scale, factor)));
}

const withoutRandom = (columns: readonly Vector[]): MixedEquations => {
  const identity: MixedFactor = {
    logDeterminant: 0,
    lower: columns.map((_, i) => Float64Array.from({ length: i + 1 }, (__, j) => (i === j ? 1 : 0))),
  };
  return { factorAt: () => identity, productsAt: () => ({ zvz: [], zvx: [], termOf: [] }) };
};

/**
 * A linear model with random terms, crossed or nested in any way, by restricted or full maximum likelihood; rows need
 * not be balanced.
 *
 *     y = Xβ + Σ Zₖuₖ + e,   uₖ ~ N(0, σₖ²),   e ~ N(0, σ²)
 *
 * The deviance is profiled over β and σ², so that only the ratios σₖ²/σ² are searched for; a variance that the data
 * do not show comes out as exactly 0. Fixed columns that are combinations of earlier ones are left out.
 *
 * @param response   n numbers
 * @param columns    fixed columns of n numbers, the intercept first
 * @param groupings  random terms of n group numbers each
 * @param method     `reml` or `ml`
 * @returns          coefficients, variances and −2 log-likelihood
 * @throws DomainError for a random term with one group or as many as rows, and where no residual noise is left
 *
 * Valid:    fewer than about 300 groups in all but the largest term
 * Accuracy: 1e-6 relative in coefficients, 1e-5 in variances
 * Source:   D. Bates, M. Mächler, B. Bolker and S. Walker, J. Statist. Softw. 67 (2015) 1
 */
export function fitMixedModel(
  response: Vector,
  columns: readonly Column[],
  groupings: readonly Grouping[],
  method: "reml" | "ml" = "reml",
): MixedFit {
  const qr = householderQr(columns.map((c) => c.values));
  const kept = qr.kept.length;
  check(response, groupings, kept);
  const constant = isConstant(columns[qr.kept[0] ?? 0]?.values ?? []);
  const centre = constant ? mean(response) : 0;
  const { basis, along, left } = spanned(
    qr,
    Array.from(response, (y) => y - centre),
  );
  const squares = sum(left.map((v) => v * v));
  if (!(squares > 0)) throw new DomainError({ code: "no-variation", field: "rows", value: at(response, 0) });
  const order = groupings.map((_, k) => k).sort((a, b) => groupsAt(groupings, b) - groupsAt(groupings, a));
  const [first, ...others] = order.map((k) => groupings[k] as Grouping); // a permutation of the places
  const all = [...basis, left.map((v) => v / Math.sqrt(squares))];
  const equations = first === undefined ? withoutRandom(all) : mixedEquations([first, ...others], all);
  const logOfColumns = sum(qr.r.map((column, j) => 2 * Math.log(Math.abs(at(column, j)))));
  const scale: Scale = { method, rows: response.length, kept, squares, logOfColumns };
  const deviance = (ratios: Float64Array): number => devianceAt(scale, equations.factorAt(ratios));
  const ratios = leastDeviance(deviance, groupings.length);
  const factor = equations.factorAt(ratios);
  const lower = factor.lower.slice(0, kept);
  const ofResponse = (factor.lower[kept] as Float64Array).subarray(0, kept);
  const correction = solveTransposed(lower, ofResponse).map((v) => v * Math.sqrt(squares));
  const rotated = along.map((v, i) => v + at(correction, i));
  const residualVariance = residualVarianceAt(scale, factor);
  const parts: MixedParts = { qr, columns, equations, ratios, lower, rotated };
  return {
    method,
    fixed: fixedEffects(parts, residualVariance, centre),
    variances: groupings.map(({ name }, k) => ({
      group: name,
      variance: residualVariance * at(ratios, order.indexOf(k)),
    })),
    residualVariance,
    criterion: deviance(ratios),
    rows: response.length,
    parts,
  };
}

const groupsAt = (groupings: readonly Grouping[], k: number): number => groupings[k]?.groups ?? 0;

const isConstant = (values: Vector): boolean => Array.from(values).every((v) => v === at(values, 0));

function fixedEffects(parts: MixedParts, residualVariance: number, centre: number): FixedEffect[] {
  const { qr, columns, rotated, lower } = parts;
  const solved = solveUpper(qr.r, rotated);
  return qr.kept.map((j, i) => {
    const { name, values } = columns[j] as Column; // kept places are places of columns
    const along = solveLowerTransposed(
      qr.r,
      qr.kept.map((_, k) => (k === i ? 1 : 0)),
    );
    const half = solveLower(lower, along);
    return {
      term: name,
      estimate: at(solved, i) + (i === 0 ? centre / at(values, 0) : 0),
      standardError: Math.sqrt(residualVariance * sum(half.map((v) => v * v))),
    };
  });
}
