import type { NotebookEntry } from "../notebook/entry.ts";
import { type Amounts, combined, massOf, type solids, volumeOf, withoutSolids } from "./amounts.ts";
import { cannotUse, type JarFold, stepped, type Unusable } from "./jar-fold.ts";
import { propagated, type Reckoned } from "./reckoning.ts";
import type { AmountRead } from "./typed-amount.ts";

/** What stays at the bottom when the rest is poured off. */
type Left = readonly (typeof solids)[number][];

const sizeOf = (amounts: Amounts, by: AmountRead["by"]): number =>
  by === "mass" ? massOf(amounts) : volumeOf(amounts);

/** The share of what can be poured that an amount is; never more than all of it. */
function shareOf(amounts: Amounts, amount: AmountRead, value: number): number {
  const size = sizeOf(amounts, amount.by);
  return size > 0 ? Math.min(1, Math.max(0, value / size)) : 0;
}

/**
 * Some of a jar poured out: by scale or jug, or all of it. What is poured and what is left share the errors of the
 * jar and of the reading between them, so that together they are what was there.
 */
export function pourFrom(
  now: Reckoned,
  amount: AmountRead | "all",
  left: Left = [],
): { readonly poured: Reckoned; readonly rest: Reckoned } {
  const readings = amount === "all" ? [] : [amount.reading];
  const part = (all: Amounts, figures: readonly number[]): Amounts => {
    const passes = withoutSolids(all, left);
    return amount === "all" ? passes : combined([shareOf(passes, amount, figures[0] ?? 0), passes]);
  };
  return {
    poured: propagated([now], readings, ([all = {}], figures) => part(all, figures)),
    rest: propagated([now], readings, ([all = {}], figures) => combined([1, all], [-1, part(all, figures)])),
  };
}

/** How much more was asked for than the jar can have held; nothing when it fits within both uncertainties. */
export function shortBy(now: Reckoned, amount: AmountRead): Unusable["by"] {
  const over = amount.reading.value - sizeOf(now.value, amount.by);
  const moved = [...now.influences.values()].map(
    ({ change }) => sizeOf(combined([1, now.value], [1, change]), amount.by) - sizeOf(now.value, amount.by),
  );
  return over > 2 * Math.hypot(amount.reading.standardUncertainty, ...moved)
    ? { of: amount.by, si: over }
    : undefined;
}

/** The fold after a pour, with a remark where it took more than there was. */
export function afterPouring(
  fold: JarFold,
  entry: NotebookEntry,
  amount: AmountRead | "all",
  left: Left = [],
): JarFold {
  if (massOf(fold.now.value) === 0) return cannotUse(fold, entry, "nothing-known-in-it");
  const over = amount === "all" ? undefined : shortBy(fold.now, amount);
  const noted = over === undefined ? fold : cannotUse(fold, entry, "more-than-it-held", over);
  const { poured, rest } = pourFrom(fold.now, amount, left);
  return stepped(noted, entry, rest, poured);
}
