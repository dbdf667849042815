import { formatNumber, formatQuantity, formatUncertain } from "../core/quantity/format-quantity.ts";
import { kitchenInstruments } from "../core/solution/instruments.ts";

/** Rows of cells under each other, two spaces apart. */
export function tableText(rows: readonly (readonly string[])[]): string {
  const widths: number[] = [];
  // the last cell of a row has nothing to stand clear of
  for (const row of rows)
    row.slice(0, -1).forEach((cell, i) => {
      widths[i] = Math.max(widths[i] ?? 0, cell.length);
    });
  return rows
    .map((row) =>
      row.map((cell, i) => (i === row.length - 1 ? cell : cell.padEnd(widths[i] ?? 0))).join("  "),
    )
    .map((line) => `${line.trimEnd()}\n`)
    .join("");
}

export const grams = (g: number): string =>
  formatQuantity(g / 1e3, g >= 1e4 ? "kg" : "g", { significantDigits: 4 });
export const millilitres = (ml: number): string =>
  formatQuantity(ml / 1e6, ml >= 1e4 ? "l" : "ml", { significantDigits: 4 });
export const ounces = (g: number): string => formatQuantity(g / 1e3, "oz");
export const fluidOunces = (ml: number): string => formatQuantity(ml / 1e6, "floz-us");
export const percent = (share: number): string => `${formatNumber(100 * share)} %`;

const sourceWords: Readonly<Record<string, string>> = {
  scaleG: "the scale",
  jugMl: "the jug",
  temperatureC: "the temperature",
  strengthVolumeFraction: "the strength on the label",
  moistureMassFraction: "the flakes' moisture",
  partialDensityKgM3: "the room that resin takes",
  solventDensityKgM3: "the alcohol's density",
  jarCut: "the stock's own cut",
};

export interface Sureness {
  readonly cutLbPerGal: number;
  readonly cutStandardUncertainty: number;
  readonly contributions: readonly { readonly source: string; readonly share: number }[];
  readonly instrumentsAssumed: boolean;
}

/** The cut, how sure it is, and what that is mostly. */
export function cutWords(found: Sureness): string {
  const { value, uncertainty } = formatUncertain(found.cutLbPerGal, found.cutStandardUncertainty);
  const [largest] = found.contributions;
  const mostly =
    largest === undefined ? "" : `; most of it is ${sourceWords[largest.source] ?? largest.source}`;
  return `${value} lb to a US gallon of solvent, give or take ${uncertainty}${mostly}`;
}

const k = kitchenInstruments;
const kitchenWords =
  `A kitchen's instruments are assumed: scale ${k.scaleG} g, jug ${k.jugMl} ml, ${k.temperatureC} °C, label ${percent(k.strengthVolumeFraction)}, ` +
  `flakes' moisture ${percent(k.moistureMassFraction)}, each a standard uncertainty; --scale and --jug say yours.`;

/** What stands under a plan of evenings at the bench. */
export const benchCaution =
  "Window open, no flame, no heater with a glow; cloths spread flat out of doors to dry. Times and amounts are estimates, not a clearance; the supplier's safety data sheet and local code come first.";

/** What stands under a table. */
export const notesText = (
  notes: readonly string[],
  flags: readonly { readonly message: string }[],
  assumed: boolean,
): string => {
  const all = [
    ...notes,
    ...(assumed ? [kitchenWords] : []),
    ...flags.map((f) => f.message),
    "Alcohol burns: no flame while mixing. Figures are estimates, not a clearance; the supplier's safety data sheet comes first.",
  ];
  return `\n${all.map((note) => `${note}\n`).join("")}`;
};
