import { fail, ok, type Result } from "../result.ts";
import { flakesByVolume } from "./flakes-by-volume.ts";
import { type Parts, parseParts, speaksOfParts } from "./parse-parts.ts";
import { plainText, readNumber } from "./read-number.ts";
import type { Reading } from "./reading.ts";
import {
  type Dimension,
  type GallonSystem,
  siFromUnit,
  type Unit,
  unitFromSi,
  unitNamed,
  units,
} from "./unit-table.ts";

/** What was typed, read. `instead` is what it would have been in the other gallon, where the system was taken for granted. */
export interface ParsedQuantity extends Reading {
  readonly instead?: Reading;
}

export const quantityProblemCodes = [
  "empty",
  "not-a-number",
  "no-unit",
  "unknown-unit",
  "wrong-dimension",
  "out-of-range",
  "ambiguous",
  "flakes-by-volume",
  "parts",
] as const;

export interface QuantityProblem {
  readonly code: (typeof quantityProblemCodes)[number];
  readonly typed: string;
  /** Texts that would do in this field. */
  readonly wouldDo: readonly string[];
  /** For `ambiguous` and `flakes-by-volume`: what it may mean, the likelier first. For `wrong-dimension`: what it was read as. */
  readonly readings?: readonly Reading[];
  /** For `parts`: the ratio; absent when only one side of it was typed. `cutsOfParts` says what it can mean. */
  readonly parts?: Parts;
  /** For `out-of-range`: in the unit that was typed. */
  readonly limits?: { readonly min?: number; readonly max?: number };
}

export interface Expected {
  /** What the field takes; of several, text that fits two is asked about. */
  readonly dimensions: readonly Dimension[];
  /** The unit of a bare number; without one, a bare number is not enough. */
  readonly bareUnit?: string;
  /** Which gallon a pint is of: `us` unless told, and said in `instead`; `ask` makes it a question. */
  readonly gallon?: GallonSystem | "ask";
  /** The field is of flakes: a volume is asked about, with the weights that it can mean. */
  readonly flakes?: true;
}

const examples: Readonly<Record<Dimension, readonly string[]>> = {
  mass: ["57 g", "2 oz", "1 lb 4 oz"],
  volume: ["350 ml", "8 fl oz", "1 1/2 cup"],
  temperature: ["20 °C", "68 °F"],
  fraction: ["96 %", "190 proof"],
  length: ["125 µm", "5 mil", "2 1/2 in"],
  area: ["1.5 m²", "16 sq ft"],
  cut: ["2 lb cut", "240 g/l"],
};

const systemWords: Readonly<Record<string, GallonSystem>> = {
  us: "us",
  american: "us",
  imp: "imperial",
  imperial: "imperial",
  uk: "imperial",
  british: "imperial",
};

interface UnitText {
  readonly name: string;
  readonly system: GallonSystem | undefined;
}

