import { DomainError } from "../../domain-error.ts";
import { cholesky } from "../numeric/cholesky.ts";
import { dot, solveLower, solveTransposed } from "../numeric/lower-triangle.ts";
import { solveLowerTransposed } from "../numeric/qr.ts";
import { at, sum, type Vector } from "../numeric/vector.ts";
import type { Difference } from "../several/family-intervals.ts";
import type { Contrast } from "./linear-model.ts";
import type { MixedFit, MixedParts } from "./mixed-model.ts";

/** A contrast in the columns of Q, and Φ times it, Φ = (Qᵀ V⁻¹ Q)⁻¹ in units of the residual variance. */
function inBasis({ qr, columns, lower }: MixedParts, contrast: Contrast) {
  const along = solveLowerTransposed(
    qr.r,
    qr.kept.map((j) => contrast.get(columns[j]?.name ?? "") ?? 0),
  );
  return { along, spread: solveTransposed(lower, solveLower(lower, along)) };
}

interface Precision {
  readonly ratios: readonly number[];
  /** Zᵀ P Z, P = V⁻¹ − V⁻¹XΦXᵀV⁻¹. */
  readonly zpz: readonly Float64Array[];
  readonly zvx: readonly Float64Array[];
  /** Places of each random term's columns. */
  readonly places: readonly (readonly number[])[];
  /** Covariance of the variances as estimated, the residual first. */
  readonly covariance: readonly Float64Array[];
}

/**
 * What the traces of the residual's own matrix G₀ = I are, from those of the random terms: by V = G₀ + Σ γₖGₖ and
 * P V P = P. `own(k)` and `both(k, l)` are tr(PGₖ) and tr(PGₖPGₗ).
 */
function information(
  freedom: number,
  ratios: readonly number[],
  own: readonly number[],
  both: readonly (readonly number[])[],
): number[][] {
  const weighted = (values: readonly number[]): number => sum(ratios.map((r, k) => r * at(values, k)));
  const withResidual = own.map((t, l) => t - weighted(both.map((row) => at(row, l))));
  const residual = freedom - weighted(own) - weighted(withResidual);
  return [[residual, ...withResidual], ...both.map((row, k) => [at(withResidual, k), ...row])].map((row) =>
    row.map((v) => v / 2),
  );
}

function precisionOf(fit: MixedFit): Precision {
  const { equations, ratios: sorted, lower } = fit.parts;
  const { zvz, zvx, termOf } = equations.productsAt(sorted);
  const ratios = [...sorted];
  const places = ratios.map((_, k) => termOf.flatMap((t, i) => (t === k ? [i] : [])));
  const halves = zvx.map((row) => solveLower(lower, row));
  // One half a row.
  const zpz = zvz.map((row, i) =>
    row.map((v, j) => v - dot(halves[i] as Float64Array, halves[j] as Float64Array, lower.length)),
  );
  const rowsOf = (k: number): Float64Array[] => (places[k] ?? []).map((i) => zpz[i] as Float64Array);
  const own = places.map((at1) => sum(at1.map((i) => at(zpz[i] as Float64Array, i))));
  const both = places.map((_, k) =>
    places.map((columns) => sum(rowsOf(k).map((row) => sum(columns.map((j) => at(row, j) ** 2))))),
  );
  const solver = cholesky(information(fit.rows - lower.length, ratios, own, both));
  if (solver === undefined)
    throw new DomainError({
      code: "contradiction",
      field: "random",
      value: fit.variances.map((v) => v.group),
      because: "Two of these change together in every row, so that their luck cannot be told apart.",
    });
  return { ratios, zpz, zvx, places, covariance: solver.inverse() };
}

/** rᵀGₖPGₗr for r = V⁻¹XΦc, the residual first: what the estimated variances add to a contrast's own. */
function bends({ ratios, zpz, places }: Precision, reach: Vector): number[][] {
  const random = places.map((mine) =>
    places.map((theirs) =>
      sum(
        mine.map((i) => at(reach, i) * sum(theirs.map((j) => at(zpz[i] as Float64Array, j) * at(reach, j)))),
      ),
    ),
  );
  const first = ratios.map((_, l) => -sum(random.map((row, k) => at(ratios, k) * at(row, l))));
  const corner = -sum(first.map((v, k) => at(ratios, k) * v));
  return [[corner, ...first], ...random.map((row, k) => [at(first, k), ...row])];
}

/** Σ over all pairs of variances. */
const overPairs = (covariance: readonly Vector[], of: (i: number, j: number) => number): number =>
  sum(covariance.map((row, i) => sum(Array.from(row, (w, j) => w * of(i, j)))));

/**
 * Combinations of the coefficients of a mixed model, with standard errors and degrees of freedom that allow for the
 * variances being estimates. For one combination Kenward and Roger's degrees of freedom are Satterthwaite's, from the
 * expected information of the variances; a variance estimated at 0 counts as estimated.
 *
 *     var = cᵀ(Φ + 2Λ)c,   ν = 2 (cᵀΦc)² / Σ wᵢⱼ aᵢ aⱼ,   aᵢ = ∂(cᵀΦc)/∂σᵢ²
 *
 * @param fit  a REML fit
 * @returns    a function of a contrast (weights by column name): its variance has in it what is not known of the
 *             variances
 * @throws DomainError where two random terms cannot be told apart
 *
 * Valid:    a fit by REML; one combination at a time
 * Accuracy: 1e-5 relative in standard errors, 1e-4 in degrees of freedom, against pbkrtest
 * Source:   M. G. Kenward and J. H. Roger, Biometrics 53 (1997) 983
 */
export function mixedContrasts(fit: MixedFit): (contrast: Contrast) => Difference {
  const precision = precisionOf(fit);
  const { ratios, zvx, places, covariance } = precision;
  return (contrast) => {
    const { along, spread } = inBasis(fit.parts, contrast);
    const plain = dot(along, spread, along.length);
    const reach = zvx.map((row) => dot(row, spread, spread.length));
    const slopes = places.map((mine) => sum(mine.map((i) => at(reach, i) ** 2)));
    const changes = [plain - sum(slopes.map((s, k) => s * at(ratios, k))), ...slopes];
    const bent = bends(precision, reach);
    const uncertain = overPairs(covariance, (i, j) => at(changes, i) * at(changes, j));
    const added = overPairs(covariance, (i, j) => at(bent[i] ?? [], j));
    return {
      estimate: dot(along, fit.parts.rotated, along.length),
      variance: fit.residualVariance * (plain + 2 * Math.max(0, added)),
      degreesOfFreedom: (2 * plain ** 2) / uncertain,
    };
  };
}
