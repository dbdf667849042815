import { formatNumber, formatUncertain } from "../../core/quantity/format-quantity.ts";

/** A true minus sign, and no minus before nought. */
const minus = (text: string): string => (/^-0(\.0*)?$/.test(text) ? text.slice(1) : text.replace("-", "−"));

/** A number with so many significant figures, without an exponent. */
export const withDigits = (value: number, digits: number): string => minus(formatNumber(value, digits));

/** The same with no noughts after its last figure: `96`, `99.5`. */
export const upToDigits = (value: number, digits: number): string => {
  const text = withDigits(value, digits);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
};

export const withPlaces = (value: number, places: number): string => minus(value.toFixed(places));

/** A value and its give or take, both rounded to what is known. */
export function known(value: number, by: number): { readonly value: string; readonly by: string } {
  const shown = formatUncertain(value, by);
  return { value: minus(shown.value), by: shown.uncertainty };
}
