import type { NotebookReader } from "../../core/notebook/reader.ts";
import { formatQuantity } from "../../core/quantity/format-quantity.ts";
import { unitNamed } from "../../core/quantity/unit-table.ts";
import type { JarView } from "../../core/views/jar.ts";
import * as words from "../words/words.ts";
import { grams, millilitres } from "./jar-text.ts";

const ouncesIds = ["oz", "lb"];

export const isWeight = (quantity: { readonly unit: string }): boolean =>
  unitNamed(quantity.unit)?.dimension === "mass";

/** Whether an amount was typed in ounces, cups or gallons. */
export const inOunces = (unit: string): boolean =>
  ouncesIds.includes(unit) || unitNamed(unit)?.system !== undefined;

/** Whether the person who filled this jar, or the stock that it came from, thinks in ounces. */
export function filledInOunces(read: NotebookReader, jar: JarView): boolean {
  const made = [jar.id, ...jar.lineage.map((one) => one.id)].map((id) => read.making(id)?.body);
  return made.some((body) => {
    const { resins = [], solvents = [] } = (body ?? {}) as Partial<
      Record<"resins" | "solvents", { amount: { unit: string } }[]>
    >;
    return [...resins, ...solvents].some(({ amount }) => inOunces(amount.unit));
  });
}

/** `172 mL`, with `5.8 fl oz` beside it for who thinks in them. */
export const volumeText = (m3: number, ounces: boolean): string =>
  ounces
    ? words.jars.alsoAs(millilitres(m3), formatQuantity(m3, "floz-us", { significantDigits: 2 }))
    : millilitres(m3);

export const massText = (kg: number, ounces: boolean): string =>
  ounces ? words.jars.alsoAs(grams(kg), formatQuantity(kg, "oz", { significantDigits: 2 })) : grams(kg);
