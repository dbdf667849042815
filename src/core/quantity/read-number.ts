import { fail, ok, type Result } from "../result.ts";

/** The number that text begins with, and what follows it. Two values where a comma may be either thing. */
export interface NumberRead {
  readonly values: readonly number[];
  readonly rest: string;
}

const vulgar: Readonly<Record<string, number>> = {
  "½": 1 / 2,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "¼": 1 / 4,
  "¾": 3 / 4,
  "⅕": 1 / 5,
  "⅖": 2 / 5,
  "⅗": 3 / 5,
  "⅘": 4 / 5,
  "⅙": 1 / 6,
  "⅚": 5 / 6,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
};
const vulgarClass = `[${Object.keys(vulgar).join("")}]`;

/** `½`, `1½`, `1 ½`, `1-1/2`, `1 1/2`, `3/4`. */
const withFraction = new RegExp(
  `^(?:(\\d+)[ -]?(?=${vulgarClass})|(\\d+)[ -])?(?:(${vulgarClass})|(\\d+)/(\\d+))`,
);
const decimal = /^(?:\d{1,3}(?: \d{3})+(?!\d)|\d+)(?:[.,]\d+)*|^[.,]\d+/;

/** Spaces of every width, the minus sign, the fraction slash: as a keyboard has them. */
export const plainText = (text: string): string =>
  text
    .replace(/[\u00a0\u2000-\u200a\u202f\u205f\u3000]/g, " ")
    .replace(/[\u2212\u2010\u2011\u2012\u2013]/g, "-")
    .replace(/[\u2044\u2215]/g, "/")
    .replace(/ +/g, " ")
    .trim();

/** One comma before exactly three digits is a thousand in one country and a decimal in the next. */
function decimalValues(token: string): readonly number[] {
  const digits = token.replace(/ /g, "");
  const marks = digits.replace(/\d/g, "");
  const grouped = (text: string): boolean => /^\d{1,3}([.,]\d{3})+$/.test(text);
  if (marks === ",") {
    const asDecimal = Number(digits.replace(",", "."));
    return grouped(digits) && !digits.startsWith("0")
      ? [asDecimal, Number(digits.replace(",", ""))]
      : [asDecimal];
  }
  if (marks.length <= 1) return [Number(digits)];
  const last = marks.at(-1) as string;
  const [whole, fraction] = [
    digits.slice(0, digits.lastIndexOf(last)),
    digits.slice(digits.lastIndexOf(last) + 1),
  ];
  if (new Set(marks).size === 1) return grouped(digits) ? [Number(digits.replace(/[.,]/g, ""))] : [];
  const oneDecimalMark = marks.indexOf(last) === marks.length - 1;
  return oneDecimalMark && grouped(whole) ? [Number(`${whole.replace(/[.,]/g, "")}.${fraction}`)] : [];
}

/** Reads the number at the start of plain text: decimals with point or comma, grouped thousands, fractions. */
export function readNumber(text: string): Result<NumberRead, "not-a-number"> {
  const sign = /^[+-] ?/.exec(text)?.[0] ?? "";
  const factor = sign.startsWith("-") ? -1 : 1;
  const body = text.slice(sign.length);
  const mixed = withFraction.exec(body);
  if (mixed !== null) {
    const [all, beforeVulgar, before, character, above, below] = mixed;
    const part = character === undefined ? Number(above) / Number(below) : (vulgar[character] ?? Number.NaN);
    const value = factor * (Number(beforeVulgar ?? before ?? 0) + part);
    return Number.isFinite(value)
      ? ok({ values: [value], rest: body.slice(all.length) })
      : fail("not-a-number");
  }
  const token = decimal.exec(body)?.[0];
  if (token === undefined) return fail("not-a-number");
  const rest = body.slice(token.length);
  const values = decimalValues(token).map((v) => factor * v);
  // A digit or mark left over was part of what was meant: `1..5`, `1,2,3`.
  return values.length === 0 || /^[.,\d/]/.test(rest) || values.some((v) => !Number.isFinite(v))
    ? fail("not-a-number")
    : ok({ values, rest });
}
