import { DomainError, inRange } from "../../domain-error.ts";
import { type Random, randomIndex, shuffled } from "../../random.ts";
import { finiteField, primePowers } from "./finite-field.ts";
import { isLatinSquare, type Square } from "./latin-square.ts";

/** Rows of four symbols such that in any two places every ordered pair comes once: row, column, Latin, Greek. */
type Rows = readonly (readonly number[])[];

const most = 100;

/** How many squares of an order can be orthogonal to each other. */
export interface MutuallyOrthogonal {
  /** As many as are made here. */
  readonly made: number;
  /** The most that there can be; null where nobody knows. */
  readonly max: number | null;
}

/** Squares that the product of fields gives: one less than the smallest prime power in n. */
const fromFields = (n: number): number =>
  n === 1 ? Number.POSITIVE_INFINITY : Math.min(...primePowers(n).map(([p, e]) => p ** e)) - 1;

/**
 * How many mutually orthogonal Latin squares of order n there are.
 *
 * @param n  order, scalar
 * @returns  {made, max}
 * @throws DomainError for n below 2 or above 100
 *
 * Valid:    2 ≤ n ≤ 100
 * Source:   n − 1 for prime powers, R. C. Bose, Sankhya 3 (1938) 323; 1 for 6, G. Tarry (1900); at least 2 for all
 *           others, R. C. Bose, S. S. Shrikhande and E. T. Parker, Canad. J. Math. 12 (1960) 189
 */
export function mutuallyOrthogonal(n: number): MutuallyOrthogonal {
  inRange("order", n, { min: 2, max: most });
  if (n === 6) return { made: 1, max: 1 };
  if (primePowers(n).length === 1) return { made: n - 1, max: n - 1 };
  return { made: Math.max(2, fromFields(n)), max: null };
}

/**
 * Mutually orthogonal Latin squares as a product of fields: L_a(i, j) = a·i + j in each field, a ≠ 0.
 *
 * @returns  as many squares as the smallest prime power in n allows, less one, up to `count`
 */
export function orthogonalFromFields(n: number, count: number): readonly Square[] {
  const fields = primePowers(n).map(([p, e]) => finiteField(p ** e));
  const split = (x: number): number[] => {
    let rest = x;
    return fields.map((f) => {
      const digit = rest % f.order;
      rest = Math.floor(rest / f.order);
      return digit;
    });
  };
  const join = (parts: readonly number[]): number =>
    parts.reduceRight((sum, x, k) => sum * (fields[k]?.order ?? 1) + x, 0);
  const parts = Array.from({ length: n }, (_, x) => split(x));
  return Array.from({ length: Math.min(count, fromFields(n)) }, (_, a) =>
    parts.map((i) =>
      parts.map((j) => join(fields.map((f, k) => f.add(f.multiply(a + 1, i[k] as number), j[k] as number)))),
    ),
  );
}

const rowsOf = (squares: readonly Square[]): Rows =>
  (squares[0] as Square).flatMap((line, r) =>
    line.map((_, c) => [r, c, ...squares.map((s) => (s[r] as readonly number[])[c] as number)]),
  );

/**
 * For 10 = 7 + 3 and 14 = 11 + 3: differences that are all different mod 7 or 11, three columns with one place left
 * for a point at infinity and, for 11, one full column; found by complete search over columns turned in a ring.
 */
const differences: Readonly<
  Record<number, { readonly modulus: number; readonly open: Rows; readonly full: Rows }>
> = {
  10: {
    modulus: 7,
    open: [
      [0, 1, 4],
      [0, 2, 1],
      [0, 4, 2],
    ],
    full: [],
  },
  14: {
    modulus: 11,
    open: [
      [0, 1, 3],
      [0, 3, 10],
      [0, 4, 9],
    ],
    full: [[0, 6, 4, 1]],
  },
};

const ring = (row: readonly number[], by: number): number[] => row.map((_, i) => row[(i + by) % 4] as number);

function fromDifferences(n: number): Rows {
  const { modulus, open, full } = differences[n] as { modulus: number; open: Rows; full: Rows };
  const columns = [
    [0, 0, 0, 0],
    ...[0, 1, 2, 3].flatMap((by) => [
      ...open.map((column, k) => ring([modulus + k, ...column], by)),
      ...full.map((column) => ring(column, by)),
    ]),
  ];
  const developed = columns.flatMap((column) =>
    Array.from({ length: modulus }, (_, s) => column.map((x) => (x >= modulus ? x : (x + s) % modulus))),
  );
  return [...developed, ...rowsOf(orthogonalFromFields(3, 2)).map((row) => row.map((x) => x + modulus))];
}

