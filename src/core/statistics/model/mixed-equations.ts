import { dot, lowerTriangle, solveLower } from "../numeric/lower-triangle.ts";
import { at, entry, type Vector } from "../numeric/vector.ts";

/** A random term: things (jars, boards, judges) that share their luck, and which of them each row belongs to. */
export interface Grouping {
  readonly name: string;
  /** n numbers from 0 to `groups` − 1. */
  readonly of: readonly number[];
  readonly groups: number;
}

/** Numbers the groups of n labels in the order in which they come. */
export function groupingOf(name: string, labels: readonly string[]): Grouping {
  const places = new Map<string, number>();
  const of = labels.map((label) => {
    const place = places.get(label) ?? places.size;
    places.set(label, place);
    return place;
  });
  return { name, of, groups: places.size };
}

/** Σ over the rows of each group. */
function sumsBy({ of, groups }: Grouping, x: Vector): Float64Array {
  const sums = new Float64Array(groups);
  for (let i = 0; i < of.length; i++) {
    const g = at(of, i);
    sums[g] = at(sums, g) + at(x, i);
  }
  return sums;
}

const indicatorsOf = (g: Grouping): Float64Array[] =>
  Array.from({ length: g.groups }, (_, j) => Float64Array.from(g.of, (x) => (x === j ? 1 : 0)));

/** Everything that does not depend on the variances: the first term's groups, and products of all other columns. */
interface Prepared {
  readonly sizes: Float64Array;
  /** How many of its groups have each size. */
  readonly alike: ReadonlyMap<number, number>;
  /** Of each inner column (random, fixed, response) the sums over the first term's groups. */
  readonly onFirst: readonly Float64Array[];
  /** Products of inner columns, all by all. */
  readonly cross: readonly Float64Array[];
  /** Place in the ratios of each random inner column. */
  readonly termOf: readonly number[];
}

function prepare(first: Grouping, others: readonly Grouping[], columns: readonly Float64Array[]): Prepared {
  const inner = [...others.flatMap(indicatorsOf), ...columns];
  const q = inner.length - columns.length;
  const rows: Float64Array[] = others.flatMap((g) => {
    const bySum = inner.map((c) => sumsBy(g, c));
    return Array.from({ length: g.groups }, (_, j) => Float64Array.from(bySum, (sums) => at(sums, j)));
  });
  columns.forEach((column) => {
    const n = column.length;
    rows.push(
      Float64Array.from(inner, (c, j) =>
        j < q ? at(rows[j] as Float64Array, rows.length) : dot(column, c, n),
      ),
    );
  });
  const sizes = sumsBy(first, new Float64Array(first.of.length).fill(1));
  const alike = new Map<number, number>();
  for (const n of sizes) alike.set(n, (alike.get(n) ?? 0) + 1);
  return {
    sizes,
    alike,
    onFirst: inner.map((c) => sumsBy(first, c)),
    cross: rows,
    termOf: others.flatMap((g, k) => new Array<number>(g.groups).fill(k + 1)),
  };
}

/** The inner columns with the first term taken out, Wᵀ V₁⁻¹ W (its lower half), and the factor of the whole. */
interface Factored {
  readonly shares: Float64Array;
  readonly reduced: readonly Float64Array[];
  readonly roots: Float64Array;
  readonly lower: readonly Float64Array[];
}

function factored({ sizes, onFirst, cross, termOf }: Prepared, ratios: Vector): Factored {
  const ratio = at(ratios, 0);
  const q = termOf.length;
  const shares = sizes.map((n) => ratio / (1 + ratio * n));
  const roots = Float64Array.from(cross, (_, i) => (i < q ? Math.sqrt(at(ratios, at(termOf, i))) : 1));
  const reduced: Float64Array[] = [];
  const scaled: Float64Array[] = [];
  cross.forEach((given, i) => {
    const mine = (onFirst[i] as Float64Array).slice(); // one a row
    for (let g = 0; g < mine.length; g++) mine[g] = entry(mine, g) * entry(shares, g);
    const row = new Float64Array(i + 1);
    const whole = new Float64Array(i + 1);
    for (let j = 0; j <= i; j++) {
      const v = entry(given, j) - (ratio === 0 ? 0 : dot(mine, onFirst[j] as Float64Array, mine.length));
      row[j] = v;
      whole[j] = entry(roots, i) * entry(roots, j) * v;
    }
    if (i < q) whole[i] = entry(whole, i) + 1;
    reduced.push(row);
    scaled.push(whole);
  });
  return { shares, reduced, roots, lower: lowerTriangle(scaled) };
}

