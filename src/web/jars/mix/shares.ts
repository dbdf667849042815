import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import { type FieldExpects, readQuantity } from "../../controls/read-quantity.ts";

/**
 * How much of each of several bottles, or of several bags of flakes: one alone needs no figure; parts say shares;
 * amounts say all. `at` is the first row that does not fit, and `why` what is wrong with it.
 */
export type Shares =
  | { readonly kind: "one" }
  | { readonly kind: "parts"; readonly shares: readonly number[] }
  | { readonly kind: "amounts"; readonly amounts: readonly TypedQuantity[] }
  | { readonly kind: "open"; readonly at: number; readonly why: "empty" | "both" | "unread" };

/** `3 parts`, `3`, `75 %`; undefined for an amount with a unit. */
const partsIn = (text: string): number | undefined => {
  const found = /^\s*(\d+(?:[.,]\d+)?)\s*(?:parts?|%)?\s*$/i.exec(text);
  const value = Number(found?.[1]?.replace(",", "."));
  return value > 0 ? value : undefined;
};

/** What was typed beside each, read together: all in parts or all in amounts. */
export function readShares(texts: readonly string[], expects: FieldExpects): Shares {
  if (texts.length < 2) return { kind: "one" };
  const open = (at: number, why: "empty" | "both" | "unread") => ({ kind: "open", at, why }) as const;
  const empty = texts.findIndex((text) => text.trim() === "");
  if (empty >= 0) return open(empty, "empty");
  const parts = texts.map(partsIn);
  const amounts = texts.map((text, i) => (parts[i] === undefined ? readQuantity(text, expects) : undefined));
  const unread = amounts.findIndex((one) => one !== undefined && (!one.ok || one.value.si === 0));
  if (unread >= 0) return open(unread, "unread");
  const first = parts[0] === undefined;
  const other = parts.findIndex((one) => (one === undefined) !== first);
  if (other >= 0) return open(other, "both");
  if (first) return { kind: "amounts", amounts: amounts.flatMap((one) => (one?.ok ? [one.value] : [])) };
  const sum = parts.reduce<number>((total, one) => total + (one ?? 0), 0);
  return { kind: "parts", shares: parts.map((one) => (one ?? 0) / sum) };
}
