import { formatQuantity } from "../../core/quantity/format-quantity.ts";
import { type Expected, parseQuantity, type QuantityProblem } from "../../core/quantity/parse-quantity.ts";
import { quantityProblemSentence, readingInWords } from "../../core/quantity/problem-sentence.ts";
import type { Reading } from "../../core/quantity/reading.ts";
import { type Dimension, unitNamed } from "../../core/quantity/unit-table.ts";
import * as words from "../words/words.ts";
import type { Meaning, QuantityReading } from "./quantity-reading.ts";

/** What a field takes: the dimensions, the unit of a bare number, and the range that fits here, in SI. */
export interface FieldExpects extends Expected {
  readonly min?: number;
  readonly max?: number;
  /** The unit that the range, and a value typed in another unit, is said in. */
  readonly sayIn: string;
  /** To how many figures it is said back; three unless told. */
  readonly digits?: number;
}

const celsius = (c: number): number => c + 273.15;
const kilograms = { dimensions: ["mass"], bareUnit: "g", sayIn: "g", min: 0 } as const;

/** The fields of a shop. Ranges are of what a person may plausibly write, not of what a formula covers. */
export const fields = {
  mass: kilograms,
  volume: { dimensions: ["volume"], bareUnit: "ml", sayIn: "ml", min: 0 },
  /** Something poured, by the jug or on the scale: the unit has to be written. */
  massOrVolume: { dimensions: ["volume", "mass"], sayIn: "ml", min: 0 },
  cut: {
    dimensions: ["cut"],
    bareUnit: "lb-cut",
    sayIn: "lb-cut",
    min: 0.1 * 119.826427,
    max: 8 * 119.826427,
  },
  airTemperature: {
    dimensions: ["temperature"],
    bareUnit: "degC",
    sayIn: "degC",
    min: celsius(-30),
    max: celsius(60),
  },
  relativeHumidity: { dimensions: ["fraction"], bareUnit: "rh", sayIn: "percent", min: 0.01, max: 1 },
  strength: { dimensions: ["fraction"], sayIn: "percent", min: 0, max: 1 },
  share: { dimensions: ["fraction"], bareUnit: "percent", sayIn: "percent", min: 0, max: 1 },
  length: { dimensions: ["length"], bareUnit: "mm", sayIn: "mm", min: 0 },
  area: { dimensions: ["area"], bareUnit: "m2", sayIn: "m2", min: 0 },
} as const satisfies Record<string, FieldExpects>;

/** The units that a shop has most use for, as they may be typed. */
const pressed: Record<Dimension, readonly string[]> = {
  mass: ["g", "kg", "oz", "lb"],
  volume: ["ml", "l", "fl oz", "cup"],
  temperature: ["°C", "°F"],
  fraction: ["% vol", "% by mass", "proof"],
  length: ["mm", "cm", "in"],
  area: ["m²", "sq ft"],
  cut: ["lb cut", "g/l"],
};

/** Units to press beside the number. An ounce where liquid may be meant says which; a bare share needs none. */
function unitsFor({ dimensions, bareUnit }: FieldExpects): readonly string[] {
  if (dimensions.includes("fraction") && bareUnit !== undefined) return [];
  const several = dimensions.includes("volume");
  return dimensions
    .flatMap((dimension) => pressed[dimension])
    .map((unit) => (several && unit === "oz" ? "oz weight" : unit));
}

/** What was typed, with that unit in place of its own; the number stays as it stands. */
export function withUnit(typed: string, unit: string): string {
  const number = numberIn(typed);
  return number === "" ? typed : `${number} ${unit}`;
}

const numberIn = (typed: string): string => typed.replace(/[^\d.,/½⅓⅔¼¾⅛⅜⅝⅞ −-].*$/, "").trim();

/** What was typed into a field: the amount, or a sentence about it and the likelier meanings to press. */
export const readQuantity = (typed: string, expects: FieldExpects): QuantityReading => ({
  ...readTyped(typed, expects),
  units: unitsFor(expects),
});

function readTyped(typed: string, expects: FieldExpects): QuantityReading {
  const read = parseQuantity(typed, expects);
  if (!read.ok) return { ok: false, problem: problemOf(read.error) };
  const { unit, si, instead } = read.value;
  const misfit = outside(si, typed, expects);
  if (misfit !== undefined) return { ok: false, problem: misfit };
  return {
    ok: true,
    value: { typed: typed.trim(), unit, si },
    understood: understood(read.value, instead, expects),
  };
}

const problemOf = (problem: QuantityProblem) => ({
  says: quantityProblemSentence(problem),
  meanings: problem.code === "ambiguous" ? (problem.readings ?? []).map(meaningOf) : [],
  ask: problem.code === "ambiguous",
});

/** Typed again so that it can only mean this: the number as it reads, with the unit's own name. */
function meaningOf(reading: Reading): Meaning {
  const number = numberIn(reading.typed);
  const names = unitNamed(reading.unit);
  const name = reading.unit === "oz" ? "oz weight" : (names?.symbol ?? reading.unit);
  return { label: readingInWords(reading), typed: `${number} ${name}` };
}

function outside(si: number, typed: string, expects: FieldExpects) {
  const { min, max, sayIn } = expects;
  const said = (value: number) => formatQuantity(value, sayIn);
  const tooLow = min !== undefined && !(si >= min * (1 - 1e-9));
  const tooHigh = max !== undefined && !(si <= max * (1 + 1e-9));
  if (!tooLow && !tooHigh) return undefined;
  const says =
    min !== undefined && max !== undefined
      ? words.controls.outside(typed.trim(), said(min), said(max))
      : min !== undefined
        ? words.controls.tooLittle(typed.trim(), said(min))
        : words.controls.tooMuch(typed.trim(), said(max ?? Number.NaN));
  return { says, meanings: [], ask: false };
}

/** Said back where the unit typed is not the one reckoned in, or where another gallon would change it. */
function understood(read: Reading, instead: Reading | undefined, expects: FieldExpects): string | undefined {
  const sayIn = metricOf(read, expects);
  const format = expects.digits === undefined ? {} : { significantDigits: expects.digits };
  const back = read.unit === sayIn ? undefined : formatQuantity(read.si, sayIn, format);
  if (instead === undefined) return back;
  return words.controls.otherGallon(back ?? read.typed, formatQuantity(instead.si, sayIn));
}

const metricOf = (read: Reading, expects: FieldExpects): string =>
  read.dimension === "mass" ? "g" : read.dimension === "volume" ? "ml" : expects.sayIn;
