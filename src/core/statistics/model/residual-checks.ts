import { fTails } from "../distribution/f-distribution.ts";
import { studentTTails } from "../distribution/student-t.ts";
import { at, mean, squaredDeviations, sum } from "../numeric/vector.ts";

/** What a patch read beyond what its board, jar and level say. */
export interface Residual {
  readonly patch: string;
  readonly level: string;
  readonly fitted: number;
  readonly residual: number;
  /** How much of its own fitted value a patch makes, 0 to 1. */
  readonly leverage: number;
}

/** What the noise looks like where it does not look as the analysis takes it to. */
export type ResidualRemark =
  | { readonly code: "one-patch-apart"; readonly patch: string; readonly times: number }
  | { readonly code: "spread-differs"; readonly most: string; readonly least: string; readonly times: number }
  | { readonly code: "spread-grows"; readonly correlation: number };

/** Remarks are made below this, so that one in a hundred well-behaved trials gets each. */
const remarkable = 0.01;

/** The patch farthest off, held against the others with as many chances as patches. */
function farthest(residuals: readonly Residual[], freedom: number): ResidualRemark | null {
  if (freedom < 3) return null;
  const squares = sum(residuals.map((r) => r.residual ** 2));
  const without = residuals.map((r) => {
    const room = 1 - r.leverage;
    if (!(room > 1e-6)) return 0;
    const left = (squares - r.residual ** 2 / room) / (freedom - 1);
    return left > 0 ? Math.abs(r.residual) / Math.sqrt(left * room) : Number.POSITIVE_INFINITY;
  });
  const most = Math.max(...without);
  const place = without.indexOf(most);
  const chance = 2 * studentTTails(most, freedom - 1).upper * residuals.length;
  return chance < remarkable
    ? { code: "one-patch-apart", patch: residuals[place]?.patch ?? "", times: most }
    : null;
}

/** Brown and Forsythe's test: an analysis of variance of distances from each level's middle. */
function unequalSpread(residuals: readonly Residual[]): ResidualRemark | null {
  const levels = [...new Set(residuals.map((r) => r.level))].map((level) => {
    const mine = residuals.filter((r) => r.level === level).map((r) => r.residual);
    const middle = median(mine);
    return { level, distances: mine.map((v) => Math.abs(v - middle)) };
  });
  if (levels.some((l) => l.distances.length < 4)) return null;
  const all = levels.flatMap((l) => l.distances);
  const inside = sum(levels.map((l) => squaredDeviations(l.distances)));
  const [freedom, left] = [levels.length - 1, all.length - levels.length];
  if (!(inside > 0)) return null;
  const between = Math.max(0, squaredDeviations(all) - inside); // rounding may leave less than nothing
  const f = between / freedom / (inside / left);
  if (!(fTails(f, freedom, left).upper < remarkable)) return null;
  const ordered = [...levels].sort((a, b) => mean(b.distances) - mean(a.distances));
  const [most, least] = [ordered[0], ordered.at(-1)];
  if (most === undefined || least === undefined) return null;
  return {
    code: "spread-differs",
    most: most.level,
    least: least.level,
    times: mean(most.distances) / mean(least.distances),
  };
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? at(sorted, half) : (at(sorted, half - 1) + at(sorted, half)) / 2;
};

/** Whether noise grows with what is read: the correlation of its size with the fitted value. */
function growingSpread(residuals: readonly Residual[]): ResidualRemark | null {
  const [x, y] = [residuals.map((r) => r.fitted), residuals.map((r) => Math.abs(r.residual))];
  const n = residuals.length;
  const spread = Math.sqrt(squaredDeviations(x) * squaredDeviations(y));
  if (n < 8 || !(spread > 0)) return null;
  const [mx, my] = [mean(x), mean(y)];
  const correlation = sum(x.map((v, i) => (v - mx) * (at(y, i) - my))) / spread;
  if (!(correlation > 0)) return null;
  const t = correlation * Math.sqrt((n - 2) / Math.max(1e-12, 1 - correlation ** 2));
  return studentTTails(t, n - 2).upper < remarkable ? { code: "spread-grows", correlation } : null;
}

/**
 * Looks at what is left over once the model is taken out, for what would make its intervals wrong: a patch far apart,
 * levels that scatter unequally, scatter that grows with the reading.
 *
 * @param residuals  one a patch
 * @param freedom    their degrees of freedom, scalar
 * @returns          what is remarkable at 1 %; an empty list is the usual case
 *
 * Valid:  4 patches or more of each level for unequal scatter, 8 in all for growing scatter
 * Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), 2.2; M. B. Brown and A. B. Forsythe,
 *         J. Am. Statist. Assoc. 69 (1974) 364
 */
export function residualRemarks(residuals: readonly Residual[], freedom: number): ResidualRemark[] {
  return [farthest(residuals, freedom), unequalSpread(residuals), growingSpread(residuals)].filter(
    (remark) => remark !== null,
  );
}
