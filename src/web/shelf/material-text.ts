import type { MaterialView } from "../../core/views/material.ts";
import { upToDigits, withDigits } from "../words/number.ts";
import { agoInWords, dayInWords } from "../words/time.ts";
import * as words from "../words/words.ts";
import { toldStrength } from "./kept-strength.ts";

const t = words.shelf;

const amount = (kg: number | null, m3: number | null, liquid: boolean): string | undefined => {
  if ((liquid || kg === null) && m3 !== null)
    return Math.abs(m3) < 0.9995e-3 ? `${Math.round(m3 * 1e6)} mL` : `${withDigits(m3 * 1e3, 3)} L`;
  if (kg === null) return undefined;
  return Math.abs(kg) < 0.9995 ? `${Math.round(kg * 1e3)} g` : `${withDigits(kg, 3)} kg`;
};

/** `93.8 % ethanol, 6.16 % water` */
export const madeOfWords = (composition: Readonly<Record<string, number>>): string =>
  Object.entries(composition)
    .sort((a, b) => b[1] - a[1])
    .map(([component, share]) =>
      t.part(t.componentNames[component as keyof typeof t.componentNames], withDigits(share * 100, 3)),
    )
    .join(", ");

/** `96 % by volume. By weight: 93.8 % ethanol, 6.16 % water.` */
export function strengthWords({ solvent, composition }: MaterialView): string | undefined {
  if (composition === null) return undefined;
  const told = toldStrength(solvent);
  const parts = madeOfWords(composition);
  if (told === undefined || told.how === "mass") return t.made(parts);
  return t.madeFrom(t.told[told.how]("figure" in told ? upToDigits(told.figure, 4) : ""), parts);
}

/** `dewaxed lemon, 0.5 % wax` */
export function resinWords({ resin }: MaterialView): string | undefined {
  if (resin === null) return undefined;
  const wax = resin.wax === null ? "" : t.waxKnown(upToDigits(resin.wax * 100, 2));
  return t.grades(resin.grade, wax);
}

/** `4.60 EUR for 100 g`, `7.60 EUR a litre` */
export function priceWords({ price, form }: MaterialView): string | undefined {
  if (price === null) return undefined;
  if ((form === "solvent" || price.perKg === null) && price.perM3 !== null)
    return t.price(`${(price.perM3 / 1e3).toFixed(2)} ${price.currency}`, t.perLitre);
  return price.perKg === null
    ? undefined
    : t.price(`${(price.perKg / 10).toFixed(2)} ${price.currency}`, t.per100g);
}

function leftWords(material: MaterialView): string | undefined {
  if (material.usedUp) return t.usedUp;
  if (material.left === null) return undefined;
  const left = amount(material.left.kg, material.left.m3, material.form === "solvent");
  if (left === undefined) return undefined;
  return (material.left.kg ?? material.left.m3 ?? 0) < 0
    ? t.overdrawn(left.replace("-", "").replace("−", ""))
    : t.left(left);
}

/** What is left, the lot, the day and the price, as far as each is known. */
export function factsOf(material: MaterialView, nowInstant: string, today: string): string {
  const { bought, lot } = material;
  const noon = `${bought}T12:00:00Z`; // a calendar day has no zone: at noon no zone moves it
  const other = material.form === "resin" || material.form === "solvent" ? undefined : material.form;
  return [
    other === undefined ? undefined : t.otherForms[other],
    leftWords(material),
    lot === null ? undefined : t.lot(lot),
    bought === null ? undefined : t.bought(dayInWords(noon, "UTC", nowInstant), agoInWords(bought, today)),
    priceWords(material),
  ]
    .filter((one) => one !== undefined)
    .join(", ");
}
