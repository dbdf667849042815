import { DomainError } from "../../domain-error.ts";
import { chiSquareTails } from "../distribution/chi-square.ts";
import { fTails } from "../distribution/f-distribution.ts";
import { studentTUpperQuantile } from "../distribution/student-t.ts";
import { householderQr, solveUpper } from "../numeric/qr.ts";
import { at, sum } from "../numeric/vector.ts";
import { midRanks } from "./ranks.ts";

export interface SkillingsMackTest {
  readonly method: "Skillings–Mack";
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  /** Weighted sums of centred ranks, one a treatment. */
  readonly adjusted: readonly number[];
}

/** Ranks among the values that are there; null stays null. */
function ranksPresent(row: readonly (number | null)[]): (number | null)[] {
  const ranks = midRanks(row.filter((x) => x !== null));
  let next = 0;
  return row.map((x) => (x === null ? null : at(ranks, next++)));
}

/**
 * The Skillings–Mack test of several treatments in blocks with gaps; without gaps and ties it is Friedman's.
 *
 *     Aⱼ = Σᵢ √(12/(kᵢ + 1)) (rᵢⱼ − (kᵢ + 1)/2),   T = Aᵀ Σ⁻ A
 *
 * @param rows  b blocks of k values, null where a treatment was not seen
 * @returns     statistic and p-value
 * @throws DomainError when fewer than two blocks hold two values, or the treatments do not hang together
 *
 * Valid:    the chi-square p-value is an approximation for few blocks; no correction for ties beyond mid-ranks
 * Accuracy: 1e-10 relative
 * Source:   J. H. Skillings and G. A. Mack, Technometrics 23 (1981) 171
 */
export function skillingsMackTest(rows: readonly (readonly (number | null)[])[]): SkillingsMackTest {
  const used = rows.filter((row) => row.filter((x) => x !== null).length >= 2);
  const k = rows[0]?.length ?? 0;
  if (used.length < 2 || k < 2)
    throw new DomainError({ code: "not-enough-data", field: "rows", value: used.length, limits: { min: 2 } });
  const ranks = used.map(ranksPresent);
  const treatments = Array.from({ length: k }, (_, j) => j);
  const adjusted = treatments.map((j) =>
    sum(
      ranks.map((row) => {
        const size = row.filter((r) => r !== null).length;
        const r = row[j] ?? null;
        return r === null ? 0 : Math.sqrt(12 / (size + 1)) * (r - (size + 1) / 2);
      }),
    ),
  );
  const together = (j: number, t: number): number =>
    ranks.filter((row) => (row[j] ?? null) !== null && (row[t] ?? null) !== null).length;
  const covariance = treatments.map((j) =>
    treatments.map((t) =>
      j === t ? sum(treatments.map((s) => (s === j ? 0 : together(j, s)))) : -together(j, t),
    ),
  );
  const qr = householderQr(covariance.slice(0, -1).map((column) => column.slice(0, -1)));
  if (qr.kept.length < k - 1)
    throw new DomainError({
      code: "not-enough-data",
      field: "rows",
      value: used.length,
      because: "Some treatments never meet the others in a block.",
    });
  const solved = solveUpper(qr.r, qr.rotate(adjusted.slice(0, -1)));
  const statistic = sum(Array.from(solved, (x, j) => x * at(adjusted, j)));
  return {
    method: "Skillings–Mack",
    statistic,
    degreesOfFreedom: k - 1,
    pValue: chiSquareTails(statistic, k - 1).upper,
    adjusted,
  };
}

export interface DurbinTest {
  readonly method: "Durbin";
  readonly statistic: number;
  readonly degreesOfFreedom: number;
  readonly pValue: number;
  readonly rankSums: readonly number[];
  readonly blocks: number;
  readonly perBlock: number;
  readonly replicates: number;
  readonly f: {
    readonly statistic: number;
    readonly degreesOfFreedom: readonly [number, number];
    readonly pValue: number;
  };
  /** Least significant difference of two rank sums, 5 %, for one pair. */
  readonly lsd: number;
}

function sameForAll(field: string, counts: readonly number[]): number {
  const first = at(counts, 0);
  if (counts.some((n) => n !== first))
    throw new DomainError({
      code: "contradiction",
      field,
      value: [...counts],
      because: "They are not all the same: the Skillings–Mack test takes such data.",
    });
  return first;
}

/**
 * Durbin's test of t treatments in balanced incomplete blocks of k, each treatment seen r times.
 *
 *     D = (t − 1)(Σ Rⱼ² − r C)/(A − C),   A = ΣΣ rᵢⱼ²,   C = b k (k + 1)²/4
 *
 * @param rows  b blocks of t values, null where a treatment was not in the block
 * @returns     statistic, p-values, rank sums, least significant difference
 * @throws DomainError for blocks of unequal size, unequal replication, and values all equal within every block
 *
 * Valid:    the chi-square p-value is an approximation for few blocks
 * Accuracy: 1e-10 relative
 * Source:   W. J. Conover, Practical Nonparametric Statistics (1999), 5.9
 */
export function durbinTest(rows: readonly (readonly (number | null)[])[]): DurbinTest {
  const b = rows.length;
  const t = rows[0]?.length ?? 0;
  if (b < 2 || t < 2) throw new DomainError({ code: "not-enough-data", field: "rows", value: b });
  const ranks = rows.map(ranksPresent);
  const k = sameForAll(
    "rows per block",
    ranks.map((row) => row.filter((r) => r !== null).length),
  );
  const columns = Array.from({ length: t }, (_, j) => ranks.flatMap((row) => row[j] ?? []));
  const r = sameForAll(
    "rows per treatment",
    columns.map((column) => column.length),
  );
  const rankSums = columns.map(sum);
  const squares = sum(columns.flat().map((x) => x * x));
  const constant = (b * k * (k + 1) ** 2) / 4;
  if (!(squares > constant)) throw new DomainError({ code: "no-variation", field: "rows", value: null });
  const statistic = ((t - 1) * (sum(rankSums.map((x) => x * x)) - r * constant)) / (squares - constant);
  const freedom = b * k - b - t + 1;
  const left = b * (k - 1) - statistic;
  const f = left > 0 ? statistic / (t - 1) / (left / freedom) : Number.POSITIVE_INFINITY;
  const share = Math.max(0, 1 - statistic / (b * (k - 1)));
  return {
    method: "Durbin",
    statistic,
    degreesOfFreedom: t - 1,
    pValue: chiSquareTails(statistic, t - 1).upper,
    rankSums,
    blocks: b,
    perBlock: k,
    replicates: r,
    f: { statistic: f, degreesOfFreedom: [t - 1, freedom], pValue: fTails(f, t - 1, freedom).upper },
    lsd:
      studentTUpperQuantile(0.025, freedom) * Math.sqrt(((2 * (squares - constant) * r) / freedom) * share),
  };
}
