import type { DraftFactor, DraftLook, FactorKind } from "./draft.ts";

/** What a new factor starts as. */
export const factorPresets: Readonly<Record<FactorKind, DraftFactor>> = {
  alcohol: {
    kind: "alcohol",
    name: "",
    levels: "ethanol, isopropanol",
    appliedTo: "jar",
    fromOneStock: false,
    twice: "",
  },
  cut: { kind: "cut", name: "", levels: "1 lb, 1½ lb", appliedTo: "jar", fromOneStock: true, twice: "" },
  resin: {
    kind: "resin",
    name: "",
    levels: "dewaxed lemon, seedlac",
    appliedTo: "jar",
    fromOneStock: false,
    twice: "",
  },
  method: {
    kind: "method",
    name: "",
    levels: "brush, pad",
    appliedTo: "patch",
    fromOneStock: false,
    twice: "",
  },
  other: { kind: "other", name: "", levels: "", appliedTo: "patch", fromOneStock: false, twice: "" },
};

export const lookKinds = ["gloss", "sheen", "smoothness", "grain", "colour", "other", "otherWords"] as const;
export type LookKind = (typeof lookKinds)[number];

const measured = (name: string, unit: string, matters: string, more: string, less: string): DraftLook => ({
  name,
  scale: "measured",
  unit,
  levels: "",
  matters,
  mattersIsCommon: matters !== "",
  more,
  less,
});
const inWords = (name: string, levels: string, more: string, less: string): DraftLook => ({
  name,
  scale: "ordered",
  unit: "",
  levels,
  matters: "0.3",
  mattersIsCommon: true,
  more,
  less,
});

/** What may be looked at, with the difference that matters by common practice: 5 gloss units, ΔE00 2. */
export const lookPresets: Readonly<Record<LookKind, DraftLook>> = {
  gloss: measured("gloss", "gloss units", "5", "glossier", "duller"),
  sheen: inWords("sheen", "dull, some sheen, plain sheen, glossy, mirror", "glossier", "duller"),
  smoothness: inWords("smoothness", "rough, a few nibs, smooth, like glass", "smoother", "rougher"),
  grain: inWords("grain raise", "none, slight, plain, strong", "more raised", "less raised"),
  colour: measured("colour change", "ΔE00", "2", "more changed", "less changed"),
  other: measured("", "", "", "more", "less"),
  otherWords: inWords("", "", "more", "less"),
};
