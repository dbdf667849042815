import type { TypedQuantity } from "../../../core/notebook/kinds/parts.ts";
import { type FieldExpects, readQuantity } from "../../controls/read-quantity.ts";

export type ProfilePair = readonly [TypedQuantity, TypedQuantity];

export type ProfileReading =
  | { readonly ok: true; readonly pairs: readonly ProfilePair[] }
  /** The line that cannot be read, as it was typed. */
  | { readonly ok: false; readonly line: string };

/** A measured profile, a line for each place: where it was measured, a colon, what was measured there. */
export function readProfile(text: string, expects: FieldExpects): ProfileReading {
  const pairs: ProfilePair[] = [];
  for (const line of text.split(/[\n;]/).filter((one) => one.trim() !== "")) {
    const cells = line.split(/[:=\t]/);
    const [first, second] = cells.map((cell) => readQuantity(cell, expects));
    if (cells.length !== 2 || first?.ok !== true || second?.ok !== true)
      return { ok: false, line: line.trim() };
    pairs.push([first.value, second.value]);
  }
  return { ok: true, pairs };
}
