import type { NotebookReader } from "../../core/notebook/reader.ts";
import { type ShoppingLine, type ShoppingList, shoppingList } from "../../core/views/shopping-list.ts";
import * as words from "../words/words.ts";
import type { Plan } from "./draft.ts";

/** A plan with what of the shelf it is mixed with, by id. */
export interface PlanMixed {
  readonly plan: Plan;
  readonly resin: string | undefined;
  readonly solvent: string | undefined;
}

/** What a plan takes from the shelf, and what is still to be bought. */
export const planShopping = (
  read: NotebookReader,
  { plan, resin, solvent }: PlanMixed,
  today: string,
): ShoppingList =>
  shoppingList(
    read,
    {
      resin: resin ?? null,
      solvent: solvent ?? null,
      resinKg: plan.resinG / 1e3,
      solventM3: plan.solventMl / 1e6,
    },
    today,
  );

/** The lots of flakes that go into a plan, by name, what is still to be bought among them. */
export const lotsOf = (flakes: ShoppingLine | null): readonly string[] =>
  flakes === null
    ? []
    : [
        ...flakes.taken.map(({ name, lot }) => words.shopping.lot(name, lot)),
        ...(flakes.toBuy > 0 ? [words.shopping.lotToBuy] : []),
      ];
