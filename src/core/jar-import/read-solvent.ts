import { parseQuantity } from "../quantity/parse-quantity.ts";
import type { LiquidInput } from "../registry/solvent.ts";
import { type Component, components } from "../solution/component.ts";

/** Names that lists have for liquids, beside the components' own. */
const otherNames: Readonly<Record<string, Component>> = {
  "ethyl alcohol": "ethanol",
  "grain alcohol": "ethanol",
  bioethanol: "ethanol",
  ipa: "isopropanol",
  "isopropyl alcohol": "isopropanol",
  isopropyl: "isopropanol",
  "rubbing alcohol": "isopropanol",
  "2-propanol": "isopropanol",
  "propan-2-ol": "isopropanol",
  propanol: "n-propanol",
  "1-propanol": "n-propanol",
  "n-propyl alcohol": "n-propanol",
  methanol: "methanol",
  "methyl alcohol": "methanol",
  "wood alcohol": "methanol",
  butanol: "n-butanol",
};

/** A liquid's name and strength as they were written, and the liquid where they name one. */
export interface SolventRead {
  /** As it would be called on the shelf: `ethanol 95 %`. */
  readonly name: string;
  /** Undefined for a name that is not of one liquid. */
  readonly liquid: LiquidInput | undefined;
  /** No strength was written: it is taken as pure. */
  readonly takenAsPure: boolean;
}

/** `ethanol 95 %`, `IPA 190 proof`: the strength at the end of a name. */
function apart(name: string): { readonly bare: string; readonly strength: string | undefined } {
  const found = /^(.*?)[ ,(]+(\d[\d.,]*\s*(?:%.*?|° ?proof|proof))\)?$/i.exec(name.trim());
  return found === null
    ? { bare: name.trim(), strength: undefined }
    : { bare: (found[1] ?? "").trim(), strength: found[2] };
}

const componentCalled = (name: string): Component | undefined =>
  components.find((component) => component === name) ?? otherNames[name];

/** Reads a solvent of a list. The strength may stand in its own cell, with its unit or the column's, or in the name. */
export function readSolvent(
  cell: string,
  strengthCell: string,
  strengthUnit: string | null,
): SolventRead | "strength-unreadable" {
  const { bare, strength } = apart(cell);
  const written = strengthCell.trim() === "" ? strength : strengthCell.trim();
  const alcohol = componentCalled(bare.toLowerCase());
  if (written === undefined) {
    const takenAsPure = alcohol !== undefined && alcohol !== "water";
    return { name: bare, liquid: alcohol === undefined ? undefined : { alcohol }, takenAsPure };
  }
  const read = parseQuantity(written, { dimensions: ["fraction"], bareUnit: strengthUnit ?? "percent" });
  if (!read.ok || read.value.unit === "rh") return "strength-unreadable";
  const { unit, si } = read.value;
  const name = `${bare} ${/[%a-z]/i.test(written) ? written : `${written} %`}`;
  if (alcohol === undefined) return { name, liquid: undefined, takenAsPure: false };
  const share =
    unit === "us-proof"
      ? { usProof: Number((si * 200).toPrecision(12)) }
      : unit === "percent-mass"
        ? { massFraction: si }
        : { volumeFraction: si };
  return { name, liquid: { alcohol, ...share }, takenAsPure: false };
}
