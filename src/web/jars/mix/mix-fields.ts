import { fields } from "../../controls/read-quantity.ts";

/** The four amounts of a mix: any two say the rest. */
export const mixFields = ["flakes", "cut", "alcohol", "makes"] as const;
export type MixField = (typeof mixFields)[number];
export type Typed = Readonly<Record<MixField, string>>;

export const expected = {
  flakes: { ...fields.mass, flakes: true },
  cut: fields.cut,
  alcohol: fields.massOrVolume,
  makes: fields.volume,
} as const;
