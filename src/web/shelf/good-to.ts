import type { Body } from "../../core/notebook/kinds/all.ts";
import type { TypedQuantity } from "../../core/notebook/kinds/parts.ts";
import { unitNamed } from "../../core/quantity/unit-table.ts";
import type { QuantityReading } from "../controls/quantity-reading.ts";
import { fields, readQuantity } from "../controls/read-quantity.ts";
import * as words from "../words/words.ts";

const t = words.shelf;
type Use = Body<"instrument-described">["use"];

/** Instruments whose readings are numbers of one unit, so that "good to" can be said of them. */
const measuring = ["scale", "jug", "hygrometer", "thermometer", "gloss-meter"] as const;
export type Measuring = (typeof measuring)[number];
export const isMeasuring = (use: Use): use is Measuring => measuring.some((one) => one === use);

const refused = (says: string): QuantityReading => ({
  ok: false,
  problem: { says, meanings: [], ask: false },
});

/** A number and one of a few units; a difference of temperature has no zero, unlike a temperature. */
function difference(
  typed: string,
  units: Readonly<Record<string, number>>,
  unit: string,
  says: string,
): QuantityReading {
  const [, number, named = ""] = /^\s*(\d+(?:[.,]\d+)?)\s*(\S.*?)?\s*$/.exec(typed) ?? [];
  const factor = units[named.toLowerCase().replace("°", "").trim()];
  return number === undefined || factor === undefined
    ? refused(says)
    : { ok: true, value: { typed: typed.trim(), unit, si: Number(number.replace(",", ".")) * factor } };
}

const readBy: Record<Measuring, (typed: string) => QuantityReading> = {
  scale: (typed) => readQuantity(typed, fields.mass),
  jug: (typed) => readQuantity(typed, fields.volume),
  hygrometer: (typed) =>
    readQuantity(typed, { dimensions: ["fraction"], bareUnit: "rh", sayIn: "percent", min: 0, max: 0.5 }),
  thermometer: (typed) => difference(typed, { "": 1, c: 1, k: 1, f: 1 / 1.8 }, "K", t.goodToDegrees),
  "gloss-meter": (typed) =>
    difference(typed, { "": 1, gu: 1, "gloss unit": 1, "gloss units": 1 }, "gloss-unit", t.goodToGloss),
};

/** How far an instrument may be off: one standard uncertainty, which is never nothing. */
export function readGoodTo(use: Measuring, typed: string): QuantityReading {
  const read = readBy[use](typed);
  return read.ok && read.value.si === 0 ? refused(t.goodToNothing) : read;
}

const symbols: Readonly<Record<string, string>> = { K: "°C", "gloss-unit": "GU" };

/** As it was typed, with the unit that a bare number was taken in. */
export const goodToWords = ({ typed, unit }: TypedQuantity): string =>
  /^[\d.,\s]+$/.test(typed) ? `${typed.trim()} ${symbols[unit] ?? unitNamed(unit)?.symbol ?? unit}` : typed;