/** Small letters without dots; `imp pint`, `pint (UK)` and `US gal` give up their system. */
function unitText(text: string): UnitText {
  const name = text
    .trim()
    .toLowerCase()
    .replace(/[µμ]/g, "u")
    .replace(/[()]/g, " ")
    .replace(/([a-z])\./g, "$1")
    .replace(/²/g, "2")
    .replace(/\^2\b/g, "2")
    .replace(/º/g, "°")
    .replace(/\//g, "/ ")
    .replace(/ +/g, " ")
    .trim();
  const words = name.split(" ");
  const said = words.find((w) => systemWords[w] !== undefined);
  const rest = words.filter((w) => w !== said).join(" ");
  const closed = (text: string): string => text.replace(/ *\/ */g, "/");
  if (said === undefined || rest === "") return { name: closed(name), system: undefined };
  return { name: closed(rest), system: systemWords[said] };
}

const singular = (name: string): string =>
  name
    .split(" ")
    .map((w) => (w.length > 2 && w.endsWith("s") ? w.slice(0, -1) : w))
    .join(" ");

function unitsCalled({ name, system }: UnitText): readonly Unit[] {
  const called = units.filter((u) => u.names.includes(name) || u.names.includes(singular(name)));
  return system === undefined ? called : called.filter((u) => u.system === system);
}

/** A bare ounce in a field that takes liquid may be of weight or of volume: the trap of every mixing recipe. */
const isOunceOfLiquid = ({ name }: UnitText, expected: Expected): boolean =>
  ["oz", "ounce"].includes(singular(name)) && expected.dimensions.includes("volume");

/** The units that the text may mean here, the likelier first. */
function candidates(text: UnitText, expected: Expected): readonly Unit[] {
  const called = unitsCalled(text);
  const ounce = isOunceOfLiquid(text, expected)
    ? unitNamed(expected.gallon === "imperial" ? "floz-imp" : "floz-us")
    : undefined;
  const fitting = called.filter((u) => expected.dimensions.includes(u.dimension));
  if (ounce === undefined) return fitting;
  return [ounce, ...called.filter((u) => u.id === "oz")];
}

const reading = (typed: string, value: number, unit: Unit): Reading => ({
  typed,
  unit: unit.id,
  si: siFromUnit(value, unit),
  dimension: unit.dimension,
});

/** Of US and imperial readings, the one of the system that was told, with the other beside it. */
function bySystem(
  found: readonly Unit[],
  gallon: GallonSystem | "ask",
): readonly [Unit, Unit | undefined] | undefined {
  const [one, other] = found;
  if (one === undefined) return undefined;
  if (other === undefined) return [one, undefined];
  const twins =
    found.length === 2 &&
    one.system !== undefined &&
    other.system !== undefined &&
    one.dimension === other.dimension;
  if (!twins || gallon === "ask") return undefined;
  return one.system === gallon ? [one, other] : [other, one];
}

/** Of what is read as a volume, the reading in the gallon that was told: a cup of flakes is loose by more than the other cup. */
const bySystemOf = (readings: readonly Reading[], gallon: Expected["gallon"]): Reading | undefined => {
  const volumes = readings.filter((r) => r.dimension === "volume");
  return volumes.find((r) => unitNamed(r.unit)?.system === (gallon ?? "us")) ?? volumes[0];
};

function outOfRange(value: number, unit: Unit): { readonly min?: number; readonly max?: number } | undefined {
  const si = siFromUnit(value, unit);
  const most = unit.dimension === "fraction" ? 1 : Number.POSITIVE_INFINITY;
  if (si >= 0 && si <= most) return undefined; // in SI nothing here goes below zero: not even a temperature
  return { min: unitFromSi(0, unit), ...(most === 1 ? { max: unitFromSi(1, unit) } : {}) };
}

const wouldDo = (expected: Expected): readonly string[] => expected.dimensions.flatMap((d) => examples[d]);

/** `1 lb 4 oz`: further amounts in smaller units of the same kind, added. Undefined for text that is not one. */
function compound(typed: string, first: number, rest: string, expected: Expected): Reading | undefined {
  const split = /^([^\d½⅓⅔¼¾⅛⅜⅝⅞]+?) ?(?=[\d½⅓⅔¼¾⅛⅜⅝⅞])(.+)$/.exec(rest.trim());
  const [name, tail] = [split?.[1], split?.[2]];
  if (name === undefined || tail === undefined) return undefined;
  const next = readNumber(tail);
  if (!next.ok || next.value.values.length !== 1) return undefined;
  const ofOneSystem = (u: Unit): boolean => u.system === undefined || u.system === (expected.gallon ?? "us");
  const [large] = unitsCalled(unitText(name)).filter(
    (u) => expected.dimensions.includes(u.dimension) && ofOneSystem(u),
  );
  const [small] = unitsCalled(unitText(next.value.rest)).filter(
    (u) => u.dimension === large?.dimension && ofOneSystem(u),
  );
  if (large === undefined || small === undefined || small.factor >= large.factor || first < 0)
    return undefined;
  const second = next.value.values[0] ?? Number.NaN;
  return { ...reading(typed, first, large), si: siFromUnit(first, large) + siFromUnit(second, small) };
}

/**
 * Reads an amount as people type it: `57 g`, `2 oz`, `1½ cup`, `0,5 l`, `2 lb cut`, `68 F`.
 *
 * Nothing is guessed that changes a recipe: an ounce of liquid, a pound where mass and cut both fit, and `1,500`
 * come back as `ambiguous` with every reading. A pint without a system is read as the gallon that was told (US
 * unless told), and says what it would be otherwise.
 *
 * @param text      what was typed
 * @param expected  the dimensions that the field takes, the unit of a bare number, the gallon
 * @returns         the reading, in SI beside what was typed; or why not, and what would do
 *
 * Valid:    any text
 * Accuracy: exact factors
 * Source:   as each row of `units`
 */
export function parseQuantity(text: string, expected: Expected): Result<ParsedQuantity, QuantityProblem> {
  const typed = text.trim();
  const problem = (code: QuantityProblem["code"], more: Partial<QuantityProblem> = {}) =>
    fail<QuantityProblem>({ code, typed, wouldDo: wouldDo(expected), ...more });
  const plain = plainText(text);
  if (plain === "") return problem("empty");
  if (speaksOfParts(plain)) {
    const parts = parseParts(plain);
    return problem("parts", parts === undefined ? {} : { parts });
  }
  const number = readNumber(plain);
  if (!number.ok) return problem("not-a-number");
  const { values, rest } = number.value;
  const sum = compound(typed, values[0] ?? Number.NaN, rest, expected);
  if (sum !== undefined && values.length === 1) return ok(sum);
  const bare = rest.trim() === "" ? unitNamed(expected.bareUnit ?? "") : undefined;
  if (rest.trim() === "" && bare === undefined) return problem("no-unit");
  const name = unitText(rest);
  const found = bare === undefined ? candidates(name, expected) : [bare];
  if (found.length === 0) {
    const other = unitsCalled(name).map((u) => reading(typed, values[0] ?? Number.NaN, u));
    const volume = bySystemOf(other, expected.gallon);
    if (expected.flakes === true && volume !== undefined && volume.si > 0)
      return problem("flakes-by-volume", { readings: flakesByVolume(volume) });
    return problem(other.length === 0 ? "unknown-unit" : "wrong-dimension", { readings: other });
  }
  return chosen(typed, values, found, expected);
}

function chosen(
  typed: string,
  values: readonly number[],
  found: readonly Unit[],
  expected: Expected,
): Result<ParsedQuantity, QuantityProblem> {
  const pair = bySystem(found, expected.gallon ?? "us");
  const [value] = values;
  if (pair === undefined || values.length > 1) {
    const readings = (pair === undefined ? found : [pair[0]]).flatMap((u) =>
      values.map((v) => reading(typed, v, u)),
    );
    return fail({ code: "ambiguous", typed, wouldDo: wouldDo(expected), readings });
  }
  const [unit, other] = pair;
  const limits = outOfRange(value ?? Number.NaN, unit);
  if (limits !== undefined) return fail({ code: "out-of-range", typed, wouldDo: wouldDo(expected), limits });
  const read = reading(typed, value ?? Number.NaN, unit);
  return ok(other === undefined ? read : { ...read, instead: reading(typed, value ?? Number.NaN, other) });
}