/** n = 3t + u with three squares of order t and two of order u. */
function splitInThree(n: number): readonly [t: number, u: number] {
  for (let t = Math.floor(n / 3); 4 * t >= n; t--) {
    const u = n - 3 * t;
    if (u !== 2 && u !== 6 && fromFields(t) >= 3) return [t, u];
  }
  throw new DomainError({ code: "no-convergence", field: "order", value: n });
}

/**
 * Wilson's truncated product: each row of three squares of order t is blown up by three, or by four with a point of
 * the short group where its fifth symbol is one of the u that are kept; what lies in the short group alone comes last.
 */
function fromThree(n: number): Rows {
  const [t, u] = splitInThree(n);
  const of3 = rowsOf(orthogonalFromFields(3, 2));
  // named so that the row of four times the last symbol is one of them, and can be left out
  const of4 = rowsOf(orthogonalFromFields(4, 2));
  const last = of4.find((row) => row[0] === 3 && row[1] === 3) as readonly number[];
  const renamed = of4
    .filter((row) => row !== last)
    .map((row) => row.map((x, i) => (x === last[i] ? 3 : x === 3 ? (last[i] as number) : x)));
  const blown = rowsOf(orthogonalFromFields(t, 3)).flatMap((row) => {
    const [fifth = 0] = row.slice(4);
    const inner = fifth < u ? renamed : of3;
    return inner.map((small) => small.map((w, i) => (w === 3 ? 3 * t + fifth : 3 * (row[i] as number) + w)));
  });
  return [...blown, ...(u === 0 ? [] : pairRows(u).map((row) => row.map((x) => x + 3 * t)))];
}

function pairRows(n: number): Rows {
  if (n === 1) return [[0, 0, 0, 0]];
  if (fromFields(n) >= 2) return rowsOf(orthogonalFromFields(n, 2));
  return differences[n] === undefined ? fromThree(n) : fromDifferences(n);
}

/** Why there is no Graeco-Latin square of an order; null where there are some. */
export const whyNoGraecoLatin = (n: number): string | null =>
  n === 2 || n === 6
    ? `No Graeco-Latin square of ${n} by ${n} exists: it has been proved that the pairs cannot all differ. ` +
      `Take ${n === 2 ? "3" : "5 or 7"} of each, or a plain square.`
    : null;

/** Whether two squares are Latin and every pair of their symbols comes once. */
export const isGraecoLatin = (latin: Square | readonly (readonly string[])[], greek: typeof latin): boolean =>
  isLatinSquare(latin) &&
  isLatinSquare(greek) &&
  latin.length === greek.length &&
  new Set(latin.flatMap((row, r) => row.map((x, c) => JSON.stringify([x, greek[r]?.[c]])))).size ===
    latin.length ** 2;

/**
 * A Graeco-Latin square by lot: two Latin squares in which every pair of symbols comes once.
 *
 * @param n  order, scalar
 * @returns  the two squares, n×n each
 * @throws DomainError for 2 and 6, of which there is none, and outside 3–100
 *
 * Valid:    3 ≤ n ≤ 100 but for 6
 * Accuracy: exact; rows, columns and symbols are dealt by lot within one construction, not evenly over all squares
 * Source:   MacNeish's product of fields (1922); differences for 10 and 14, found by search; otherwise n = 3t + u by
 *           R. M. Wilson, Utilitas Math. 6 (1974) 135
 */
export function randomGraecoLatin(n: number, random: Random): readonly [Square, Square] {
  const because = whyNoGraecoLatin(n);
  if (because !== null) throw new DomainError({ code: "contradiction", field: "order", value: n, because });
  inRange("order", n, { min: 3, max: most });
  const rows = pairRows(n);
  const squares = [2, 3].map((which) => {
    const square = Array.from({ length: n }, () => new Array<number>(n).fill(0));
    for (const row of rows) (square[row[0] as number] as number[])[row[1] as number] = row[which] as number;
    return square;
  }) as [number[][], number[][]];
  const coded = squares[0].map((line, r) =>
    line.map((x, c) => x * n + ((squares[1][r] as number[])[c] as number)),
  );
  return dealtPair(coded, n, random);
}

/** Rows and columns of both squares together, the symbols of each apart, and which of the two comes first. */
function dealtPair(coded: Square, n: number, random: Random): readonly [Square, Square] {
  const latin = coded.map((row) => row.map((x) => Math.floor(x / n)));
  const greek = coded.map((row) => row.map((x) => x % n));
  const order = () =>
    shuffled(
      latin.map((_, i) => i),
      random,
    );
  const [rowAt, columnAt] = [order(), order()];
  const moved = (square: Square, names: readonly number[]) =>
    rowAt.map((r) => columnAt.map((c) => names[(square[r] as readonly number[])[c] as number] as number));
  const pair = [moved(latin, order()), moved(greek, order())] as const;
  return randomIndex(random, 2) === 0 ? pair : [pair[1], pair[0]];
}
