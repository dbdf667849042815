/** What a number can be of. A page says which of these a field takes. */
export const dimensions = ["mass", "volume", "temperature", "fraction", "length", "area", "cut"] as const;
export type Dimension = (typeof dimensions)[number];

/** A pint or a gallon is one of two; the cut of the trade is by the US gallon. */
export type GallonSystem = "us" | "imperial";

export interface Unit {
  readonly id: string;
  readonly dimension: Dimension;
  /** As it is written after a number. */
  readonly symbol: string;
  /** What people type, in small letters, without dots; a plural s is taken off before looking. */
  readonly names: readonly string[];
  /** SI value of one unit, exact: kg, m³, K, fraction, m, m², kg/m³. */
  readonly factor: number;
  /** SI value of zero of the unit, where it is not zero: temperatures. */
  readonly zero?: number;
  readonly system?: GallonSystem;
  /** Written in halves, thirds, quarters and eighths in a shop. */
  readonly inFractions?: true;
  readonly source: string;
}

const si = "SI Brochure, 9th ed. (2019)";
const nist = "NIST Handbook 44, appendix C (exact by definition)";
const imperial = "Weights and Measures Act 1985, schedule 1 (gallon 4.54609 L, exact)";

const inch = 0.0254;
const pound = 0.45359237;
const usGallon = 231 * inch ** 3;
const imperialGallon = 4.54609e-3;

type More = Pick<Unit, "zero" | "system" | "inFractions">;
const inFractions = { inFractions: true } as const;

/** Names are separated by bars. */
const unit = (
  id: string,
  dimension: Dimension,
  symbol: string,
  names: string,
  factor: number,
  source: string,
  more: More = {},
): Unit => ({ id, dimension, symbol, names: names.split("|"), factor, source, ...more });

/** A measure that is a share of the gallon of each system. */
const ofGallon = (name: string, symbol: string, names: string, ofUs: number, ofImperial: number): Unit[] => [
  unit(`${name}-us`, "volume", symbol, names, usGallon * ofUs, nist, { system: "us", ...inFractions }),
  unit(`${name}-imp`, "volume", `imp ${symbol}`, names, imperialGallon * ofImperial, imperial, {
    system: "imperial",
    ...inFractions,
  }),
];

const ounceNames =
  "oz|ounce|oz wt|wt oz|oz weight|ounce weight|oz by weight|ounce by weight|oz av|oz avdp|dry oz";
const ofVolume = "OIML R 22: volume at 20 °C unless the temperature is told";
const poundCut = "TT-S-300A (1977), footnote 1: pounds of resin to a US gallon of solvent";
const cutNames = "lb cut|lb-cut|pound cut|lb/gal|lb per gal|lb/gallon|lb per gallon";
const percentMass =
  "% mass|%mass|% by mass|% w/w|%w/w|% m/m|%m/m|wt%|wt %|% wt|% by weight|percent by weight|percent by mass";

