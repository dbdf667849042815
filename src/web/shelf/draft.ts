import { compositionOf } from "../../core/jar/makeup.ts";
import type { Component } from "../../core/solution/component.ts";
import type { Composition } from "../../core/solution/composition.ts";

export const strengthBases = ["volume", "mass", "proof"] as const;
export type StrengthBasis = (typeof strengthBases)[number];

/** One line of a data sheet, as typed. */
export interface SheetPart {
  readonly component: Component;
  readonly share: string;
}

/** A strength being typed: one alcohol as on a label, or the parts of a data sheet. */
export interface StrengthDraft {
  readonly how: "single" | "sheet";
  readonly component: Component;
  readonly strength: string;
  readonly basis: StrengthBasis;
  readonly parts: readonly SheetPart[];
  readonly sheetBasis: "mass" | "volume";
}

export const emptyStrength: StrengthDraft = {
  how: "single",
  component: "ethanol",
  strength: "",
  basis: "volume",
  parts: [
    { component: "ethanol", share: "" },
    { component: "isopropanol", share: "" },
    { component: "mek", share: "" },
    { component: "methanol", share: "" },
    { component: "water", share: "" },
  ],
  sheetBasis: "mass",
};

/** A typed figure, decimal comma or point; NaN for anything else and for nothing. */
export const figure = (text: string): number =>
  /^\s*\d+(?:[.,]\d+)?\s*%?\s*$/.test(text) ? Number(text.replace(",", ".").replace("%", "")) : Number.NaN;

export type StrengthFault = "not a number" | "empty" | "over 100" | "refused";

export type StrengthRead =
  | { readonly ok: true; readonly solvent: Record<string, unknown>; readonly composition: Composition }
  | { readonly ok: false; readonly fault: StrengthFault; readonly sum?: number };

const single = (draft: StrengthDraft): Record<string, unknown> | undefined => {
  const value = figure(draft.strength);
  const most = draft.basis === "proof" ? 200 : 100;
  if (!(value > 0 && value <= most)) return undefined;
  const field = { volume: "volumeFraction", mass: "massFraction", proof: "usProof" }[draft.basis];
  return {
    alcohol: draft.component,
    [field]: draft.basis === "proof" ? value : Number((value / 100).toPrecision(12)),
  };
};

function sheet(draft: StrengthDraft): {
  solvent?: Record<string, unknown>;
  fault?: StrengthFault;
  sum?: number;
} {
  const written = draft.parts.filter((part) => part.share.trim() !== "");
  if (written.length === 0) return { fault: "empty" };
  const shares = written.map((part) => ({ component: part.component, share: figure(part.share) }));
  if (shares.some(({ share }) => Number.isNaN(share))) return { fault: "not a number" };
  const sum = shares.reduce((total, { share }) => total + share, 0);
  if (sum > 100 + 1e-9) return { fault: "over 100", sum };
  const missing = 100 - sum;
  const whole = missing > 1e-9 ? [...shares, { component: "unknown", share: missing }] : shares;
  const field = draft.sheetBasis === "mass" ? "massShare" : "volumeShare";
  return {
    solvent: {
      parts: whole.map(({ component, share }) => ({
        alcohol: component,
        [field]: Number((share / 100).toPrecision(12)),
      })),
    },
  };
}

/** The strength as a calculation takes it, with what it comes to by mass; or what is wrong with it. */
export function readStrength(draft: StrengthDraft): StrengthRead {
  const read = draft.how === "sheet" ? sheet(draft) : { solvent: single(draft) };
  if (read.solvent === undefined)
    return {
      ok: false,
      fault:
        ("fault" in read ? read.fault : undefined) ??
        (draft.strength.trim() === "" ? "empty" : "not a number"),
      ...("sum" in read && read.sum !== undefined ? { sum: read.sum } : {}),
    };
  const made = compositionOf(read.solvent);
  return "composition" in made
    ? { ok: true, solvent: read.solvent, composition: made.composition }
    : { ok: false, fault: "refused" };
}
