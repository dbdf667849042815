import { inRange } from "../../domain-error.ts";
import { type Random, randomIndex, shuffled } from "../../random.ts";

/** n rows of n symbols 0 … n − 1. */
export type Square = readonly (readonly number[])[];

/**
 * Whether every symbol stands once in each row and once in each column. Any n different symbols will do.
 *
 * @example
 * isLatinSquare([["a", "b"], ["b", "a"]]) // => true
 */
export function isLatinSquare(rows: readonly (readonly (number | string)[])[]): boolean {
  const n = rows.length;
  const symbols = new Set(rows.flat());
  const whole = (line: readonly (number | string | undefined)[]) =>
    line.length === n && new Set(line).size === n;
  return symbols.size === n && rows.every(whole) && rows.every((_, c) => whole(rows.map((row) => row[c])));
}

/**
 * A Latin square by lot, as good as evenly from all that there are.
 *
 * The walk goes through cubes of zeros and ones, one in each line for a square, and lets a single −1 stand for a
 * while; every step changes eight cells. It reaches every square, each as often as any other.
 *
 * @param n  order, scalar
 * @throws DomainError for n below 1 or above 32
 *
 * Valid:    1 ≤ n ≤ 32
 * Accuracy: even after a long walk; 2n² squares are walked through, and rows, columns and symbols dealt afresh on top
 * Source:   M. T. Jacobson and P. Matthews, J. Combin. Des. 4 (1996) 405
 */
export function randomLatinSquare(n: number, random: Random): Square {
  inRange("order", n, { min: 1, max: 32 });
  const walk = new CubeWalk(n);
  for (let squares = 0; n > 1 && squares < 2 * n ** 2; ) {
    walk.step(random);
    if (walk.isProper()) squares++; // only these come equally often: the step at which a square is first met is biased
  }
  return dealtAgain(walk.square(), random);
}

/** The same square with its rows, its columns and its symbols each in drawn order. */
export function dealtAgain(square: Square, random: Random): Square {
  const order = () => shuffled([...square.keys()], random);
  const [columns, symbols] = [order(), order()];
  return order().map((r) =>
    columns.map((c) => symbols[(square[r] as readonly number[])[c] as number] as number),
  );
}

/** The incidence cube of a square: cell (row, column, symbol) is 1 where that symbol stands there. */
class CubeWalk {
  private readonly n: number;
  private readonly cells: Int8Array;
  /** Where the −1 stands, while one does. */
  private bad: readonly [number, number, number] | null = null;
  constructor(n: number) {
    this.n = n;
    this.cells = new Int8Array(n ** 3);
    for (let r = 0; r < n; r++) for (let c = 0; c < n; c++) this.add(r, c, (r + c) % n, 1);
  }
  isProper(): boolean {
    return this.bad === null;
  }
  square(): Square {
    const lines = [...Array(this.n).keys()];
    return lines.map((r) => lines.map((c) => lines.find((s) => this.at(r, c, s) === 1) as number));
  }
  private at(r: number, c: number, s: number): number {
    return this.cells[(r * this.n + c) * this.n + s] as number;
  }
  private add(r: number, c: number, s: number, by: number): void {
    const i = (r * this.n + c) * this.n + s;
    this.cells[i] = (this.cells[i] as number) + by;
  }
  private aZero(random: Random): readonly [number, number, number] {
    for (;;) {
      const [r, c, s] = [
        randomIndex(random, this.n),
        randomIndex(random, this.n),
        randomIndex(random, this.n),
      ];
      if (this.at(r, c, s) === 0) return [r, c, s];
    }
  }
  /** One of the ones along a line, by lot: there are two where the line goes through the −1. */
  private aOne(read: (i: number) => number, random: Random): number {
    const ones: number[] = [];
    for (let i = 0; i < this.n; i++) if (read(i) === 1) ones.push(i);
    return ones[randomIndex(random, ones.length)] as number;
  }
  step(random: Random): void {
    const [r, c, s] = this.bad ?? this.aZero(random);
    const r2 = this.aOne((i) => this.at(i, c, s), random);
    const c2 = this.aOne((i) => this.at(r, i, s), random);
    const s2 = this.aOne((i) => this.at(r, c, i), random);
    for (const [x, y, z] of [
      [r, c, s],
      [r, c2, s2],
      [r2, c, s2],
      [r2, c2, s],
    ] as const)
      this.add(x, y, z, 1);
    for (const [x, y, z] of [
      [r2, c, s],
      [r, c2, s],
      [r, c, s2],
      [r2, c2, s2],
    ] as const)
      this.add(x, y, z, -1);
    this.bad = this.at(r2, c2, s2) < 0 ? [r2, c2, s2] : null;
  }
}

/**
 * Orders in which every treatment comes once at every turn, and comes straight after every other equally often: for
 * judges, or evenings, where what came before may linger. n orders for even n, 2n for odd n.
 *
 *     first order 0, 1, n − 1, 2, n − 2, …; the others add 1, 2, … mod n; for odd n also all of them backwards
 *
 * @param n  treatments, scalar
 * @returns  orders, n×n or 2n×n
 * @throws DomainError for n below 2 or above 192
 *
 * Valid:    2 ≤ n ≤ 192
 * Source:   E. J. Williams, Aust. J. Sci. Res. A 2 (1949) 149
 * @example
 * carryOverOrders(4)[0] // => [0, 1, 3, 2]
 */
export function carryOverOrders(n: number): readonly (readonly number[])[] {
  inRange("treatments", n, { min: 2, max: 192 });
  const first = Array.from({ length: n }, (_, i) => (i % 2 === 1 ? (i + 1) / 2 : (n - i / 2) % n));
  const orders = first.map((_, shift) => first.map((x) => (x + shift) % n));
  return n % 2 === 0 ? orders : [...orders, ...orders.map((order) => [...order].reverse())];
}

/** How often each ordered pair of neighbours comes, where all come equally often; otherwise null. */
export function evenNeighbours(orders: readonly (readonly (number | string)[])[]): number | null {
  const symbols = [...new Set(orders.flat())];
  const counts = new Map<string, number>();
  for (const order of orders)
    order.slice(1).forEach((x, i) => {
      const key = JSON.stringify([order[i], x]);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    });
  const each = symbols.flatMap((a) =>
    symbols.flatMap((b) => (a === b ? [] : [counts.get(JSON.stringify([a, b])) ?? 0])),
  );
  const selves = symbols.some((a) => counts.has(JSON.stringify([a, a])));
  return !selves && each.every((x) => x === each[0]) ? (each[0] ?? null) : null;
}