/** Every unit that is read and written, with its exact factor. */
export const units: readonly Unit[] = [
  unit("g", "mass", "g", "g|gm|gram|gramme", 1e-3, si),
  unit("kg", "mass", "kg", "kg|kilo|kilogram|kilogramme", 1, si),
  unit("mg", "mass", "mg", "mg|milligram", 1e-6, si),
  unit("oz", "mass", "oz", ounceNames, pound / 16, nist, inFractions),
  unit("lb", "mass", "lb", "lb|pound|#|lb by weight|pound by weight|lb weight", pound, nist, inFractions),

  unit("ml", "volume", "ml", "ml|millilitre|milliliter|cc|cm3|cm³", 1e-6, si),
  unit("cl", "volume", "cl", "cl|centilitre|centiliter", 1e-5, si),
  unit("dl", "volume", "dl", "dl|decilitre|deciliter", 1e-4, si),
  unit("l", "volume", "l", "l|litre|liter|ltr", 1e-3, si),
  ...ofGallon("floz", "fl oz", "fl oz|floz|fluid oz|fluid ounce|fl ounce|oz fl", 1 / 128, 1 / 160),
  ...ofGallon("cup", "cup", "cup", 1 / 16, 1 / 16),
  ...ofGallon("pt", "pt", "pt|pint", 1 / 8, 1 / 8),
  ...ofGallon("qt", "qt", "qt|quart", 1 / 4, 1 / 4),
  ...ofGallon("gal", "gal", "gal|gallon", 1, 1),
  unit("tsp-us", "volume", "tsp", "tsp|teaspoon", usGallon / 768, nist, inFractions),
  unit("tbsp-us", "volume", "tbsp", "tbsp|tablespoon", usGallon / 256, nist, inFractions),

  unit("degC", "temperature", "°C", "°c|c|degc|deg c|celsius|degree celsius", 1, si, { zero: 273.15 }),
  unit("degF", "temperature", "°F", "°f|f|degf|deg f|fahrenheit|degree fahrenheit", 1 / 1.8, nist, {
    zero: 273.15 - 32 / 1.8,
  }),
  unit("K", "temperature", "K", "k|kelvin", 1, si),

  unit("percent", "fraction", "%", "%|percent|per cent", 1e-2, si),
  unit(
    "percent-vol",
    "fraction",
    "% vol",
    "% vol|%vol|% v/v|%v/v|vol%|vol %|% abv|%abv|abv|% by volume|percent by volume",
    1e-2,
    ofVolume,
  ),
  unit("percent-mass", "fraction", "% by mass", percentMass, 1e-2, si),
  unit("us-proof", "fraction", "proof", "proof|us proof|° proof", 1 / 200, "27 CFR 30.11, at 60 °F"),
  unit("rh", "fraction", "% RH", "% rh|%rh|rh", 1e-2, si),

  unit("um", "length", "µm", "um|micron|micrometre|micrometer", 1e-6, si),
  unit("mm", "length", "mm", "mm|millimetre|millimeter", 1e-3, si),
  unit("cm", "length", "cm", "cm|centimetre|centimeter", 1e-2, si),
  unit("m", "length", "m", "m|metre|meter", 1, si),
  unit("mil", "length", "mil", "mil|thou|thousandth", inch / 1e3, nist),
  unit("in", "length", "in", 'in|inch|inche|"|″', inch, nist, inFractions),
  unit("ft", "length", "ft", "ft|foot|feet|'|′", 12 * inch, nist, inFractions),

  unit("m2", "area", "m²", "m2|sq m|sqm|square metre|square meter", 1, si),
  unit("cm2", "area", "cm²", "cm2|sq cm|square centimetre|square centimeter", 1e-4, si),
  unit("ft2", "area", "sq ft", "ft2|sq ft|sqft|square foot|square feet", (12 * inch) ** 2, nist),
  unit("in2", "area", "sq in", "in2|sq in|sqin|square inch|square inche", inch ** 2, nist),

  unit("lb-cut", "cut", "lb cut", `${cutNames}|cut|lb|pound|#`, pound / usGallon, poundCut, {
    system: "us",
    ...inFractions,
  }),
  unit("lb-cut-imp", "cut", "lb cut (imp)", cutNames, pound / imperialGallon, imperial, {
    system: "imperial",
    ...inFractions,
  }),
  ...(["us", "imp"] as const).map((of) =>
    unit(
      `oz-per-pt-${of}`,
      "cut",
      of === "us" ? "oz/pt" : "oz/imp pt",
      "oz/pt|oz/pint|oz per pt|oz per pint|ounce per pint|oz to the pint|oz to a pint",
      pound / 16 / ((of === "us" ? usGallon : imperialGallon) / 8),
      of === "us" ? poundCut : imperial,
      { system: of === "us" ? "us" : "imperial", ...inFractions },
    ),
  ),
  unit("g-per-l", "cut", "g/l", "g/l|g per l|g per litre|g per liter|gram per litre|gram per liter", 1, si),
];

const byId = new Map(units.map((u) => [u.id, u]));

/** The unit with an id, as quantities in the notebook name it; undefined for one that is not known. */
export const unitNamed = (id: string): Unit | undefined => byId.get(id);

/** A number of a unit in SI. */
export const siFromUnit = (x: number, unit: Unit): number => x * unit.factor + (unit.zero ?? 0);
/** An SI value in a unit: the inverse of `siFromUnit`. */
export const unitFromSi = (si: number, unit: Unit): number => (si - (unit.zero ?? 0)) / unit.factor;
