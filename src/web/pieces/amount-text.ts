import { withDigits } from "../words/number.ts";

/** An amount to mix, to two figures: nobody plans a jar closer than that. */
const inWords = (value: number, small: string, large: string): string =>
  value < 995 ? `${withDigits(value, 2)} ${small}` : `${withDigits(value / 1000, 2)} ${large}`;

/** `630 mL`, `2.7 L` */
export const millilitres = (ml: number): string => inWords(ml, "mL", "L");
/** `430 g`, `1.9 kg` */
export const grams = (g: number): string => inWords(g, "g", "kg");
