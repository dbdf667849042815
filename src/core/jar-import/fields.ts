import type { Expected } from "../quantity/parse-quantity.ts";

/** What a column of a list of jars can hold. */
export const jarFields = [
  "code",
  "mixed",
  "resin",
  "resin-amount",
  "solvent",
  "strength",
  "solvent-amount",
  "cut",
  "makes",
  "left",
  "vessel",
  "note",
] as const;
export type JarField = (typeof jarFields)[number];

/** Fields that hold an amount, and how it is read. A column's own unit takes the place of a bare number's. */
export const amountFields = {
  "resin-amount": { dimensions: ["mass"], flakes: true },
  "solvent-amount": { dimensions: ["volume", "mass"] },
  cut: { dimensions: ["cut"] },
  makes: { dimensions: ["volume"] },
  left: { dimensions: ["volume", "mass"] },
  strength: { dimensions: ["fraction"] },
} as const satisfies Partial<Record<JarField, Expected>>;
export type AmountField = keyof typeof amountFields;

/** Whether a field holds an amount. */
export const isAmountField = (field: JarField): field is AmountField => field in amountFields;

/**
 * Words that a heading is known by, the telling ones first: the first field of which a word stands in the heading has
 * it. Whether "flakes" is a name or an amount is told by the cells.
 */
export const headingWords: readonly (readonly [JarField, RegExp])[] = [
  ["mixed", /\b(date|mixed|made|started|when|day)\b/],
  ["strength", /\b(strength|proof|abv|percent|%)|%/],
  ["left", /\b(left|remaining|remains|now|level)\b/],
  ["cut", /\b(cut|pounds? cut|lb cut|concentration)\b/],
  ["resin", /\b(resin|flakes?|shellac|lac|seedlac|grade|gum|sandarac|copal)\b/],
  ["solvent", /\b(solvent|alcohol|spirits?|ethanol|thinner)\b/],
  ["makes", /\b(makes|volume|finished|solution|total|amount|size)\b/],
  ["vessel", /\b(vessel|bottle|container|glass|kept in|where)\b/],
  ["code", /\b(code|jar|label|id|no|nr|number|name|batch)\b|#/],
  ["note", /\b(notes?|remarks?|comments?|memo)\b/],
];
