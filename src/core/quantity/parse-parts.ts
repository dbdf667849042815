import { plainText, readNumber } from "./read-number.ts";

/** What a part is of: of weight on both sides, of weight (g) to volume (ml), or of volume on both. */
export const partsBy = ["weight", "weight-to-volume", "volume"] as const;
export type PartsBy = (typeof partsBy)[number];

/** A recipe in parts: so much resin to so much solvent. */
export interface Parts {
  readonly resin: number;
  readonly solvent: number;
  /** Undefined where it was not said: then all three can be meant. */
  readonly by: PartsBy | undefined;
}

const saidBy: readonly (readonly [RegExp, PartsBy])[] = [
  [/\b(by weight to volume|weight to volume|weight by volume|w\/v|g to ml|g:ml)\b/, "weight-to-volume"],
  [/\b(by weight|by mass|w\/w|weight)\b/, "weight"],
  [/\b(by volume|by measure|v\/v|volume)\b/, "volume"],
];
const solventWords = /\b(alcohol|spirits?|solvent|ethanol|isopropanol|methylated|meths|liquid)\b/;

/** Whether text speaks of parts at all, whatever may be wrong with it. */
export const speaksOfParts = (text: string): boolean =>
  /\bparts?\b/i.test(text) || /^\s*[\d.,½⅓⅔¼¾]+\s*(:|to\b)\s*[\d½⅓⅔¼¾]/i.test(plainText(text));

/** One side of the ratio: `1`, `1 part`, `4 parts of alcohol`. */
function side(text: string): { readonly amount: number; readonly isSolvent: boolean } | undefined {
  const number = readNumber(text.trim());
  const [amount] = number.ok && number.value.values.length === 1 ? number.value.values : [];
  if (!number.ok || amount === undefined || !(amount > 0)) return undefined;
  const rest = number.value.rest.replace(/\bparts?\b/, "").trim();
  return /^[a-z .-]*$/.test(rest) ? { amount, isSolvent: solventWords.test(rest) } : undefined;
}

/**
 * Reads a recipe in parts: `1:4`, `1 part to 4 parts`, `4 parts alcohol to 1 part flakes by weight`. Resin is named first
 * unless the first side says that it is the liquid.
 *
 * @param text  what was typed
 * @returns     the parts, and by what where it is said; undefined for text that is not a ratio of two amounts
 *
 * Valid:    any text
 * Accuracy: exact
 * Source:   common practice
 */
export function parseParts(text: string): Parts | undefined {
  const plain = plainText(text).toLowerCase().replace(/[(),]/g, " ");
  const said = saidBy.find(([pattern]) => pattern.test(plain));
  const bare = said === undefined ? plain : plain.replace(said[0], " ");
  const [left, right, more] = bare.split(/\s*:\s*|\s+to\s+/);
  if (left === undefined || right === undefined || more !== undefined) return undefined;
  const [first, second] = [side(left), side(right)];
  if (first === undefined || second === undefined) return undefined;
  const [resin, solvent] = first.isSolvent ? [second.amount, first.amount] : [first.amount, second.amount];
  return { resin, solvent, by: said?.[1] };
}
