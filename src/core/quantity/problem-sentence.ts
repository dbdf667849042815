import { formatNumber, formatQuantity } from "./format-quantity.ts";
import type { QuantityProblem } from "./parse-quantity.ts";
import type { Reading } from "./reading.ts";
import { unitFromSi, unitNamed } from "./unit-table.ts";

const words: Readonly<Record<string, string>> = {
  oz: "ounces of weight",
  "floz-us": "fluid ounces",
  "floz-imp": "imperial fluid ounces",
  "cup-us": "US cups",
  "cup-imp": "imperial cups",
  "pt-us": "US pints",
  "pt-imp": "imperial pints",
  "qt-us": "US quarts",
  "qt-imp": "imperial quarts",
  "gal-us": "US gallons",
  "gal-imp": "imperial gallons",
  "lb-cut": "pounds per US gallon of solvent",
  "lb-cut-imp": "pounds per imperial gallon of solvent",
  "oz-per-pt-us": "ounces to a US pint of solvent",
  "oz-per-pt-imp": "ounces to an imperial pint of solvent",
  lb: "pounds of weight",
};
/** Where a symbol alone would be asked about again. */
const plainly: Readonly<Record<string, string>> = {
  oz: "oz by weight",
  lb: "lb by weight",
  "cup-us": "US cup",
  "pt-us": "US pt",
  "qt-us": "US qt",
  "gal-us": "US gal",
  "floz-us": "fl oz",
  "lb-cut": "lb cut",
  "oz-per-pt-us": "oz/pt (US)",
};
const metric: Readonly<Record<string, string>> = { mass: "g", volume: "ml", cut: "g-per-l", length: "mm" };

/** A reading in words: `fluid ounces (237 ml)`. */
export function readingInWords(reading: Reading): string {
  if (reading.standardUncertainty !== undefined)
    return `about ${formatQuantity(reading.si, "g", { significantDigits: 2 })} of loose flakes, give or take ${formatQuantity(reading.standardUncertainty, "g", { significantDigits: 2 })}`;
  const name = words[reading.unit] ?? unitNamed(reading.unit)?.symbol ?? reading.unit;
  const unit = metric[reading.dimension];
  return unit === undefined ? name : `${name} (${formatQuantity(reading.si, unit)})`;
}

/** What to type to mean this reading and no other. */
export function sayItAs(reading: Reading): string {
  const unit = unitNamed(reading.unit);
  if (unit === undefined) return reading.typed;
  const digits = reading.standardUncertainty === undefined ? 9 : 2; // no more than is known
  const number = String(Number(unitFromSi(reading.si, unit).toPrecision(digits)));
  return `${number} ${plainly[reading.unit] ?? unit.symbol}`;
}

const orOf = (texts: readonly string[]): string =>
  texts.length < 2 ? (texts[0] ?? "") : `${texts.slice(0, -1).join(", ")} or ${texts.at(-1)}`;

function whatIsWrong(problem: QuantityProblem): string {
  const typed = `“${problem.typed}”`;
  switch (problem.code) {
    case "empty":
      return "Nothing is written here.";
    case "not-a-number":
      return `${typed} does not begin with a number that can be read.`;
    case "no-unit":
      return `${typed} has no unit.`;
    case "unknown-unit":
      return `The unit of ${typed} is not known.`;
    case "wrong-dimension":
      return `${typed} is read as ${orOf((problem.readings ?? []).map((r) => r.dimension))}, which is not what goes here.`;
    case "out-of-range": {
      const { min, max } = problem.limits ?? {};
      const most = max === undefined ? "" : `, and ${formatNumber(max)} at most`;
      return `${typed} is out of range: ${formatNumber(min ?? 0, 5)} or more${most}.`;
    }
    case "flakes-by-volume":
      return `A measure of flakes is mostly air: ${typed} can be ${orOf((problem.readings ?? []).map(readingInWords))}. Weigh them.`;
    case "parts":
      return problem.parts === undefined
        ? `${typed} are parts of what, to how much?`
        : `${typed} can be by weight, by weight to volume, or by volume: which?`;
    case "ambiguous":
      return `${typed} can be ${orOf((problem.readings ?? []).map(readingInWords))}: which?`;
  }
}

/** One plain sentence, and one that says what would do. */
export const quantityProblemSentence = (problem: QuantityProblem): string =>
  problem.code === "ambiguous" || problem.code === "flakes-by-volume"
    ? `${whatIsWrong(problem)} ${orOf((problem.readings ?? []).map((r) => `“${sayItAs(r)}”`))} would do.`
    : `${whatIsWrong(problem)} For instance ${orOf(problem.wouldDo)} would do.`;
