import type { Body } from "../notebook/kinds/all.ts";
import type { TypedQuantity } from "../notebook/kinds/parts.ts";
import type { NotebookReader } from "../notebook/reader.ts";
import { unitNamed } from "../quantity/unit-table.ts";
import { kitchenInstruments } from "../solution/instruments.ts";
import type { Reading, Source } from "./reckoning.ts";

/** An amount as it was read: kilograms off a scale or cubic metres off a jug. */
export interface AmountRead {
  readonly by: "mass" | "volume";
  readonly reading: Reading;
}

/** Of an amount that somebody guessed, one standard uncertainty: a fifth of it. From memory. */
const guessShare = 0.2;

/** Charges of a pad are counted, and how much each holds is guessed. */
export const isGuessed = (by: string): boolean => by === "guess" || by === "charges";

function instrumentUncertainty(read: NotebookReader, quantity: TypedQuantity): number | undefined {
  if (quantity.instrument === undefined) return undefined;
  const described = read.making(quantity.instrument);
  if (described?.kind !== "instrument-described") return undefined;
  return (described.body as Body<"instrument-described">).standardUncertainty?.si;
}

/**
 * A typed quantity as a reading with its standard uncertainty: that of the instrument it names, else of a kitchen's
 * scale or jug. Null for a quantity that is neither a mass nor a volume.
 */
export function amountRead(
  read: NotebookReader,
  quantity: TypedQuantity,
  key: string,
  guessed = false,
): AmountRead | null {
  const by = unitNamed(quantity.unit)?.dimension;
  if (by !== "mass" && by !== "volume") return null;
  const usual = by === "mass" ? kitchenInstruments.scaleG / 1e3 : kitchenInstruments.jugMl / 1e6;
  const source: Source = guessed ? "guess" : by === "mass" ? "scaleG" : "jugMl";
  const standardUncertainty = guessed
    ? guessShare * quantity.si
    : (instrumentUncertainty(read, quantity) ?? usual);
  return { by, reading: { key, source, value: quantity.si, standardUncertainty } };
}
