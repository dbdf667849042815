import { DomainError } from "../domain-error.ts";

/** One bottle or bag of the thing that is needed; amounts in the unit of what is needed, kg or m³. */
export interface Stock {
  readonly id: string;
  /** Null where the book does not know. */
  readonly left: number | null;
  /** A calendar day; null for what does not go off. */
  readonly goodUntil: string | null;
  /** A calendar day; null where it was not written. */
  readonly bought: string | null;
}

export interface Taken {
  readonly id: string;
  readonly amount: number;
}

export interface ShelfAndShop {
  /** In the order in which it is used. */
  readonly taken: readonly Taken[];
  readonly toBuy: number;
  /** Of these the book does not know how much is left; nothing was taken from them. */
  readonly unknown: readonly string[];
}

const last = "9999-12-31";

/** What expires first, then what was bought first; days as text stand in the order of time. */
const first = (a: Stock, b: Stock): number => {
  const [x, y] = [`${a.goodUntil ?? last} ${a.bought ?? last}`, `${b.goodUntil ?? last} ${b.bought ?? last}`];
  if (x === y) return 0;
  return x < y ? -1 : 1;
};

/**
 * What is taken from the shelf, what expires first before the rest, and what is still to be bought.
 *
 *     bᵢ = min(sᵢ, need − Σ b before it),   to buy = need − Σ b
 *
 * @param need   what is needed, 0 or more, in the unit of the stock
 * @param stock  of the same thing, in any order
 * @throws DomainError for a need that is below nothing or no number
 *
 * Valid:  amounts of one thing; whether two lots are one thing is not asked here
 * Source: first expired, first out: common practice of any store
 * @example
 * fromShelf(5, [{ id: "a", left: 2, goodUntil: null, bought: null }]).toBuy // => 3
 */
export function fromShelf(need: number, stock: readonly Stock[]): ShelfAndShop {
  if (!(need >= 0))
    throw new DomainError({ code: "out-of-range", field: "need", value: need, limits: { min: 0 } });
  let open = need;
  const taken: Taken[] = [];
  for (const { id, left } of [...stock].sort(first)) {
    const amount = Math.min(Math.max(left ?? 0, 0), open);
    if (amount <= 0) continue;
    taken.push({ id, amount });
    open -= amount;
  }
  return { taken, toBuy: open, unknown: stock.filter(({ left }) => left === null).map(({ id }) => id) };
}
