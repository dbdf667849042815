/** Decimal places that show `size` with `digits` significant figures. */
const placesFor = (size: number, digits: number): number =>
  size === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(size))));

/** A number with so many significant figures, without an exponent; zeros that say nothing more are kept. */
export function withDigits(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  return minus(rounded.toFixed(Math.min(placesFor(rounded, digits), 8)));
}

export const withPlaces = (value: number, places: number): string => minus(value.toFixed(places));

/** A true minus sign, and no minus before nought. */
const minus = (text: string): string => (/^-0(\.0*)?$/.test(text) ? text.slice(1) : text.replace("-", "−"));

/**
 * A value and its give or take, both rounded to what is known: the give or take to one figure (two when it begins
 * with 1), the value to the same place.
 */
export function known(value: number, by: number): { readonly value: string; readonly by: string } {
  if (!(by > 0)) return { value: withDigits(value, 4), by: "0" };
  const leading = Number(by.toExponential(1).slice(0, 3));
  const digits = leading < 1.95 ? 2 : 1;
  const places = Math.min(placesFor(Number(by.toPrecision(digits)), digits), 8);
  const step = 10 ** (digits - 1 - Math.floor(Math.log10(by)));
  const rounded = (x: number) => (step < 1 ? Math.round(x * step) / step : x);
  return { value: withPlaces(rounded(value), places), by: withPlaces(rounded(by), places) };
}

const spelled = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];
/** Small counts in words, as one says them; larger ones in figures. */
export const counted = (n: number): string => spelled[n] ?? String(n);
