import { inRange } from "../../domain-error.ts";

/** Which symbols are left for each column, as bits: n rows of n. */
type Left = readonly number[];

const bitsIn = (mask: number): number => {
  let count = 0;
  for (let m = mask; m > 0; m &= m - 1) count++;
  return count;
};

/** The same choices with columns and symbols named in an order that most relabelled copies share. */
function sameShape(left: Left): Left {
  const n = left.length;
  let rows = [...left];
  for (let round = 0; round < 3; round++) {
    // a symbol is told by how many symbols it shares columns with, and how often; then symbols sort, then columns
    const weight = Array.from({ length: n }, (_, s) => {
      const shared = Array.from(
        { length: n },
        (_, t) => rows.filter((m) => m & (1 << s) && m & (1 << t)).length,
      );
      return shared.sort((a, b) => a - b).join(",");
    });
    const first = (s: number) => rows.map((m) => (m & (1 << s) ? "1" : "0")).join("");
    const order = Array.from({ length: n }, (_, s) => s).sort((a, b) => {
      const [x, y] = [`${weight[a]} ${first(a)}`, `${weight[b]} ${first(b)}`];
      return x < y ? -1 : x > y ? 1 : 0;
    });
    rows = rows
      .map((m) => order.reduce((sum, s, i) => (m & (1 << s) ? sum | (1 << i) : sum), 0))
      .sort((a, b) => a - b);
  }
  return rows;
}

/** In how many ways the rows that are left can be written, each symbol once in a row and within its column's choices. */
function waysToFinish(left: Left, known: Map<string, bigint>): bigint {
  if (bitsIn(left[0] as number) === 0) return 1n;
  const shape = sameShape(left);
  const key = shape.join(",");
  const kept = known.get(key);
  if (kept !== undefined) return kept;
  let total = 0n;
  const next = [...shape];
  const write = (column: number, used: number): void => {
    if (column === shape.length) {
      total += waysToFinish(next, known);
      return;
    }
    const here = shape[column] as number;
    for (let free = here & ~used; free > 0; free &= free - 1) {
      const symbol = free & -free;
      next[column] = here & ~symbol;
      write(column + 1, used | symbol);
    }
    next[column] = here;
  };
  write(0, 0);
  known.set(key, total);
  return total;
}

const factorial = (n: number): bigint => (n <= 1 ? 1n : BigInt(n) * factorial(n - 1));

/**
 * How many Latin squares of order n there are: all, and those with first row and first column in order.
 *
 *     all = n!·(n − 1)!·reduced
 *
 * Row after row is taken out of what the columns may still hold; what only differs in names is counted once.
 *
 * @param n  order, scalar
 * @returns  {all, reduced}, whole numbers of any size
 * @throws DomainError for n outside 1–7
 *
 * Valid:    1 ≤ n ≤ 7
 * Accuracy: exact
 * Source:   B. D. McKay, A. Meynert and W. Myrvold, J. Combin. Des. 15 (2007) 98
 * @example
 * Number(latinSquareCount(4).all) // => 576
 */
export function latinSquareCount(n: number): { readonly all: bigint; readonly reduced: bigint } {
  inRange("order", n, { min: 1, max: 7 });
  // the first row is in order without loss: every other one counts the same
  const afterFirst = Array.from({ length: n }, (_, column) => ((1 << n) - 1) & ~(1 << column));
  const withFirst = waysToFinish(afterFirst, new Map());
  return { all: withFirst * factorial(n), reduced: withFirst / factorial(n - 1) };
}
