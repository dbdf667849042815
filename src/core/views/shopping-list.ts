import type { NotebookReader } from "../notebook/reader.ts";
import { calendarDay } from "../pieces/calendar-day.ts";
import { goodUntil } from "../pieces/good-until.ts";
import { fromShelf, type ShelfAndShop, type Stock, type Taken } from "../pieces/shopping.ts";
import type { Composition } from "../solution/composition.ts";
import { type MaterialView, materialIds, materialView } from "./material.ts";

/** What a plan is mixed from. Null where nothing on the shelf was chosen. */
export interface Needed {
  readonly resin: string | null;
  readonly solvent: string | null;
  /** kg and m³, the spare with it. */
  readonly resinKg: number;
  readonly solventM3: number;
}

export interface LotTaken extends Taken {
  readonly name: string;
  readonly lot: string | null;
  /** The day from which it is tried before it is trusted has gone by. */
  readonly old: boolean;
}

export interface ShoppingLine extends Omit<ShelfAndShop, "taken"> {
  readonly taken: readonly LotTaken[];
  /** Of what is to be bought, at what was paid last; null where that is not known. */
  readonly cost: { readonly amount: number; readonly currency: string } | null;
}

export interface ShoppingList {
  readonly flakes: ShoppingLine | null;
  readonly alcohol: ShoppingLine | null;
}

/** Two strengths read off two labels of one thing lie no further apart, by mass. */
const sameStrength = 0.005;

function sameLiquid(a: Composition | null, b: Composition | null): boolean {
  if (a === null || b === null) return a === b;
  const names = new Set([...Object.keys(a), ...Object.keys(b)]) as Set<keyof Composition>;
  return [...names].every((name) => Math.abs((a[name] ?? 0) - (b[name] ?? 0)) <= sameStrength);
}

/** Another lot of the same: flakes of one grade and wax, alcohol of one strength. */
function alike(a: MaterialView, b: MaterialView): boolean {
  if (a.form !== b.form) return false;
  if (a.form === "solvent") return sameLiquid(a.composition, b.composition);
  const grade = (m: MaterialView) => `${m.resin?.grade.trim().toLowerCase()} ${m.resin?.wax ?? "not told"}`;
  return grade(a) === grade(b);
}

type Measure = (of: { readonly kg: number | null; readonly m3: number | null }) => number | null;
type Price = (of: NonNullable<MaterialView["price"]>) => number | null;

const boughtOn = (material: MaterialView): string => material.bought ?? material.writtenAt.slice(0, 10);

function stockOf(material: MaterialView, measure: Measure): Stock {
  const bought = boughtOn(material);
  return {
    id: material.id,
    left: material.left === null ? null : measure(material.left),
    goodUntil: material.resin === null ? null : goodUntil(material.resin, calendarDay(bought)),
    bought,
  };
}

/** What was paid last for any of these lots, for so much of it. */
function costOf(lots: readonly MaterialView[], toBuy: number, price: Price): ShoppingLine["cost"] {
  const newest = [...lots].sort((a, b) => (boughtOn(a) < boughtOn(b) ? 1 : -1));
  for (const { price: paid } of newest) {
    const each = paid === null ? null : price(paid);
    if (paid !== null && each !== null) return { amount: each * toBuy, currency: paid.currency };
  }
  return null;
}

function lineOf(
  read: NotebookReader,
  id: string | null,
  need: number,
  today: string,
  [measure, price]: readonly [Measure, Price],
): ShoppingLine | null {
  const chosen = id === null ? null : materialView(read, id);
  if (chosen === null) return null;
  const lots = materialIds(read).flatMap((other) => {
    const found = materialView(read, other);
    return found !== null && (found.id === chosen.id || alike(found, chosen)) ? [found] : [];
  });
  const stock = lots.map((lot) => stockOf(lot, measure));
  const { taken, ...rest } = fromShelf(need, stock);
  return {
    ...rest,
    taken: taken.map((one) => {
      const lot = lots.find((material) => material.id === one.id);
      const until = stock.find((s) => s.id === one.id)?.goodUntil ?? null;
      return { ...one, name: lot?.name ?? "", lot: lot?.lot ?? null, old: until !== null && until < today };
    }),
    cost: rest.toBuy > 0 ? costOf(lots, rest.toBuy, price) : null,
  };
}

/**
 * What a plan takes from the shelf and what is still to be bought, every lot of the same counted, and what expires first
 * used first.
 *
 * @param today  a calendar day, from which on flakes are too old to be trusted untried
 */
export const shoppingList = (read: NotebookReader, needed: Needed, today: string): ShoppingList => ({
  flakes: lineOf(read, needed.resin, needed.resinKg, today, [(of) => of.kg, (of) => of.perKg]),
  alcohol: lineOf(read, needed.solvent, needed.solventM3, today, [(of) => of.m3, (of) => of.perM3]),
});