/** What the likelihood needs of V = I + Σ γₖ ZₖZₖᵀ. */
export interface MixedFactor {
  readonly logDeterminant: number;
  /** L with LLᵀ = [X y]ᵀ V⁻¹ [X y]. */
  readonly lower: readonly Float64Array[];
}

/** Zᵀ V⁻¹ Z and Zᵀ V⁻¹ X, by the columns of Z. */
export interface MixedProducts {
  readonly zvz: readonly Float64Array[];
  readonly zvx: readonly Float64Array[];
  /** Place in the ratios of each column of Z. */
  readonly termOf: readonly number[];
}

function factorAt(prepared: Prepared, ratios: Vector): MixedFactor {
  const { lower } = factored(prepared, ratios);
  const q = prepared.termOf.length;
  let logDeterminant = 0;
  for (const [n, groups] of prepared.alike) logDeterminant += groups * Math.log1p(at(ratios, 0) * n);
  for (let i = 0; i < q; i++) logDeterminant += 2 * Math.log(at(lower[i] as Float64Array, i));
  return { logDeterminant, lower: lower.slice(q).map((row) => row.subarray(q)) };
}

function productsAt(prepared: Prepared, ratios: Vector, fixed: number): MixedProducts {
  const { shares, reduced, roots, lower } = factored(prepared, ratios);
  const { sizes, onFirst, termOf } = prepared;
  const q = termOf.length;
  const left = shares.map((share, g) => 1 - share * at(sizes, g));
  // Rows of Zᵀ V₁⁻¹ [Z₂ X], the first term's groups above the others.
  const along = [
    ...Array.from(sizes, (_, g) => Float64Array.from(onFirst, (b) => at(b, g) * at(left, g))),
    ...reduced
      .slice(0, q)
      .map((row, i) => Float64Array.from(reduced, (other, j) => at(j <= i ? row : other, Math.min(i, j)))),
  ];
  const carried = along.map((row) =>
    solveLower(
      lower,
      row.subarray(0, q).map((v, j) => v * at(roots, j)),
    ),
  );
  const ofFixed = Array.from({ length: fixed }, (_, c) => (lower[q + c] as Float64Array).subarray(0, q));
  const zvz = along.map((_, i) => {
    const mine = carried[i] as Float64Array;
    return Float64Array.from(along, (row, j) => {
      // Zᵀ V₁⁻¹ Z: within the first term it is diagonal, elsewhere it stands in one of the two rows.
      const plain =
        j >= sizes.length
          ? at(along[i] as Float64Array, j - sizes.length)
          : i >= sizes.length
            ? at(row, i - sizes.length)
            : i === j
              ? at(sizes, i) * at(left, i)
              : 0;
      return plain - dot(mine, carried[j] as Float64Array, q);
    });
  });
  const zvx = along.map((row, i) =>
    Float64Array.from(ofFixed, (t, c) => at(row, q + c) - dot(carried[i] as Float64Array, t, q)),
  );
  return { zvz, zvx, termOf: [...new Array<number>(sizes.length).fill(0), ...termOf] };
}

export interface MixedEquations {
  readonly factorAt: (ratios: Vector) => MixedFactor;
  readonly productsAt: (ratios: Vector) => MixedProducts;
}

/**
 * Henderson's mixed-model equations, put together once and then solved for any ratios γₖ = σₖ²/σ², 0 among them. The
 * first term is diagonal and is taken out before the others, so that a solution costs its groups × the rest squared.
 *
 *     V = I + Σ γₖ ZₖZₖᵀ
 *
 * @param groupings  one or more random terms, that with most groups first
 * @param columns    fixed columns, then the response: n numbers each
 * @returns          the factor and the products at given ratios
 *
 * Valid:  fixed columns that are orthonormal or near it
 * Source: D. Bates, M. Mächler, B. Bolker and S. Walker, J. Statist. Softw. 67 (2015) 1, section 3
 */
export function mixedEquations(
  [first, ...others]: readonly [Grouping, ...Grouping[]],
  columns: readonly Float64Array[],
): MixedEquations {
  const prepared = prepare(first, others, columns);
  return {
    factorAt: (ratios) => factorAt(prepared, ratios),
    productsAt: (ratios) => productsAt(prepared, ratios, columns.length - 1),
  };
}
