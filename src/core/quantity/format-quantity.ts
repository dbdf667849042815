import { type Unit, unitFromSi, unitNamed } from "./unit-table.ts";

const fractions: readonly (readonly [number, string])[] = [
  [0, ""],
  [1 / 8, "⅛"],
  [1 / 4, "¼"],
  [1 / 3, "⅓"],
  [3 / 8, "⅜"],
  [1 / 2, "½"],
  [5 / 8, "⅝"],
  [2 / 3, "⅔"],
  [3 / 4, "¾"],
  [7 / 8, "⅞"],
  [1, ""],
];

/** Digits after the point that show a value to so many significant digits; below zero for tens and hundreds. */
const decimalsFor = (value: number, significantDigits: number): number =>
  value === 0 ? 0 : significantDigits - 1 - Math.floor(Math.log10(Math.abs(value)) + 1e-12);

function toDecimals(value: number, decimals: number): string {
  if (decimals >= 0) return value.toFixed(Math.min(decimals, 20));
  const step = 10 ** -decimals;
  return String(Math.round(value / step) * step);
}

/**
 * A number to so many significant digits, never in powers of ten: 2540.4 to three is `2540`.
 *
 * @example
 * formatNumber(237.84, 3) // => "238"
 */
export function formatNumber(value: number, significantDigits = 3): string {
  const once = toDecimals(value, decimalsFor(value, significantDigits));
  // 9.996 to three digits rounds up to 10.00, which has four
  return toDecimals(value, decimalsFor(Number(once), significantDigits));
}

/**
 * Rounded to what is known: the uncertainty to one digit (two when it begins with 1), the value to the same place.
 *
 * Source: JCGM 100:2008, 7.2.6 (at most two digits, and the estimate consistent with its uncertainty)
 * @example
 * formatUncertain(1.6928, 0.0134).value // => "1.693"
 */
export function formatUncertain(
  value: number,
  standardUncertainty: number,
): { readonly value: string; readonly uncertainty: string } {
  if (!(standardUncertainty > 0)) return { value: formatNumber(value, 4), uncertainty: "0" };
  const first = formatNumber(standardUncertainty, 2);
  const digits = /[1-9]/.exec(first)?.[0] === "1" ? 2 : 1;
  const rounded = Number(formatNumber(standardUncertainty, digits));
  const decimals = decimalsFor(rounded, digits);
  return { value: toDecimals(value, decimals), uncertainty: toDecimals(rounded, decimals) };
}

/** `1½` where a shop's fraction lies within one part in a hundred, else undefined. */
export function formatFraction(value: number): string | undefined {
  const whole = Math.floor(value);
  const [nearest, sign] = fractions.reduce((best, f) =>
    Math.abs(f[0] - (value - whole)) < Math.abs(best[0] - (value - whole)) ? f : best,
  );
  const shown = whole + nearest;
  if (shown === 0 || Math.abs(shown - value) > 0.01 * value) return undefined;
  const ones = nearest === 1 ? whole + 1 : whole;
  return ones === 0 ? sign : `${ones}${sign}`;
}

export interface QuantityFormat {
  /** In SI, as the value: the number is rounded to what is known. */
  readonly standardUncertainty?: number;
  /** Three unless told. */
  readonly significantDigits?: number;
  /** Halves, thirds, quarters and eighths for the units that a shop writes so. */
  readonly fractions?: boolean;
}

function numberText(value: number, unit: Unit, format: QuantityFormat): string {
  if (format.standardUncertainty !== undefined)
    return formatUncertain(value, format.standardUncertainty / unit.factor).value;
  const fraction = format.fractions === true && unit.inFractions === true ? formatFraction(value) : undefined;
  return fraction ?? formatNumber(value, format.significantDigits ?? 3);
}

/**
 * An SI value in a unit, as it is written: `238 ml`, `1½ cup`, `2.00 lb cut`, `96.0 %`.
 *
 * @param si      the value in SI
 * @param unitId  an id of `units`
 * @param format  rounded to what is known, to significant digits, or in fractions
 * @returns       number and symbol with a space between; an unknown unit gives the number in SI alone
 *
 * Valid:    any number
 * Accuracy: as rounded
 * Source:   JCGM 100:2008, 7.2.6, for what is known
 * @example
 * formatQuantity(0.00023784, "ml") // => "238 ml"
 */
export function formatQuantity(si: number, unitId: string, format: QuantityFormat = {}): string {
  const unit = unitNamed(unitId);
  if (unit === undefined) return formatNumber(si, format.significantDigits ?? 3);
  return `${numberText(unitFromSi(si, unit), unit, format)} ${unit.symbol}`;
}
